using CsCheck;
using Ramwright.Paper.Lettering;

namespace Ramwright.Paper.Tests.Lettering;

public sealed class TextSetterTests
{
    private static string Lines(string text, double width) =>
        string.Join("|", TextSetter.Set(new Span(text, TextStyle.Body), width).Select(l => string.Concat(l.Runs.Select(r => r.Words))));

    [Fact]
    public void Breaks_at_spaces_and_keeps_a_number_with_its_unit()
    {
        var width = TextStyle.Body.Face.WidthOf("at least 95", TextStyle.Body.Size) + 1;
        Assert.Equal("at least|95 % stay", Lines("at least 95 % stay", width));
    }

    [Fact]
    public void Breaks_a_word_only_when_it_is_alone_too_wide() =>
        Assert.Equal("WWW|WW", Lines("WWWWW", TextStyle.Body.Face.WidthOf("WWW", TextStyle.Body.Size) + 0.1));

    [Fact]
    public void Ends_a_line_where_told() =>
        Assert.Equal(2, TextSetter.Set([new Span("one", TextStyle.Body), Span.Break, new Span("two", TextStyle.Strong)], 500).Length);

    [Fact]
    public void No_word_is_lost_and_no_line_is_too_wide() => Gen.Select(Gen.String[Gen.Char["ab cd-/ %9"], 0, 120], Gen.Double[15, 200]).ForAll((text, width) =>
    {
        var lines = TextSetter.Set(new Span(text, TextStyle.Body), width);
        var set = string.Concat(lines.SelectMany(l => l.Runs).Select(r => r.Words)).Replace(" ", "", StringComparison.Ordinal);
        return set == text.Replace(" ", "", StringComparison.Ordinal) && lines.All(l => l.Width <= width + 0.05);
    });
}
