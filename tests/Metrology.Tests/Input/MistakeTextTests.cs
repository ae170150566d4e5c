using Ramwright.Metrology.Input;

namespace Ramwright.Metrology.Tests.Input;

public sealed class MistakeTextTests
{
    [Fact]
    public void A_mistake_in_a_whole_file_has_no_line() => Assert.StartsWith(
        "m.yaml: there is no such file ",
        MistakeText.WriteOne(new(Place.Whole("m.yaml"), "there is no such file", "give a path", "no-file")),
        StringComparison.Ordinal);

    [Fact]
    public void A_very_long_line_is_cut_round_its_carets()
    {
        var line = new string('x', 100_000) + "BAD" + new string('y', 100_000);
        var lines = MistakeText.WriteOne(new(new("m.yaml", 1, 100_001, 3), "bad", "mend it", "bad-number") { Excerpt = line }).Split('\n');
        Assert.True(lines[1].Length < 140);
        Assert.Equal("BAD", lines[1].Substring(lines[2].IndexOf('^', StringComparison.Ordinal), 3));
    }

    [Fact]
    public void A_tab_before_the_fault_does_not_shift_the_carets()
    {
        var lines = MistakeText.WriteOne(new(new("m.csv", 1, 3, 1), "bad", "mend it", "bad-number") { Excerpt = "a\tb" }).Split('\n');
        Assert.Equal('b', lines[1][lines[2].IndexOf('^', StringComparison.Ordinal)]);
    }

    [Fact]
    public void Files_and_mistakes_are_counted()
    {
        Mistake[] mistakes = [new(Place.Whole("a"), "x", "y", "z"), new(Place.Whole("b"), "x", "y", "z"), new(Place.Whole("b"), "x", "y", "z")];
        Assert.EndsWith("3 mistakes in 2 files; nothing was loaded\n", MistakeText.Write(mistakes), StringComparison.Ordinal);
    }
}
