namespace Ramwright.App.Tests.CommandLine;

public sealed class BadUseTests
{
    [Theory]
    [InlineData("kernel factor", "--n", "--n is not given")]
    [InlineData("kernel factor --n", "--n", "--n has no value")]
    [InlineData("kernel factor --n abc", "--n", "'abc' is no whole number of at most nine digits")]
    [InlineData("kernel factor --n 12 --coverage 1.5", "--coverage", "1.5 is no share")]
    [InlineData("kernel factor --n 12 --coverage most", "--coverage", "'most' is no number")]
    [InlineData("kernel factor --n 12 --n 13", "--n", "--n is given more than once")]
    [InlineData("kernel factor --n 12 --covrage 0.9", "--covrage", "'--covrage' is no option of kernel factor")]
    [InlineData("plan", "MODEL", "MODEL is not given")]
    [InlineData("plan corrie-85 --for", "--for", "--for has no value")]
    [InlineData("plan corrie-85 --for seal-ram --rate -1", "--rate", "-1 an hour is no labour rate")]
    [InlineData("parts corrie-85 --for seal-ram --rate 1e9", "--rate", "'1e9' is no amount of money")]
    [InlineData("parts corrie-85 --for seal-ram --rate -5", "--rate", "-5 an hour is no labour rate")]
    [InlineData("check corrie-85 corrie-120", "corrie-120", "'corrie-120' is one word too many")]
    [InlineData("set corrie-85 --readings", "--readings", "--readings has no value")]
    [InlineData("check .", ".", "this is a folder, and a file is wanted")]
    [InlineData("prove . --window 679..721", ".", "'.' cannot be read: it is a folder")]
    public async Task Is_told_in_plain_words_at_the_option_or_argument(string line, string at, string what)
    {
        var run = await Run.Line(line + " --json");
        Assert.Equal(2, run.Exit);
        Assert.StartsWith("ramwright/", (string)run.Json["schema"]!, StringComparison.Ordinal);
        var mistake = run.Json["mistakes"]!.AsArray().First(m => (string?)m!["file"] == at)!;
        Assert.Equal(what, (string?)mistake["what"]);
        foreach (var key in new[] { "code", "file", "line", "column", "length", "what", "mend" })
            Assert.True(mistake.AsObject().ContainsKey(key), key);
    }

    [Fact]
    public async Task Every_mistake_of_a_line_is_told_at_once()
    {
        var run = await Run.Line("prove --runs ten --coverage much --json");
        Assert.Equal(["READINGS", "--runs", "--coverage"], run.Json["mistakes"]!.AsArray().Select(m => (string?)m!["file"]));
    }

    [Fact]
    public async Task Quiet_hides_no_mistake()
    {
        var run = await Run.Line("check no-such-model -q");
        Assert.Equal(2, run.Exit);
        Assert.Contains("no model is called 'no-such-model'", run.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_version_is_no_bad_use() => Assert.Equal(0, (await Run.Line("--version")).Exit);
}
