using Ramwright.App.Stations.Find;
using Ramwright.App.Stations.Find.Recordings;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Diagnosis.Actions;
using Ramwright.Metrology.Text;
using Ramwright.Planning;
using Ramwright.Records.Events;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Tests.Stations;

/// <summary>From what is written down to what is likely and what to do next.</summary>
public sealed class FindStationTests
{
    private static readonly SymptomId Decays = new("pressure-decays"), Slow = new("slow");

    [Fact]
    public async Task Of_a_symptom_and_of_a_check_the_last_word_counts()
    {
        using var shop = await TestShop.AtAsync(Station.Find);
        var station = new FindStation(shop.Bench);
        await station.RecordSeenAsync(TestShop.Sign(), shop.Job, [Decays], [], null);
        await station.RecordSeenAsync(TestShop.Sign(), shop.Job, [], [Decays], null);
        await station.RecordCheckAsync(TestShop.Sign(), shop.Job, new("hold"), "falls", null);
        await station.RecordCheckAsync(TestShop.Sign(), shop.Job, new("hold"), "holds", "after bleeding");
        var evidence = FoundEvidence.Of(ModelOf(shop), await shop.StateAsync());
        Assert.Empty(evidence.Seen);
        Assert.Equal([Decays], evidence.NotSeen);
        Assert.Equal("holds", Assert.Single(evidence.Checks).Outcome);
    }

    [Fact]
    public async Task What_is_said_again_is_not_written_again()
    {
        using var shop = await TestShop.AtAsync(Station.Find);
        var station = new FindStation(shop.Bench);
        await station.RecordSeenAsync(TestShop.Sign(), shop.Job, [Decays], [Slow], null);
        var before = (await shop.StateAsync()).Version;
        Assert.Equal("Nothing new was ticked or written.", TestShop.Why(await station.RecordSeenAsync(TestShop.Sign(), shop.Job, [Decays], [Slow], " ")));
        Assert.Equal(before, (await shop.StateAsync()).Version);
    }

    [Fact]
    public async Task A_fault_taken_back_counts_no_more_and_the_answer_follows_the_job()
    {
        using var shop = await TestShop.AtAsync(Station.Find);
        var (station, diagnosing) = (new FindStation(shop.Bench), new Diagnosing());
        await station.RecordSeenAsync(TestShop.Sign(), shop.Job, [Decays], [], null);
        var seen = await shop.StateAsync();
        var likely = Weighed(diagnosing, shop, seen).Report.Faults[0];
        Assert.True(likely.Probability > 3 * likely.Rate);
        await shop.WriteAsync(new EntryCorrected(seen.Findings[0].Number, "it was another tool"));
        var after = Weighed(diagnosing, shop, await shop.StateAsync()).Report;
        Assert.All(after.Faults, f => Assert.Equal(f.Rate, f.Probability, 1e-9));
    }

    [Fact]
    public async Task A_recording_is_kept_read_and_weighed_in_place_of_what_it_shows_more_exactly()
    {
        using var shop = await TestShop.AtAsync(Station.Find);
        using var folder = new CommandLine.TemporaryFolder();
        var (station, files, reader) = (new FindStation(shop.Bench), new StrokeFiles(folder.Path), new StrokeReader());
        var said = new SaidOfRecording(null, null, null);
        await station.RecordSeenAsync(TestShop.Sign(), shop.Job, [Decays], [], null);
        await using var bytes = File.OpenRead(Path.Combine(Checkout.Root, "tests", "Hydraulics.Tests", "Recordings", "bypass-leak.csv"));
        var sha = await files.PutAsync(bytes, TestContext.Current.CancellationToken);
        var read = reader.Read(files.Find(sha)!, sha, "bypass-leak.csv", ModelOf(shop), said, new FormMistakes());
        Assert.IsType<ActAnswer.Done>(await station.RecordStrokeAsync(TestShop.Sign(), shop.Job, "bypass-leak.csv", sha, said, read!));

        var state = await shop.StateAsync();
        Assert.Contains(state.Strokes[0].What.Faults, f => f.Fault.Value == "low-fill" && f.Factor < 0.1); // looked for and not there speaks against it
        var weighed = Weighed(new Diagnosing(), shop, state);
        Assert.Equal("bypass-leaks", weighed.Report.Faults[0].Fault.Value);
        Assert.True(weighed.Report.Faults[0].Probability > 4 * weighed.Report.Faults[0].Rate); // a seat or a lever that leaks looks the same to a gauge
        Assert.Single(weighed.Report.LeftOut); // the decay that was seen is the same as the pause that was recorded
        Assert.Contains("<svg", StrokePicture.Of(read!, ModelOf(shop), UnitSystem.Metric).Narrow, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_no_recording_says_why_and_where()
    {
        using var folder = new CommandLine.TemporaryFolder();
        var mistakes = new FormMistakes();
        var path = folder.Write("bad.csv", "time_s,pressure_bar\n0,1\n0.001,x\n0.002,3\n");
        Assert.Null(new StrokeReader().Read(path, "a", "bad.csv", Corrie(), new(null, null, null), mistakes));
        Assert.Contains(mistakes, m => m.What.Contains("Line 3", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_advised_remedy_comes_first()
    {
        using var shop = await TestShop.AtAsync(Station.Find);
        var station = new FindStation(shop.Bench);
        await station.RecordSeenAsync(TestShop.Sign(), shop.Job, [Decays], [Slow], null);
        await station.RecordCheckAsync(TestShop.Sign(), shop.Job, new("hold"), "falls", null);
        var state = await shop.StateAsync();
        var diagnosed = new Diagnosing().Of(ModelOf(shop), state, Rates);
        var remedies = FindView.Remedies(ModelOf(shop), state, diagnosed);
        Assert.True(remedies[0].Mends > remedies[^1].Mends);
        if (Assert.IsType<Diagnosed.Weighed>(diagnosed).Advice.Next.Act is ServiceAct.Repair repair)
            Assert.Equal(repair.Remedy, remedies[0].Remedy.Id);
    }

    private static Rates Rates => Records.House.HouseState.Empty.Settings.Rates;

    private static Diagnosed.Weighed Weighed(Diagnosing diagnosing, TestShop shop, Records.Jobs.JobState state) =>
        Assert.IsType<Diagnosed.Weighed>(diagnosing.Of(ModelOf(shop), state, Rates));

    private static ServiceModel ModelOf(TestShop shop) => shop.Bench.Models.Find("corrie-85")!.Model;

    private static ServiceModel Corrie() => new ShopModels(Path.Combine(AppContext.BaseDirectory, "models")).Find("corrie-85")!.Model;
}
