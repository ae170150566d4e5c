using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;

namespace Ramwright.Records.Tests.Store;

public sealed class LedgerTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_empty_ledger_is_genuine_and_holds_nothing()
    {
        using var bench = new LedgerBench();
        Assert.Empty(await bench.Ledger.JobsInHouseAsync(Stop));
        Assert.Null(await bench.Ledger.ReadAsync(JobId.Parse("J-0001"), Stop));
        Assert.Equal(LedgerHead.Empty, Assert.IsType<Verification.Genuine>(await bench.Ledger.VerifyAsync(null, Stop)).Head);
    }

    [Fact]
    public async Task What_was_written_is_read_after_a_restart_with_signer_time_and_number()
    {
        using var bench = new LedgerBench();
        await bench.RegisterAsync();
        var job = await bench.OpenAsync();
        bench.Clock.Pass(TimeSpan.FromMinutes(3));
        var written = await bench.NoteAsync(job, "left-hand thread");
        bench.Restart();
        var state = (await bench.Ledger.ReadAsync(job, Stop))!;
        var note = Assert.Single(state.Notes);
        Assert.Equal(("left-hand thread", LedgerBench.Ada, written.Numbers[0]), (note.What.Text, note.By, note.Number));
        Assert.Equal(new DateTimeOffset(2026, 3, 2, 12, 3, 0, TimeSpan.Zero), note.At);
        Assert.Equal(4, state.Version.Value); // two people, the opening, the note
    }

    [Fact]
    public async Task Jobs_are_numbered_in_order_with_the_letters_of_the_house()
    {
        using var bench = new LedgerBench();
        Assert.Equal("J-0001", (await bench.OpenAsync()).ToString());
        await bench.Ledger.AppendOnceAsync(SubmitToken.New(), LedgerBench.Ada, new SettingsChanged(HouseSettings.Unset with { JobLetters = "SM" }));
        Assert.Equal("SM-0002", (await bench.OpenAsync()).ToString());
    }

    [Fact]
    public async Task The_same_token_is_written_once_and_gets_the_first_result()
    {
        using var bench = new LedgerBench();
        var job = await bench.OpenAsync();
        var token = SubmitToken.New();
        var first = Assert.IsType<Appended.Written>(await bench.Ledger.AppendOnceAsync(token, LedgerBench.Ada, job, null, new NoteWritten(Station.Arrive, "one"), new NoteWritten(Station.Arrive, "two")));
        bench.Restart();
        var again = Assert.IsType<Appended.Written>(await bench.Ledger.AppendOnceAsync(token, LedgerBench.Ada, job, new(1), new NoteWritten(Station.Arrive, "one"), new NoteWritten(Station.Arrive, "two")));
        Assert.True(again.Repeated);
        Assert.Equal((first.Job, first.Head), (again.Job, again.Head));
        Assert.Equal(first.Numbers, again.Numbers);
        Assert.Equal(2, (await bench.Ledger.ReadAsync(job, Stop))!.Notes.Count);
    }

    [Fact]
    public async Task Twenty_posts_of_one_form_at_once_through_two_doors_are_one_sign_off()
    {
        using var bench = new LedgerBench();
        var job = await bench.OpenAsync();
        using var other = new Ledger(bench.Path, bench.Clock);
        var token = SubmitToken.New();
        var answers = await Task.WhenAll(Enumerable.Range(0, 20).Select(i => Task.Run(() =>
            (i % 2 == 0 ? bench.Ledger : other).AppendOnceAsync(token, LedgerBench.Ada, job, null, new StateSigned(new("battery-removed"))), Stop)));
        var numbers = answers.Cast<Appended.Written>().Select(w => w.Numbers.Single()).Distinct();
        Assert.Single(numbers);
        Assert.Equal(1, answers.Cast<Appended.Written>().Count(w => !w.Repeated));
        Assert.Single((await bench.Ledger.ReadAsync(job, Stop))!.SafeStates);
    }

    [Fact]
    public async Task Many_writers_at_once_leave_a_sound_chain_without_gaps()
    {
        using var bench = new LedgerBench();
        var job = await bench.OpenAsync();
        using var other = new Ledger(bench.Path, bench.Clock);
        await Task.WhenAll(Enumerable.Range(0, 60).Select(i => Task.Run(() =>
            (i % 2 == 0 ? bench.Ledger : other).AppendOnceAsync(SubmitToken.New(), LedgerBench.Ada, job, null, new NoteWritten(Station.Arrive, $"note {i}")), Stop)));
        Assert.Equal(61, Assert.IsType<Verification.Genuine>(await bench.Ledger.VerifyAsync(null, Stop)).Head.Number.Value);
    }

    [Fact]
    public async Task A_writer_who_saw_an_older_version_is_told_who_wrote_what_since()
    {
        using var bench = new LedgerBench();
        await bench.RegisterAsync();
        var job = await bench.OpenAsync();
        var seen = (await bench.Ledger.ReadAsync(job, Stop))!.Version;
        await bench.NoteAsync(job, "somebody was quicker");
        var conflict = Assert.IsType<Appended.Conflict>(await bench.Ledger.AppendOnceAsync(SubmitToken.New(), LedgerBench.Tom, job, seen, new StateSigned(new("battery-removed"))));
        var since = Assert.Single(conflict.Since);
        Assert.Equal((LedgerBench.Ada, "somebody was quicker"), (since.By, Assert.IsType<NoteWritten>(since.What).Text));
        Assert.Empty((await bench.Ledger.ReadAsync(job, Stop))!.SafeStates);
    }

    [Fact]
    public async Task When_the_last_of_several_events_is_refused_none_is_written()
    {
        using var bench = new LedgerBench();
        var job = await bench.OpenAsync();
        var head = await bench.Ledger.HeadAsync(Stop);
        var refused = Assert.IsType<Appended.Refused>(await bench.Ledger.AppendOnceAsync(SubmitToken.New(), LedgerBench.Ada, job, null,
            new NoteWritten(Station.Arrive, "fine"), new QuoteAnswered(true, "Mr Reed", null, null)));
        Assert.Equal("no-quote", refused.Code);
        Assert.Equal(head, await bench.Ledger.HeadAsync(Stop));
    }

    [Fact]
    public async Task Only_people_of_the_register_sign_once_there_are_any()
    {
        using var bench = new LedgerBench();
        await bench.RegisterAsync();
        var refused = Assert.IsType<Appended.Refused>(await bench.Ledger.OpenJobAsync(SubmitToken.New(), PersonId.Parse("nobody"), LedgerBench.Opening()));
        Assert.Equal("unknown-signer", refused.Code);
    }

    [Fact]
    public async Task The_rack_and_a_tools_past_follow_from_the_entries_and_can_be_made_anew()
    {
        using var bench = new LedgerBench();
        await bench.Ledger.AppendOnceAsync(SubmitToken.New(), LedgerBench.Ada, new ToolRegistered(ToolSerial.Parse("A1"), "corrie-85", CustomerId.Parse("eelmarsh-lines")));
        var ended = await bench.OpenAsync("A1");
        await bench.Ledger.AppendOnceAsync(SubmitToken.New(), LedgerBench.Ada, ended, null, new JobEnded(JobEnd.ReturnedUnrepaired, "too dear"));
        var open = await bench.OpenAsync("A1");
        await bench.Ledger.AppendOnceAsync(SubmitToken.New(), LedgerBench.Ada, open, null, new StationReached(Station.Find, null));
        bench.Tamper("DELETE FROM Jobs; DELETE FROM Tools;");
        Assert.Equal(2, await bench.Ledger.RebuildTablesAsync(Stop));

        var place = Assert.Single(await bench.Ledger.JobsInHouseAsync(Stop));
        Assert.Equal((open, Station.Find, new DateOnly(2026, 3, 6)), (place.Job, place.Station, place.Promised));
        Assert.Equal(JobEnd.ReturnedUnrepaired, Assert.Single(await bench.Ledger.EndedJobsAsync(10, Stop)).End);
        var past = await bench.Ledger.ToolHistoryAsync(ToolSerial.Parse("A1"), Stop);
        Assert.Equal([open, ended], past.Jobs.Select(j => j.Job));
        Assert.Equal("corrie-85", past.Registered!.ModelId);
        Assert.Equal("A1", Assert.Single(await bench.Ledger.ToolsAsync(10, Stop)).Tool.Value);
    }
}
