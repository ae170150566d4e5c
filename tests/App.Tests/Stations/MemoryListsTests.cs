using Ramwright.App.Stations.Prove;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Records.Events;

namespace Ramwright.App.Tests.Stations;

/// <summary>Runs out of a tool's memory: a Corrie 85 keeps its last six peaks, so a series of twelve arrives as overlapping lists.</summary>
public sealed class MemoryListsTests
{
    private const string First = "612.0 688.1 701.2 698.4 703.0 699.7";

    [Fact]
    public async Task Overlapping_lists_are_joined_and_only_the_runs_of_the_series_enter_it()
    {
        using var shop = await OpenAsync();
        // Of the first list the latest three are runs of the series: the others are setting runs.
        Assert.IsType<ActAnswer.Done>(await TakeAsync(shop, new() { Lists = First, Order = "oldest-first", Count = "4" }));
        Assert.IsType<ActAnswer.Done>(await TakeAsync(shop, new() { Lists = First + "\n\n703.0 699.7 700.6 697.9 702.1 700.9", Order = "oldest-first", Count = "8" }));
        var runs = (await shop.StateAsync()).OpenSeries!.Runs.Select(r => r.Taken.What).ToList();
        Assert.Equal([701.2, 698.4, 703.0, 699.7, 700.6, 697.9, 702.1, 700.9], runs.Select(r => Math.Round(r.Shown!.Value.Bar, 4)));
        Assert.All(runs, r => Assert.Equal(RunSource.Memory, r.Source));
        Assert.All(runs, r => Assert.Equal(-1, r.Peak.Bar - r.Shown!.Value.Bar, 0.1)); // corrected by the comparison
    }

    [Theory]
    [InlineData(First + "\n\n701.2 698.4 704.0 699.7 700.6 697.9", "8", "oldest-first", "Contradiction: list 2")]
    [InlineData(First + "\n\n650.0 651.0 652.0 653.0 654.0 655.0", "8", "oldest-first", "Apart: list 2")]
    [InlineData("700 700 700 700 700 700\n\n700 700 700 700 700 700", "8", "oldest-first", "Not certain:")]
    [InlineData(First + "\n\n703.0 6x9.7", "8", "oldest-first", "List 2, line 1")]
    [InlineData(First, "12", "oldest-first", "12 runs were made, and the lists hold 6 peaks.")]
    [InlineData(First, "", "oldest-first", "How many of these peaks are runs of the series is not said.")]
    [InlineData("", "3", "", "there is no list")]
    public async Task What_does_not_fit_is_explained_and_nothing_is_taken(string lists, string count, string order, string said)
    {
        using var shop = await OpenAsync();
        var refused = Assert.IsType<ActAnswer.Refused>(await TakeAsync(shop, new() { Lists = lists, Order = order, Count = count }));
        Assert.Contains(refused.Mistakes, m => m.What.Contains(said, StringComparison.Ordinal));
        Assert.All(refused.Mistakes, m => Assert.DoesNotContain("--", m.What + m.Mend, StringComparison.Ordinal));
        Assert.Empty((await shop.StateAsync()).OpenSeries!.Runs);
    }

    [Fact]
    public async Task Lists_that_say_otherwise_than_the_runs_taken_are_refused()
    {
        using var shop = await OpenAsync();
        Assert.IsType<ActAnswer.Done>(await TakeAsync(shop, new() { Lists = First, Order = "oldest-first", Count = "4" }));
        Assert.Contains("Run 1 stands in the series with 701.2 bar", TestShop.Why(await TakeAsync(shop, new() { Lists = First, Order = "oldest-first", Count = "5" })), StringComparison.Ordinal);
        Assert.Contains("nothing is new", TestShop.Why(await TakeAsync(shop, new() { Lists = First, Order = "oldest-first", Count = "4" })), StringComparison.Ordinal);
    }

    private static async Task<TestShop> OpenAsync()
    {
        var shop = await ReferenceTests.AtProveAsync();
        await ReferenceTests.CompareAsync(shop, off: 1);
        Assert.IsType<ActAnswer.Done>(await new ProveStation(shop.Bench).OpenAsync(TestShop.Sign(), shop.Job, ReferenceTests.Wish(null)));
        return shop;
    }

    private static async Task<ActAnswer> TakeAsync(TestShop shop, MemoryLists lists)
    {
        var mistakes = new FormMistakes();
        var runs = lists.Read((await shop.StateAsync()).OpenSeries!, depth: 6, "bar", mistakes);
        return mistakes.Count > 0 ? ActAnswer.Refuse(mistakes) : await new ProveStation(shop.Bench).TakeRunsAsync(TestShop.Sign(), shop.Job, runs);
    }
}
