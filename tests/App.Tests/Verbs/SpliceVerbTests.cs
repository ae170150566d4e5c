using Ramwright.App.Tests.CommandLine;

namespace Ramwright.App.Tests.Verbs;

public sealed class SpliceVerbTests
{
    [Fact]
    public async Task Overlapping_lists_become_a_series_that_prove_takes()
    {
        using var folder = new TemporaryFolder();
        var series = await Run.Of("splice", "703.0 698.4 701.2", "700.6 699.7 703.0 698.4", "--order", "newest-first");
        Assert.Equal((0, "run,peak_bar\n1,701.2\n2,698.4\n3,703\n4,699.7\n5,700.6\n"), (series.Exit, series.Data.ReplaceLineEndings("\n")));
        Assert.Contains("list 2: runs 2 to 5, 2 new, 2 shared", series.Words, StringComparison.Ordinal);
        Assert.Equal(0, (await Run.Of("prove", folder.Write("s.csv", series.Data), "--window", "679..721")).Exit);
    }

    [Fact]
    public async Task Json_says_where_each_list_lies()
    {
        var json = (await Run.Of("splice", "1.0 2.0 3.0", "2.0 3.0 4.0", "--unit", "MPa", "--order", "oldest-first", "--json")).Json;
        Assert.Equal(("ramwright/splice/1", "whole", "oldest-first"), ((string?)json["schema"], (string?)json["answer"], (string?)json["order"]));
        Assert.Equal([10, 20, 30, 40], json["peaksBar"]!.AsArray().Select(p => (double)p!));
        Assert.Equal(2, (int)json["lists"]![1]!["shared"]!);
    }

    [Theory]
    [InlineData("ambiguous", 3, "--order", "oldest-first", "700 700", "700 700")]
    [InlineData("order-open", 3, "701 702 703", "703 704 701")]
    [InlineData("contradicts", 1, "--order", "oldest-first", "701 698 703 700", "698 704 700 699")]
    [InlineData("apart", 1, "701 698", "703 704")]
    [InlineData("gap", 1, "--order", "oldest-first", "--new", "4", "701 698", "703 704")]
    [InlineData("not-whole-memory", 1, "--order", "oldest-first", "--model", "corrie-85", "701 698 703", "703 704")]
    [InlineData("too-many-ways", 3, "--order", "oldest-first", "LONG", "LONG")]
    public async Task What_is_not_certain_is_refused_with_its_reason(string answer, int exit, params string[] given)
    {
        string[] args = ["splice", .. given.Select(g => g == "LONG" ? string.Join('\n', Enumerable.Repeat("700", 3_000)) : g)];
        var run = await Run.Of([.. args, "--json"]);
        Assert.Equal((exit, answer), (run.Exit, (string?)run.Json["answer"]));
        Assert.Equal(exit, (await Run.Of(args)).Exit);
    }

    [Theory]
    [InlineData("", "no-reading")]
    [InlineData("position,peak_bar\n", "no-reading")]
    [InlineData("position,peak_bar\n1,NaN\n", "not-finite")]
    [InlineData("position,peak_bar\n1,-700\n", "negative-reading")]
    [InlineData("position,peak_furlong\n1,700\n", "missing-unit|no-peak-column|unknown-unit")]
    [InlineData("position,peak_bar\n1,9e99\n", "absurd-value")]
    [InlineData("position,peak_bar\n1,700\n3,701\n", "run-gap")]
    [InlineData("position,peak_bar,void\n1,700,\n2,701,slipped\n", "void-in-peak-list")]
    [InlineData("MANY", "too-large|too-many-lines")]
    public async Task A_bad_list_is_bad_input(string text, string codes)
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("list.csv", text == "MANY" ? "position,peak_bar\n" + string.Concat(Enumerable.Range(1, 1_000_000).Select(i => $"{i},700\n")) : text);
        var run = await Run.Of("splice", path, "--json");
        Assert.Equal(2, run.Exit);
        Assert.Contains((string?)run.Json["mistakes"]![0]!["code"], codes.Split('|'));
    }

    [Theory]
    [InlineData("--order", "sideways")]
    [InlineData("--depth", "0")]
    [InlineData("--new", "1,2,3")]
    [InlineData("--new", "x")]
    [InlineData("--unit", "kN")]
    [InlineData("--least-shared", "0")]
    [InlineData("--model", "skerry-99")]
    public async Task A_bad_option_is_bad_use(string option, string value) =>
        Assert.Equal(2, (await Run.Of("splice", "701 702", "702 703", option, value)).Exit);

    [Fact]
    public async Task A_folder_or_a_file_that_is_not_there_is_bad_input()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(2, (await Run.Of("splice", folder.Path, "701 702")).Exit);
        Assert.Equal(2, (await Run.Of("splice", "no-such-list.csv")).Exit);
    }

    [Fact]
    public async Task One_list_with_one_reading_is_a_series_of_one() =>
        Assert.Equal((0, "run,peak_bar\n1,700.5\n"), (await Run.Of("splice", "700.5")) is var run ? (run.Exit, run.Data.ReplaceLineEndings("\n")) : default);
}
