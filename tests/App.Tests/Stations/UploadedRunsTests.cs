using System.Text;
using Ramwright.App.Stations.Prove;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;

namespace Ramwright.App.Tests.Stations;

public sealed class UploadedRunsTests
{
    [Fact]
    public async Task Void_marks_of_the_file_stand_in_the_ledger_with_their_causes()
    {
        using var shop = await SeriesAsync();
        var runs = Read(shop, "run;peak_bar;void\n1;701;\n2;655;trigger let go too early\n3;699;\n", out _);
        Assert.IsType<ActAnswer.Done>(await new ProveStation(shop.Bench).TakeRunsAsync(TestShop.Sign(), shop.Job, runs));
        var series = (await shop.StateAsync()).OpenSeries!;
        Assert.Equal([701, 699], series.Peaks.Select(p => Math.Round(p.Bar, 6)));
        Assert.Equal([null, "trigger let go too early", null], series.Runs.Select(r => r.Void?.What.Cause));
    }

    [Fact]
    public async Task Forces_are_taken_by_the_models_ram()
    {
        using var shop = await SeriesAsync();
        // As in ProveVerbTests: 82.22 kN on the Corrie 85 stand for 700.0 bar.
        Assert.Equal(700.0, Assert.Single(Read(shop, "force_kN\n82.22\n", out _)).Peak.Bar, 0.05);
    }

    [Theory]
    [InlineData("run;peak_bar;void\n1;701;x\n", "Line 2: the run is marked void without a cause")]
    [InlineData("run;peak_bar;void\n1;701;\n2;;cable pulled\n", "Line 3: run 2 is void and has no peak, so there is nothing to record.")]
    [InlineData("peak_bar\n7O1\n", "Line 2: peak_bar is '7O1', which is no number")]
    [InlineData("701\n", "Line 1: the file has no header and no unit was given")]
    public async Task What_cannot_be_taken_is_said_by_line(string file, string what)
    {
        using var shop = await SeriesAsync();
        Assert.Empty(Read(shop, file, out var mistakes));
        Assert.Equal(what, Assert.Single(mistakes).What);
    }

    [Fact]
    public async Task A_void_run_above_the_maximum_quarantines_too()
    {
        using var shop = await SeriesAsync();
        var runs = Read(shop, "run;peak_bar;void\n1;741;wrong die\n2;700;\n", out _);
        Assert.IsType<ActAnswer.Done>(await new ProveStation(shop.Bench).TakeRunsAsync(TestShop.Sign(), shop.Job, runs));
        Assert.NotNull((await shop.StateAsync()).Quarantine);
    }

    private static async Task<TestShop> SeriesAsync()
    {
        var shop = await TestShop.AtAsync(Station.Prove);
        Assert.IsType<ActAnswer.Done>(await new ProveStation(shop.Bench).OpenAsync(TestShop.Sign(), shop.Job, new SeriesWish(InstrumentId.Parse("PG-1"), "dies closed", null, null)));
        return shop;
    }

    private static IReadOnlyList<GivenRun> Read(TestShop shop, string file, out FormMistakes mistakes) =>
        UploadedRuns.Read("runs.csv", Encoding.UTF8.GetBytes(file), null, shop.Bench.Models.Find("corrie-85")!.Model, mistakes = new FormMistakes());
}
