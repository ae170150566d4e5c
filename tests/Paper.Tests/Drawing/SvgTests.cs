using System.Xml.Linq;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Signs;
using Ramwright.Proving;

namespace Ramwright.Paper.Tests.Drawing;

public sealed class SvgTests
{
    [Fact]
    public void Writes_what_was_drawn()
    {
        var sketch = new Sketch();
        sketch.Line(Ink.Limit, 0, 1, 10, 1.001);
        sketch.Text(Ink.Word, 5, 5, "R&D <1>", 8, Anchor.Middle, bold: true);
        sketch.Add(new Shape.Group(Ink.Next, "cap nut", [new Shape.Circle(Ink.Next, new(2, 2), 1)]));
        sketch.Add(new Shape.Path(Ink.Detail, [new Stretch.MoveTo(new(0, 0)), new Stretch.CurveTo(new(1, 0), new(1, 1), new(2, 1)), new Stretch.Close()]));
        Assert.Equal(
            """<svg xmlns="http://www.w3.org/2000/svg" class="picture" viewBox="0 0 10 10" role="img"><title>a &amp; b</title><desc>c</desc>"""
            + """<path class="d-limit" d="M0 1L10 1"/><text class="d-word bold" x="5" y="5" font-size="8" text-anchor="middle">R&amp;D &lt;1&gt;</text>"""
            + """<g class="d-next"><title>cap nut</title><circle class="d-next" cx="2" cy="2" r="1"/></g><path class="d-detail" d="M0 0C1 0 1 1 2 1Z"/></svg>""",
            Svg.Write(sketch.Finish(10, 10, "a & b", "c")));
    }

    [Theory]
    [InlineData(Conformity.Conforms, 1)]
    [InlineData(Conformity.DoesNotConform, 0)]
    [InlineData(Conformity.Undecided, 0)]
    public void Only_conforms_wears_the_tick(Conformity conformity, int ticks)
    {
        var svg = XElement.Parse(Svg.Write(VerdictMark.Of(conformity)));
        // The tick is the one line of three points that is cut out of a mark.
        Assert.Equal(ticks, svg.Descendants().Count(e => (string?)e.Attribute("class") == "d-mark-cut-out" && ((string)e.Attribute("d")!).Count(c => c == 'L') == 2));
        Assert.Equal(VerdictMark.Words(conformity), svg.Elements().First(e => e.Name.LocalName == "title").Value);
    }

    [Fact]
    public void Every_ink_has_a_pen_and_a_rule_in_the_style_sheet()
    {
        foreach (var ink in Enum.GetValues<Ink>())
        {
            var pen = Pens.For(ink);
            Assert.True(pen.Fill is not null || pen.Stroke is not null, ink.ToString());
            Assert.Contains($".{Pens.ClassOf(ink)} {{", PictureCss.Sheet, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Carries_no_style_no_script_and_no_id()
    {
        var svg = XElement.Parse(Svg.Write(VerdictMark.Of(Conformity.Undecided)));
        Assert.DoesNotContain(svg.DescendantsAndSelf().SelectMany(e => e.Attributes()), a => a.Name.LocalName is "style" or "id" || a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
    }
}
