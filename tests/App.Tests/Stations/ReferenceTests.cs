using System.Collections.Immutable;
using Ramwright.App.Demo;
using Ramwright.App.Stations.Prove;
using Ramwright.App.Stations.Release;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving.Reference;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.App.Tests.Stations;

/// <summary>What measures a proof: fixed with its budget when the series opens, and never longer than it may be relied on.</summary>
public sealed class ReferenceTests
{
    private static readonly InstrumentId PortGauge = InstrumentId.Parse("PG-1");

    [Fact]
    public async Task A_series_keeps_its_references_budget_and_its_runs_are_corrected()
    {
        using var shop = await AtProveAsync();
        var station = new ProveStation(shop.Bench);
        Assert.IsType<ActAnswer.Done>(await station.OpenAsync(TestShop.Sign(), shop.Job, Wish(SaltmarshHouse.ForceCell)));
        Assert.IsType<ActAnswer.Done>(await station.TakeRunsAsync(TestShop.Sign(), shop.Job, [new GivenRun(Pressure.FromBar(700))]));
        var series = (await shop.StateAsync()).OpenSeries!;
        var opened = series.Opened.What;
        Assert.Equal(opened.Reference!.Systematic, opened.Systematic);
        Assert.Equal(ReferenceKind.ForceCell, opened.Reference.Kind);
        var run = series.Runs[0].Taken.What;
        Assert.Equal((700.0, RunSource.Written), (run.Shown!.Value.Bar, run.Source));
        Assert.Equal(opened.Reference.Correction!.Correct(Pressure.FromBar(700)), run.Peak);
        Assert.True(run.Peak > run.Shown);
    }

    [Fact]
    public async Task The_tools_memory_proves_only_after_a_fit_comparison_and_only_until_the_tool_is_opened()
    {
        using var shop = await AtProveAsync();
        var station = new ProveStation(shop.Bench);
        Assert.Contains("was not compared with a reference at this visit", TestShop.Why(await station.OpenAsync(TestShop.Sign(), shop.Job, Wish(null))), StringComparison.Ordinal);

        await CompareAsync(shop, off: 20);
        Assert.Contains("not found fit", TestShop.Why(await station.OpenAsync(TestShop.Sign(), shop.Job, Wish(null))), StringComparison.Ordinal);

        await CompareAsync(shop, off: 1);
        Assert.IsType<ActAnswer.Done>(await station.OpenAsync(TestShop.Sign(), shop.Job, Wish(null)));
        var opened = (await shop.StateAsync()).OpenSeries!.Opened.What;
        Assert.Equal((ReferenceKind.ToolMemory, PortGauge), (opened.Reference!.Kind, opened.Device));
        Assert.Contains("reference of the comparison", opened.Reference.Lines.Select(l => l.What));
        Assert.Equal(-1, opened.Reference.Correction!.ChangeAt(Pressure.FromBar(700)).Bar, 0.05);
        Assert.True(opened.Reference.Capture.Bar > 0); // the sensor's own lag, as the model states it

        var state = await shop.StateAsync();
        var opening = JobStateAfter(state, new StripStepSigned(0, new("cap-nut"), null, null));
        Assert.Null(opening.Comparison);
    }

    [Fact]
    public async Task Too_few_comparisons_or_a_gauge_that_is_overdue_are_refused()
    {
        using var shop = await AtProveAsync();
        var station = new ReferenceStation(shop.Bench, shop.Archive);
        var wish = new ComparisonWish(PortGauge, Pressure.FromBar(7), null, [new(0, 2e7, 2e7, true), new(1, 7e7, 7e7, true)]);
        Assert.Contains("2 levels", TestShop.Why(await station.CompareAsync(TestShop.Sign(), shop.Job, wish)), StringComparison.Ordinal);
        Assert.Contains("was due for calibration", TestShop.Why(await station.CompareAsync(TestShop.Sign(), shop.Job, wish with { Reference = InstrumentId.Parse("PH-3") })), StringComparison.Ordinal);
        Assert.Contains("no gauge of the house", TestShop.Why(await station.CompareAsync(TestShop.Sign(), shop.Job, wish with { Reference = SaltmarshHouse.ForceCell })), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_sensor_check_leaves_a_paper_once()
    {
        using var shop = await AtProveAsync();
        await CompareAsync(shop, off: 1);
        var (station, sign) = (new ReferenceStation(shop.Bench, shop.Archive), TestShop.Sign());
        Assert.IsType<ActAnswer.Done>(await station.ReportAsync(sign, shop.Job));
        Assert.True(Assert.IsType<ActAnswer.Done>(await station.ReportAsync(sign, shop.Job)).Repeated);
        Assert.Equal($"{shop.Job}-C1", Assert.Single((await shop.StateAsync()).Reports).What.Number);
        Assert.True(File.Exists(Path.Combine(shop.PaperFolder, $"{shop.Job}-C1.pdf")));
    }

    [Fact]
    public async Task Friction_that_was_measured_takes_the_place_of_the_models()
    {
        using var shop = await AtProveAsync();
        var loops = new[] { 320.0, 300, 340 }.Select(d => new ForcePair(Force.FromNewtons(61_000), Force.FromNewtons(61_000 + d))).ToImmutableArray();
        Assert.IsType<ActAnswer.Done>(await new ReferenceStation(shop.Bench, shop.Archive).LoopAsync(TestShop.Sign(), shop.Job, SaltmarshHouse.ForceCell, loops));
        Assert.IsType<ActAnswer.Done>(await new ProveStation(shop.Bench).OpenAsync(TestShop.Sign(), shop.Job, Wish(SaltmarshHouse.ForceCell)));
        var opened = (await shop.StateAsync()).OpenSeries!.Opened.What;
        Assert.Contains("friction, by loading up and down", opened.Reference!.Lines.Select(l => l.What));
        Assert.Equal(160, opened.Reference.Correction!.HeldBack!.Value.Newtons - (1450 + (12e3 * 0.020)), 1e-6); // preload 1,450 N and 12 N/mm over 20 mm
    }

    [Fact]
    public async Task A_device_that_expires_while_its_series_is_open_takes_no_further_run_and_one_found_off_releases_nothing()
    {
        using var shop = await AtProveAsync();
        var station = new ProveStation(shop.Bench);
        Assert.IsType<ActAnswer.Done>(await station.OpenAsync(TestShop.Sign(), shop.Job, Wish(SaltmarshHouse.ForceCell)));
        Assert.IsType<ActAnswer.Done>(await station.TakeRunsAsync(TestShop.Sign(), shop.Job, [.. new[] { 0.3, -0.2, 0.5, -0.4, 0.1, 0.2, -0.5, 0.4, -0.1, 0, 0.3, -0.3 }.Select(b => new GivenRun(Pressure.FromBar(700 + b)))]));
        var closing = TestShop.Sign();
        Assert.IsType<ActAnswer.Done>(await station.CloseAsync(closing, shop.Job));
        Assert.IsType<ActAnswer.Done>(await station.GoAsync(TestShop.Sign(), shop.Job, Station.Release, null));

        var today = shop.Bench.Today;
        await shop.Bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead,
            new InstrumentCalibrated(SaltmarshHouse.ForceCell, today, today.AddDays(365), "K-9", "made-up laboratory", MeasuredValue.Of(Force.FromNewtons(340))) { AsFoundWithin = false });
        Assert.Contains("FC-2 was found off", TestShop.Why(await new ReleaseStation(shop.Bench, shop.Archive).EndAsync(TestShop.Sign(), shop.Job, JobEnd.Released, null)), StringComparison.Ordinal);
        Assert.True((await shop.StateAsync()).IsOpen);

        using var other = await AtProveAsync();
        Assert.IsType<ActAnswer.Done>(await new ProveStation(other.Bench).OpenAsync(TestShop.Sign(), other.Job, Wish(PortGauge)));
        await other.Bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead,
            new InstrumentCalibrated(PortGauge, today.AddDays(-3), today.AddDays(-1), "K-9", "made-up laboratory", MeasuredValue.Of(Pressure.FromBar(2))));
        Assert.Contains("was due for calibration", TestShop.Why(await new ProveStation(other.Bench).TakeRunsAsync(TestShop.Sign(), other.Job, [new GivenRun(Pressure.FromBar(700))])), StringComparison.Ordinal);
    }

    internal static async Task CompareAsync(TestShop shop, double off)
    {
        ImmutableArray<SensorPoint> points = [.. new[] { 200.0, 450, 725 }.SelectMany((bar, level) => new SensorPoint[] { new(level, bar * 1e5, (bar + off) * 1e5, true), new(level, bar * 1e5, (bar + off + 0.1) * 1e5, true), new(level, bar * 1e5, (bar + off - 0.1) * 1e5, false) })];
        Assert.IsType<ActAnswer.Done>(await new ReferenceStation(shop.Bench, shop.Archive).CompareAsync(TestShop.Sign(), shop.Job, new ComparisonWish(PortGauge, Pressure.FromBar(7), Pressure.FromBar(1), points)));
    }

    internal static SeriesWish Wish(InstrumentId? device) => new(device, "dies closed on nothing", Temperature.FromCelsius(20), null);

    internal static Task<TestShop> AtProveAsync() => TestShop.AtAsync(Station.Prove);

    private static Records.Jobs.JobState JobStateAfter(Records.Jobs.JobState state, JobEvent what) => state.After(new(new(state.Version.Value + 1), DateTimeOffset.UnixEpoch, SaltmarshHouse.Lead, what));
}
