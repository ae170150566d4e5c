namespace Ramwright.Instruments.Tests;

/// <summary>What is refused, where and in which words. All values are invented.</summary>
public sealed class ReadingsMistakeTests
{
    [Theory]
    [InlineData("", "1:1+0 no-reading")]
    [InlineData("peak_bar\n", "1:1+0 no-reading")]
    [InlineData("# nothing\n\n", "1:1+0 no-reading")]
    [InlineData("peak_bar\n7O4.2\n", "2:1+5 bad-number")]
    [InlineData("run,peak_bar\n1,701.2\n2,7O4.2\n3,NaN\n4,-5\n5,\n6,2500\n", "3:3+5 bad-number|4:3+3 not-finite|5:3+2 negative-reading|6:3+1 missing-reading|7:3+4 absurd-value")]
    [InlineData("peak_bar\ninf\n0.05\n70.12 MPa\n", "2:1+3 not-finite|3:1+4 absurd-value|4:1+9 bad-number")]
    [InlineData("peak_MPa\n701.2\n", "2:1+5 absurd-value")]
    [InlineData("peak\n701.2\n", "1:1+4 missing-unit")]
    [InlineData("701.2\n7x\n", "1:1+0 missing-unit|2:1+2 bad-number")]
    [InlineData("peak [atm]\n701.2\n", "1:1+10 unknown-unit")]
    [InlineData("peak_bara\n701.2\n", "1:1+9 unknown-unit")]
    [InlineData("701,2\n698,4\n", "1:4+1 ambiguous-separator")]
    [InlineData("1,701\n2,698\n", "1:2+1 ambiguous-separator")]
    [InlineData("1,701,2\n2,698,4\n", "1:2+1 ambiguous-separator")]
    [InlineData("run,peak_bar\n1,701,2\n2,698,4\n", "2:2+1 ambiguous-separator")]
    [InlineData("peak_bar\n1,701\n2,698\n", "2:2+1 ambiguous-separator")]
    [InlineData("10,152.6\n10,148.2\n", "1:3+1 ambiguous-separator")]
    [InlineData("peak_bar\n701.2\n698,4\n", "3:1+5 mixed-decimal")]
    [InlineData("peak_psi\n10,152.6\n", "2:1+8 bad-number")]
    [InlineData("peak_psi\n10.152\n", "2:1+6 bad-number")]
    [InlineData("time_s,pressure_bar\n0.001,3.5\n0.002,3.7\n", "1:1+6 recording-not-peaks")]
    [InlineData("run;current_A\n1;30\n", "1:1+0 no-peak-column")]
    [InlineData("peak_bar;pressure_MPa\n701;70.1\n", "1:10+12 two-peak-columns")]
    [InlineData("1;2;3\n4;5;6\n", "1:1+0 missing-header")]
    [InlineData("701;698\n", "1:1+3 missing-header")]
    [InlineData("run;peak_bar\n1;701\n1;702\n3;703\n2;704\nx;705\n", "3:1+1 duplicate-run|4:1+1 run-gap|5:1+1 run-out-of-order|6:1+1 bad-run-number")]
    [InlineData("run;peak_bar\n1;701;12\n", "2:7+2 too-many-columns")]
    [InlineData("run;peak_bar;void\n1;701;x\n", "2:7+1 void-without-cause")]
    [InlineData("run;peak_bar\n1;\"701\n", "2:3+1 open-quote")]
    public void Each_mistake_has_its_place_and_code(string text, string mistakes) =>
        Assert.Equal(mistakes, Sample.Mistakes(text).Marks());

    [Fact]
    public void The_words_say_what_is_wrong_and_how_to_mend_it()
    {
        var mistake = Assert.Single(Sample.Mistakes("# made up\nrun,peak_bar\n1,7O4.2\n"));
        Assert.Equal("peak_bar is '7O4.2', which is no number", mistake.What);
        Assert.Equal("sign 2 is the letter O; write 704.2", mistake.Mend);
        Assert.Equal("1,7O4.2", mistake.Excerpt);
    }

    [Fact]
    public void A_wrong_unit_is_guessed_where_only_one_fits()
    {
        var mistake = Assert.Single(Sample.Mistakes("peak_MPa\n701.2\n"));
        Assert.Equal("peak_MPa is 701.2 MPa, that is 7012 bar; a peak lies between 0.1 and 2000 bar", mistake.What);
        Assert.Equal("check the unit: in bar the value would be usual", mistake.Mend);
    }

    [Fact]
    public void A_unit_given_does_not_overrule_the_header() =>
        Assert.Equal("1:1+8 unit-conflict", Sample.Mistakes("peak_bar\n701.2\n", new() { Unit = ReadingUnit.Megapascal }).Marks());

    [Fact]
    public void A_decimal_mark_given_is_held_to() =>
        Assert.Equal("2:1+5 mixed-decimal", Sample.Mistakes("peak_bar\n701,2\n", new() { Decimal = DecimalMark.Point }).Marks());

    [Theory]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x37, 0x00 }, "1:1+0 not-text")]
    [InlineData(new byte[] { 0xFE, 0xFF, 0x00, 0x37 }, "1:1+0 not-text")]
    [InlineData(new byte[] { 0x37, 0x00, 0x30, 0x00 }, "1:2+1 not-text")]
    [InlineData(new byte[] { 0x37, 0x0A, 0x37, 0xE4, 0x30 }, "2:2+1 not-text")]
    public void Other_encodings_are_named(byte[] bytes, string mistake) =>
        Assert.Equal(mistake, Assert.IsType<ReadingsAnswer.Refused>(Readings.Read("sample.csv", bytes)).Mistakes.Marks());

    [Fact]
    public void Size_lines_and_mistakes_are_bounded()
    {
        Assert.Equal("1:1+0 too-large", Assert.Single(Assert.IsType<ReadingsAnswer.Refused>(Readings.Read("f", new byte[Readings.LargestFileBytes + 1])).Mistakes).At());
        Assert.Equal("20001:1+0 too-many-lines", Assert.Single(Sample.Mistakes(string.Concat(Enumerable.Repeat("701\n", 20_001)))).At());
        Assert.Equal("1:1+0 line-too-long", Assert.Single(Sample.Mistakes(new string('7', 3_000))).At());
        var many = Sample.Mistakes("peak_bar\n" + string.Concat(Enumerable.Repeat("x1\n", 1_000)));
        Assert.Equal(201, many.Count);
        Assert.Equal(("too-many-mistakes", "800 more mistakes stand in this file"), (many[^1].Code, many[^1].What));
    }

    [Fact]
    public void What_is_shown_of_a_bad_line_cannot_steer_a_terminal()
    {
        var mistake = Sample.Mistakes("peak_bar\n7\t\u202e1\u0085\n")[0];
        Assert.DoesNotContain(mistake.Excerpt! + mistake.What, c => char.IsControl(c) || c == '\u202e');
        Assert.Equal("7\t\u202e1\u0085".Length, mistake.Excerpt!.Length);
    }

    [Fact]
    public void Every_code_has_its_page()
    {
        var root = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(root, "Ramwright.slnx")))
            root = Path.GetDirectoryName(root)!;
        Assert.All(ReadingCodes.All, code => Assert.True(File.Exists(Path.Combine(root, "docs/reference/mistakes", code + ".md")), code));
    }

    [Fact]
    public void The_samples_of_the_pages_are_what_they_say()
    {
        var root = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(root, "Ramwright.slnx")))
            root = Path.GetDirectoryName(root)!;
        foreach (var code in ReadingCodes.All)
        {
            var page = File.ReadAllText(Path.Combine(root, "docs/reference/mistakes", code + ".md"));
            if (Block(page, "## Bad", "csv") is { } bad)
                Assert.Contains(code, Sample.Mistakes(bad).Select(m => m.Code), StringComparer.Ordinal);
            if (Block(page, "## Good", "csv") is { } good)
                Sample.Taken(good);
        }
    }

    private static string? Block(string page, string heading, string kind)
    {
        var under = page.IndexOf(heading + "\n", StringComparison.Ordinal);
        var fence = $"```{kind}\n";
        var start = under < 0 ? -1 : page.IndexOf(fence, under, StringComparison.Ordinal);
        var next = under < 0 ? -1 : page.IndexOf("\n## ", under + 3, StringComparison.Ordinal);
        return start < 0 || (next >= 0 && start > next) ? null : page[(start + fence.Length)..page.IndexOf("```", start + 3, StringComparison.Ordinal)];
    }
}
