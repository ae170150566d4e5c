using System.Collections.Immutable;
using Ramwright.App.Stations.Arrive;
using Ramwright.App.Stations.Find;
using Ramwright.App.Stations.Plan;
using Ramwright.App.Stations.Price;
using Ramwright.App.Stations.Prove;
using Ramwright.App.Stations.Rebuild;
using Ramwright.App.Stations.Release;
using Ramwright.App.Stations.Set;
using Ramwright.App.Stations.Strip;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Tests.Stations;

/// <summary>What each station's acts answer to bad input, to a job that stands elsewhere, and to a form sent twice.</summary>
public sealed class StationActsTests
{
    private static readonly Signature Any = TestShop.Sign();

    /// <summary>One act of each kind, with its station and what it is refused for when nothing was filled in.</summary>
    private static readonly (Station At, string Name, Func<TestShop, Signature, Task<ActAnswer>> Act, string? Empty)[] Acts =
    [
        (Station.Arrive, "sign safe", (s, by) => new ArriveStation(s.Bench).SignSafeAsync(by, s.Job, new NodeId("no-such-state")), "'no-such-state' is no state that makes this tool safe."),
        (Station.Find, "seen", (s, by) => new FindStation(s.Bench).RecordSeenAsync(by, s.Job, [], [], " "), "Nothing new was ticked or written."),
        (Station.Find, "measured", (s, by) => new FindStation(s.Bench).RecordMeasurementAsync(by, s.Job, "", MeasuredValue.Of(Pressure.FromBar(1)), null, null), "Say what was measured."),
        (Station.Find, "checked", (s, by) => new FindStation(s.Bench).RecordCheckAsync(by, s.Job, new CheckId("hold"), "no-such-outcome", null), "Say how the check came out."),
        (Station.Find, "as found", (s, by) => new FindStation(s.Bench).RecordAsFoundAsync(by, s.Job, [], null), "No run was written down."),
        (Station.Find, "decide", (s, by) => new FindStation(s.Bench).DecideAsync(by, s.Job, [], [], null), "Say what is wrong, or why nothing is."),
        (Station.Plan, "take on", (s, by) => new PlanStation(s.Bench, s.Archive).TakeOnAsync(by, s.Job, ImmutableHashSet<NodeId>.Empty), "There is no plan to take on."),
        (Station.Plan, "choose again", (s, by) => new PlanStation(s.Bench, s.Archive).ChooseAgainAsync(by, s.Job), null),
        (Station.Price, "name", (s, by) => new PriceStation(s.Bench, s.Archive).NameAsync(by, s.Job), null),
        (Station.Price, "answer", (s, by) => new PriceStation(s.Bench, s.Archive).AnswerAsync(by, s.Job, true, "R. Sedge", null, null), "No price was named yet."),
        (Station.Strip, "sign", (s, by) => new StripStation(s.Bench).SignAsync(by, s.Job, 0, null, null), "Every step of the plan is signed."),
        (Station.Strip, "inspect", (s, by) => new StripStation(s.Bench).InspectAsync(by, s.Job, new NodeId("ram"), new InspectionId("none"), true, null, null), "That inspection is answered already, or not due yet."),
        (Station.Strip, "undo", (s, by) => new StripStation(s.Bench).UndoAsync(by, s.Job, null), "No step of this plan is signed yet."),
        (Station.Rebuild, "sign", (s, by) => new RebuildStation(s.Bench).SignAsync(by, s.Job, 0, null, null, [], null), "Every step of the plan is signed."),
        (Station.Rebuild, "note", (s, by) => new RebuildStation(s.Bench).NoteAsync(by, s.Job, " "), "The note is empty."),
        (Station.Set, "read", (s, by) => new SetStation(s.Bench).ReadAsync(by, s.Job, Pressure.FromBar(0), null), "A peak of 0 bar is none."),
        (Station.Set, "turn", (s, by) => new SetStation(s.Bench).TurnAsync(by, s.Job, Angle.FromDegrees(0)), "A turn is more than nothing and at most twelve full turns."),
        (Station.Set, "lock", (s, by) => new SetStation(s.Bench).LockAsync(by, s.Job), "No run was read yet."),
        (Station.Set, "finish", (s, by) => new SetStation(s.Bench).FinishAsync(by, s.Job), "The relief screw is not locked yet."),
        (Station.Set, "back to Find", (s, by) => new SetStation(s.Bench).BackToFindAsync(by, s.Job, " "), "No reason was given."),
        (Station.Prove, "open", (s, by) => new ProveStation(s.Bench).OpenAsync(by, s.Job, new SeriesWish(InstrumentId.Parse("XX-9"), "dies closed", null, null)), "No instrument is called XX-9."),
        (Station.Prove, "open with an overdue device", (s, by) => new ProveStation(s.Bench).OpenAsync(by, s.Job, new SeriesWish(InstrumentId.Parse("TW-1"), "dies closed", null, null)), "TW-1 does not read the pressure of this tool: its kind, range or the model's ram diameter is missing."),
        (Station.Prove, "run", (s, by) => new ProveStation(s.Bench).TakeRunsAsync(by, s.Job, [new GivenRun(Pressure.FromBar(700))]), "No series is open."),
        (Station.Prove, "void", (s, by) => new ProveStation(s.Bench).VoidAsync(by, s.Job, 1, "cable pulled"), "No series is open; a closed one stays as it is."),
        (Station.Prove, "close", (s, by) => new ProveStation(s.Bench).CloseAsync(by, s.Job), "No series is open."),
        (Station.Prove, "on to Release", (s, by) => new ProveStation(s.Bench).GoAsync(by, s.Job, Station.Release, null), "No closed series stands."),
    ];

    [Fact]
    public async Task Bad_input_is_refused_with_what_is_wrong_and_writes_nothing()
    {
        foreach (var station in Acts.GroupBy(a => a.At))
        {
            using var shop = station.Key == Station.Arrive ? await TestShop.OpenAsync() : await TestShop.AtAsync(station.Key);
            var before = (await shop.StateAsync()).Version;
            foreach (var (_, name, act, empty) in station.Where(a => a.Empty is not null))
                Assert.Equal($"{station.Key}, {name}: {empty}", $"{station.Key}, {name}: {TestShop.Why(await act(shop, TestShop.Sign()))}");
            Assert.Equal(before, (await shop.StateAsync()).Version);
        }
    }

    [Fact]
    public async Task An_act_of_another_station_is_refused_with_where_the_job_stands()
    {
        foreach (var stands in new[] { Station.Find, Station.Prove })
        {
            using var shop = await TestShop.AtAsync(stands);
            foreach (var (_, name, act, _) in Acts.Where(a => a.At != stands))
                Assert.True($"Job {shop.Job} stands at {stands} now." == TestShop.Why(await act(shop, TestShop.Sign())), name);
        }
    }

    [Fact]
    public async Task A_job_that_is_not_there_and_one_that_has_ended_take_nothing()
    {
        using var shop = await TestShop.AtAsync(Station.Set);
        Assert.Equal("There is no job SM-9999.", TestShop.Why(await new SetStation(shop.Bench).LockAsync(Any, JobId.Parse("SM-9999"))));
        Assert.IsType<ActAnswer.Done>(await new ReleaseStation(shop.Bench, shop.Archive).EndAsync(TestShop.Sign(), shop.Job, JobEnd.Retired, "frame cracked"));
        Assert.Equal($"Job {shop.Job} has ended.", TestShop.Why(await new SetStation(shop.Bench).LockAsync(TestShop.Sign(), shop.Job)));
    }

    [Fact]
    public async Task A_form_sent_twice_gets_its_first_answer_also_after_the_job_moved_on()
    {
        using var shop = await TestShop.AtAsync(Station.Find);
        var form = TestShop.Sign();
        var find = new FindStation(shop.Bench);
        var first = Assert.IsType<ActAnswer.Done>(await find.DecideAsync(form, shop.Job, [new NodeId("seal-ram")], [], "leaks"));
        var again = Assert.IsType<ActAnswer.Done>(await find.DecideAsync(form, shop.Job, [new NodeId("seal-ram")], [], "leaks"));
        Assert.Equal(Station.Plan, (await shop.StateAsync()).Station);
        Assert.Equal(first.Entry, again.Entry);
        Assert.True(again.Repeated);
    }

    [Fact]
    public async Task A_tool_taken_in_twice_by_one_form_is_one_job_and_by_two_forms_is_refused()
    {
        using var shop = await TestShop.OpenAsync();
        var arrive = new ArriveStation(shop.Bench);
        Assert.StartsWith("Tool 2231 is in the house already", TestShop.Why(await arrive.TakeInAsync(TestShop.Sign(), TestShop.TakenIn)), StringComparison.Ordinal);
        var other = TestShop.TakenIn with { Tool = ToolSerial.Parse("4711") };
        var form = TestShop.Sign();
        Assert.Equal(Assert.IsType<ActAnswer.Done>(await arrive.TakeInAsync(form, other)).Job, Assert.IsType<ActAnswer.Done>(await arrive.TakeInAsync(form, other)).Job);
    }

    [Fact]
    public async Task A_quote_whose_paper_failed_gets_it_when_the_same_form_is_sent_again()
    {
        using var shop = await TestShop.AtAsync(Station.Price);
        var form = TestShop.Sign();
        await File.WriteAllTextAsync(shop.PaperFolder, "in the way", TestContext.Current.CancellationToken); // a file where the folder of papers should be
        var station = new PriceStation(shop.Bench, shop.Archive);
        await Assert.ThrowsAnyAsync<IOException>(() => station.NameAsync(form, shop.Job));
        File.Delete(shop.PaperFolder);
        Assert.IsType<ActAnswer.Done>(await station.NameAsync(form, shop.Job));
        Assert.IsType<ActAnswer.Done>(await station.NameAsync(form, shop.Job));
        var job = await shop.StateAsync();
        Assert.Single(job.History, e => e.What is QuoteMade);
        Assert.NotNull(shop.Archive.Find(Assert.Single(job.Reports).What.Number));
    }

    [Fact]
    public async Task An_end_sent_twice_is_one_end_with_one_paper()
    {
        using var shop = await TestShop.AtAsync(Station.Set);
        var form = TestShop.Sign();
        var release = new ReleaseStation(shop.Bench, shop.Archive);
        Assert.Equal("No reason was given.", TestShop.Why(await release.EndAsync(TestShop.Sign(), shop.Job, JobEnd.SentOut, " ")));
        Assert.Equal($"Job {shop.Job} stands at Set.", TestShop.Why(await release.EndAsync(TestShop.Sign(), shop.Job, JobEnd.Released, null)));
        var first = Assert.IsType<ActAnswer.Done>(await release.EndAsync(form, shop.Job, JobEnd.SentOut, "to the maker"));
        Assert.Equal(first.Entry, Assert.IsType<ActAnswer.Done>(await release.EndAsync(form, shop.Job, JobEnd.SentOut, "to the maker")).Entry);
        Assert.Single((await shop.StateAsync()).Reports);
    }
}
