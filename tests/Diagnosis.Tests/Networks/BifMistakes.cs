using Ramwright.Diagnosis.Networks;
using Ramwright.Metrology.Input;

namespace Ramwright.Diagnosis.Tests.Networks;

public sealed class BifMistakes
{
    [Theory]
    [InlineData("variable A { type discrete [2] { t, f } }", 1, 41, "network-form")] // no semicolon after the states
    [InlineData("variable A { type discrete [3] { t, f }; }", 1, 29, "network-form")]
    [InlineData("variable A { type discrete [2] { t, t }; }\nprobability (A) { table 0.5, 0.5; }", 1, 37, "network-name")]
    [InlineData("variable A { type discrete [2] { t, f }; }\nprobability (B) { table 0.5, 0.5; }", 2, 14, "network-name")]
    [InlineData("variable A { type discrete [2] { t, f }; }\nprobability (A) { table 0.5, 0.6; }", 2, 19, "network-table")]
    [InlineData("variable A { type discrete [2] { t, f }; }\nprobability (A) { table 0.5, O.5; }", 2, 30, "network-table")]
    [InlineData("variable A { type discrete [2] { t, f }; }", 0, 0, "network-table")] // no table
    [InlineData("probablity (A) { table 0.5, 0.5; }", 1, 1, "network-form")]
    [InlineData("", 0, 0, "network-form")]
    [InlineData("variable A { type discrete [2] { t, f }; }\nvariable B { type discrete [2] { t, f }; }\nprobability (A | B) { (t) .1, .9; (f) .1, .9; }\nprobability (B | A) { (t) .1, .9; (f) .1, .9; }", 0, 0, "network-circle")]
    [InlineData("variable A { type discrete [2] { t, f }; }\nvariable B { type discrete [2] { t, f }; }\nprobability (A | B) { (t) .1, .9; }\nprobability (B) { table .1, .9; }", 3, 35, "network-table")] // a row is missing
    [InlineData("variable A { type discrete [2] { t, f }; }\nvariable B { type discrete [2] { t, f }; }\nprobability (A | B) { (x) .1, .9; }\nprobability (B) { table .1, .9; }", 3, 24, "network-name")]
    public void Each_mistake_says_where(string text, int line, int column, string code)
    {
        var mistake = Assert.Single(Refused(text));
        Assert.Equal((line, column, code), (mistake.At.Line, mistake.At.Column, mistake.Code));
        Assert.NotEmpty(mistake.Mend);
    }

    [Fact]
    public void Comments_properties_and_quotes_are_read_over() => Assert.IsType<NetworkReading.Read>(BifReader.Read("""
        // a comment
        network "x" { property author nobody; }
        variable A { property position = (1, 2); type discrete [2] { t, f }; /* two
        lines */ }
        probability (A) { property none; table 0.25, 0.75; }
        """, "x.bif"));

    [Fact]
    public void A_hundred_mistakes_are_enough() => Assert.InRange(Refused(string.Concat(Enumerable.Repeat("variable { }\n", 5_000))).Count, 100, 101);

    [Fact]
    public void A_text_past_the_limit_is_not_read() => Assert.Equal("network-too-large", Assert.Single(Refused(new string(' ', BifReader.LargestText + 1))).Code);

    private static List<Mistake> Refused(string text) => [.. Assert.IsType<NetworkReading.Refused>(BifReader.Read(text, "x.bif")).Mistakes];
}
