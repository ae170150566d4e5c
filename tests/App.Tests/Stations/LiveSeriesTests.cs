using System.Globalization;
using Microsoft.Extensions.Hosting;
using Ramwright.App.Demo;
using Ramwright.App.Devices;
using Ramwright.App.House.Instruments;
using Ramwright.App.Stations.Prove;
using Ramwright.App.Stations.Prove.Live;
using Ramwright.App.Tests.CommandLine;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Calibration;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;

namespace Ramwright.App.Tests.Stations;

/// <summary>An instrument gets its connection on its page, and a series runs by itself on it.</summary>
public sealed class LiveSeriesTests
{
    private static readonly InstrumentId Gauge = InstrumentId.Parse("PG-1");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_series_takes_its_runs_from_the_connection_written_on_the_instruments_page()
    {
        using var folder = new TemporaryFolder();
        using var shop = await ReferenceTests.AtProveAsync();
        await WriteAsync(shop, $"csv-folder \"{folder.Path}\" holds peaks in bar");
        var station = new ProveStation(shop.Bench);
        Assert.IsType<ActAnswer.Done>(await station.OpenAsync(TestShop.Sign(), shop.Job, ReferenceTests.Wish(Gauge)));
        var runner = new SeriesRunner(shop.Bench, station, new SimulatedBench(shop.Bench.Clock, double.PositiveInfinity), new Life());
        Assert.IsType<ActAnswer.Begun>(await runner.StartAsync(TestShop.Sign(), shop.Job, "/"));
        // Files that lay there before the first look are passed over, so new ones come until the series has its runs.
        for (var file = 0; file < 200 && (await shop.StateAsync()).OpenSeries!.Runs.Count < 2; file++)
        {
            folder.Write($"{file:000}.csv", "run;peak_bar\n1;701.5\n2;120\n"); // 120 bar is no full run
            await Task.Delay(300, Stop);
        }

        runner.Stop(shop.Job);
        var runs = (await shop.StateAsync()).OpenSeries!.Runs.Select(r => r.Taken.What).ToList();
        Assert.True(runs.Count >= 2);
        Assert.All(runs, r => Assert.Equal(701.5, r.Peak.Bar, 1e-6));
        Assert.All(runs, r => Assert.Equal(RunSource.Device, r.Source));
    }

    [Theory]
    [InlineData("scpi-tcp 10.0.0.5:5025 ask READ?", "in")]
    [InlineData("telepathy", "telepathy")]
    public async Task A_connection_that_does_not_read_is_said_beside_its_field(string connection, string said)
    {
        using var shop = await TestShop.OpenAsync();
        var mistakes = new FormMistakes();
        Assert.Null((await FormAsync(shop, connection)).Read(await shop.Bench.Ledger.HouseAsync(Stop), mistakes));
        Assert.Contains(said, mistakes.At("Connection")!.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("100; 100.2\n300; 300.4\n500; 500.9", 3, null)]
    [InlineData("100 100.2 0.1\n300 300.4 0.1", 2, null)]
    [InlineData("100; 100.2; 0.1\n300; 300.4", null, "Some points state an uncertainty and some do not.")]
    [InlineData("100; x", null, "Line 1, '100; x', is no point.")]
    [InlineData("100 kN; 100 kN", null, "Line 1 is another quantity")]
    public async Task Points_of_a_certificate_are_read_line_by_line(string points, int? count, string? said)
    {
        using var shop = await TestShop.OpenAsync();
        var form = await FormAsync(shop, "hand");
        (form.Points, form.Curve, form.Adjusted) = (points, "quadratic", "no");
        var mistakes = new FormMistakes();
        var calibrated = form.Read(await shop.Bench.Ledger.HouseAsync(Stop), mistakes)?.OfType<Records.House.InstrumentCalibrated>().Single();
        Assert.Equal(count, calibrated?.Points?.Length);
        if (said is not null)
            Assert.Contains(said, mistakes.At("Points")!.What, StringComparison.Ordinal);
        else
            Assert.Equal((CurveForm.Quadratic, false), (calibrated!.Curve, calibrated.Adjusted));
    }

    private static async Task WriteAsync(TestShop shop, string connection)
    {
        var mistakes = new FormMistakes();
        var events = (await FormAsync(shop, connection)).Read(await shop.Bench.Ledger.HouseAsync(Stop), mistakes);
        Assert.Empty(mistakes);
        Assert.IsType<Appended.Written>(await shop.Bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead, [.. events!]));
    }

    private static async Task<CalibrationForm> FormAsync(TestShop shop, string connection)
    {
        var form = CalibrationForm.Of((await shop.Bench.Ledger.HouseAsync(Stop)).Find(Gauge)!);
        var today = shop.Bench.Today;
        (form.On, form.Due, form.Certificate, form.Laboratory, form.Expanded, form.Connection) =
            (today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), today.AddDays(365).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), "K-2400", "Saltmarsh Harbour Calibration", "2.5", connection);
        return form;
    }

    private sealed class Life : IHostApplicationLifetime
    {
        public CancellationToken ApplicationStarted => CancellationToken.None;
        public CancellationToken ApplicationStopping => CancellationToken.None;
        public CancellationToken ApplicationStopped => CancellationToken.None;

        public void StopApplication()
        {
        }
    }
}
