using System.Text;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Tests.Sheets;

namespace Ramwright.Paper.Tests.Lettering;

public sealed class TypefaceTests
{
    // Oracle: the PDF library's own measuring of the same font file.
    [Theory]
    [InlineData("Unscrew the cap nut, 85 N·m ± 5 %")]
    [InlineData("AVATAR 0123456789 ½ µ Ω ≤ °")]
    public void Measures_as_the_pdf_library_does(string words)
    {
        WrittenFiles.Render("end", PaperSize.A4, UnitSystem.Metric); // gives the library its fonts
        Assert.NotNull(GlobalFontSettings.FontResolver);
        foreach (var bold in new[] { false, true })
        {
            using var context = XGraphics.CreateMeasureContext(new XSize(1000, 1000), XGraphicsUnit.Point, XPageDirection.Downwards);
            var theirs = context.MeasureString(words, new XFont("B612", 10, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular)).Width;
            Assert.Equal(theirs, (bold ? Typeface.Bold : Typeface.Regular).WidthOf(words, 10), tolerance: 0.02);
        }
    }

    [Fact]
    public void Has_tabular_figures() =>
        Assert.Single("0123456789".Select(c => Math.Round(Typeface.Regular.WidthOf(c.ToString(), 100), 6)).Distinct());

    [Theory]
    [InlineData("Łukasz", "Lukasz")]
    [InlineData("\u2300 62", "Ø 62")]
    [InlineData("a\tb\nc", "a b c")]
    [InlineData("\u0007x\u200B", "x")]
    [InlineData("漢", "?")]
    [InlineData("5 µm ≤ ½", "5 µm ≤ ½")]
    public void Writes_what_the_face_lacks_with_what_it_has(string text, string written) => Assert.Equal(written, Writable.Of(text, Typeface.Regular));

    [Fact]
    public void Leaves_only_signs_that_the_face_has()
    {
        foreach (var rune in Enumerable.Range(1, 0x2FFF).Select(c => new Rune(c)))
            Assert.All(Writable.Of("a" + rune + "b", Typeface.Regular).EnumerateRunes(), r => Assert.True(Typeface.Regular.Has(r), $"U+{rune.Value:X4}"));
    }
}
