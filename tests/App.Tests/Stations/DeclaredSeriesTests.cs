using Ramwright.App.Demo;
using Ramwright.App.Stations.Arrive;
using Ramwright.App.Stations.Prove;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;

namespace Ramwright.App.Tests.Stations;

/// <summary>What may be declared before a series opens: more runs if it stays undecided, or the scatter of earlier series.</summary>
public sealed class DeclaredSeriesTests
{
    private static readonly double[] Close = [0.3, -0.2, 0.5, -0.4, 0.1, 0.2, -0.5, 0.4, -0.1, 0, 0.3, -0.3];
    private static readonly double[] Wide = [6, -7, 5, -6, 7, -5, 6, -6, 5, -7, 7, -5];

    [Fact]
    public async Task An_extension_opens_its_places_only_when_the_planned_runs_leave_the_series_undecided()
    {
        using var decided = await OpenAsync(more: 6);
        Assert.IsType<ActAnswer.Done>(await RunsAsync(decided, Close, 700));
        Assert.True((await decided.StateAsync()).OpenSeries is { Places: 12, IsFull: true });
        Assert.Contains("0 free places", TestShop.Why(await RunsAsync(decided, [0], 700)), StringComparison.Ordinal);

        using var open = await OpenAsync(more: 6);
        Assert.IsType<ActAnswer.Done>(await RunsAsync(open, Wide, 700));
        Assert.True((await open.StateAsync()).OpenSeries is { Places: 18, IsFull: false });
        Assert.IsType<ActAnswer.Done>(await RunsAsync(open, Wide[..6], 700));
        Assert.IsType<ActAnswer.Done>(await new ProveStation(open.Bench).CloseAsync(TestShop.Sign(), open.Job));
        var closed = (await open.StateAsync()).Series[^1].Closed!.What.Verdict;
        Assert.Equal((18, 18), (closed.Runs, closed.PlannedRuns));
        Assert.NotNull(closed.ConfidenceOfEachLook);
    }

    [Fact]
    public async Task Earlier_series_moderate_from_eight_other_tools_on_and_stay_as_they_were_when_the_series_opened()
    {
        using var shop = await TestShop.AtAsync(Station.Prove);
        for (var tool = 0; tool < EarlierSeries.Fewest - 1; tool++)
            await ProveAnotherAsync(shop, tool);
        var station = new ProveStation(shop.Bench);
        var wish = new SeriesWish(SaltmarshHouse.ForceCell, "dies closed on nothing", null, null, Moderated: true);
        Assert.Contains("7 earlier series", TestShop.Why(await station.OpenAsync(TestShop.Sign(), shop.Job, wish)), StringComparison.Ordinal);

        await ProveAnotherAsync(shop, EarlierSeries.Fewest - 1);
        Assert.Contains("cannot be extended and moderated", TestShop.Why(await station.OpenAsync(TestShop.Sign(), shop.Job, wish with { MoreRuns = 6 })), StringComparison.Ordinal);
        Assert.IsType<ActAnswer.Done>(await station.OpenAsync(TestShop.Sign(), shop.Job, wish));
        await ProveAnotherAsync(shop, EarlierSeries.Fewest);
        Assert.IsType<ActAnswer.Done>(await RunsAsync(shop, Close, 700));
        Assert.IsType<ActAnswer.Done>(await station.CloseAsync(TestShop.Sign(), shop.Job));
        var verdict = (await shop.StateAsync()).Series[^1].Closed!.What.Verdict;
        Assert.Equal(ScatterSource.Moderated, verdict.ScatterFrom);
        Assert.Equal(EarlierSeries.Fewest, verdict.Moderation!.Series);
    }

    private static async Task<TestShop> OpenAsync(int? more)
    {
        var shop = await TestShop.AtAsync(Station.Prove);
        Assert.IsType<ActAnswer.Done>(await new ProveStation(shop.Bench).OpenAsync(TestShop.Sign(), shop.Job, new SeriesWish(SaltmarshHouse.ForceCell, "dies closed on nothing", null, null, more)));
        return shop;
    }

    private static Task<ActAnswer> RunsAsync(TestShop shop, double[] beside, double bar) => RunsAsync(shop, shop.Job, beside, bar);

    private static Task<ActAnswer> RunsAsync(TestShop shop, JobId job, double[] beside, double bar) =>
        new ProveStation(shop.Bench).TakeRunsAsync(TestShop.Sign(), job, [.. beside.Select(b => new GivenRun(Pressure.FromBar(bar + b)))]);

    /// <summary>Another Corrie 85 with a full series behind it.</summary>
    private static async Task ProveAnotherAsync(TestShop shop, int tool)
    {
        var opened = await new ArriveStation(shop.Bench).TakeInAsync(TestShop.Sign(), TestShop.TakenIn with { Tool = ToolSerial.Parse($"90{tool:00}") });
        var job = Assert.IsType<ActAnswer.Done>(opened).Job!.Value;
        Assert.IsType<Appended.Written>(await shop.Bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead, job, null, new StationReached(Station.Prove, "for the test")));
        var station = new ProveStation(shop.Bench);
        Assert.IsType<ActAnswer.Done>(await station.OpenAsync(TestShop.Sign(), job, new SeriesWish(SaltmarshHouse.ForceCell, "dies closed on nothing", null, null)));
        Assert.IsType<ActAnswer.Done>(await RunsAsync(shop, job, [.. Close.Select(c => c * (1 + (0.1 * tool)))], 699 + tool));
        Assert.IsType<ActAnswer.Done>(await station.CloseAsync(TestShop.Sign(), job));
    }
}
