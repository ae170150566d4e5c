using Microsoft.Data.Sqlite;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;
using Ramwright.Records.Store.Sqlite;

namespace Ramwright.Records.Tests.Store;

/// <summary>What can happen to the file, brought about for real, and what the person is told.</summary>
public sealed class FailureTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static async Task<LedgerUnavailableException> FailsAsync(Func<Task> act)
    {
        var failure = await Assert.ThrowsAsync<LedgerUnavailableException>(act);
        Assert.EndsWith(".", failure.Reason, StringComparison.Ordinal);
        Assert.EndsWith(".", failure.Remedy, StringComparison.Ordinal);
        return failure;
    }

    [Fact]
    public async Task A_file_that_is_no_database_is_named_and_left_alone()
    {
        using var bench = new LedgerBench();
        await File.WriteAllTextAsync(bench.Path, new string('x', 5000), Stop);
        var failure = await FailsAsync(() => bench.Ledger.JobsInHouseAsync(Stop));
        Assert.Equal("ledger-damaged", failure.Code);
        Assert.Contains(bench.Path, failure.Reason, StringComparison.Ordinal);
        Assert.Equal(5000, new FileInfo(bench.Path).Length);
    }

    [Fact]
    public async Task Damaged_pages_are_said_plainly()
    {
        using var bench = new LedgerBench();
        var job = await bench.OpenAsync();
        for (var i = 0; i < 30; i++)
            await bench.NoteAsync(job, new string('n', 2000));
        bench.Tamper("PRAGMA wal_checkpoint(TRUNCATE);");
        bench.Ledger.Dispose();
        using (var file = new FileStream(bench.Path, FileMode.Open, FileAccess.Write))
        {
            file.Seek(4096, SeekOrigin.Begin); // keep the first page: it looks like a ledger
            file.Write(Enumerable.Repeat((byte)0xA5, (int)file.Length - 4096).ToArray());
        }

        bench.Restart();
        Assert.Equal("ledger-damaged", (await FailsAsync(() => bench.Ledger.ReadAsync(job, Stop))).Code);
    }

    [Fact]
    public async Task A_lock_that_does_not_go_away_is_said_and_nothing_is_written()
    {
        using var bench = new LedgerBench();
        var job = await bench.OpenAsync();
        using var hasty = new Ledger(bench.Path, bench.Clock, new SqliteStore(bench.Path, TimeSpan.FromSeconds(1)));
        await using (var other = new SqliteConnection($"Data Source={bench.Path};Pooling=False"))
        {
            await other.OpenAsync(Stop);
            await using var held = other.BeginTransaction(deferred: false);
            var failure = await FailsAsync(() => hasty.AppendOnceAsync(SubmitToken.New(), LedgerBench.Ada, job, null, new NoteWritten(Station.Arrive, "late")));
            Assert.Equal("ledger-locked", failure.Code);
        }

        Assert.Empty((await bench.Ledger.ReadAsync(job, Stop))!.Notes);
    }

    [Fact]
    public async Task A_full_disk_is_said_nothing_is_half_written_and_it_goes_on_afterwards()
    {
        using var bench = new LedgerBench();
        var job = await bench.OpenAsync();
        var token = SubmitToken.New();
        var note = new NoteWritten(Station.Arrive, new string('n', 200_000));
        // SQLite's own page limit gives the same SQLITE_FULL as a disk without space.
        using (var cramped = new Ledger(bench.Path, bench.Clock, new SqliteStore(bench.Path, TimeSpan.FromSeconds(1), "PRAGMA max_page_count = 40;")))
            Assert.Equal("disk-full", (await FailsAsync(() => cramped.AppendOnceAsync(token, LedgerBench.Ada, job, null, note, note))).Code);
        Assert.Empty((await bench.Ledger.ReadAsync(job, Stop))!.Notes);
        var written = Assert.IsType<Appended.Written>(await bench.Ledger.AppendOnceAsync(token, LedgerBench.Ada, job, null, note, note));
        Assert.False(written.Repeated);
        Assert.IsType<Verification.Genuine>(await bench.Ledger.VerifyAsync(null, Stop));
    }

    [Fact]
    public async Task A_ledger_that_may_only_be_read_is_read_and_refuses_a_write_in_words()
    {
        using var bench = new LedgerBench();
        var job = await bench.OpenAsync();
        using var readOnly = new Ledger(bench.Path, bench.Clock, new SqliteStore(bench.Path, TimeSpan.FromSeconds(1), "PRAGMA query_only = ON;"));
        Assert.NotNull(await readOnly.ReadAsync(job, Stop));
        Assert.Equal("ledger-read-only", (await FailsAsync(() => readOnly.AppendOnceAsync(SubmitToken.New(), LedgerBench.Ada, job, null, new ReliefLocked()))).Code);
    }

    [Fact]
    public async Task A_ledger_of_a_later_program_is_refused_untouched()
    {
        using var bench = new LedgerBench();
        await bench.OpenAsync();
        bench.Tamper("INSERT INTO __EFMigrationsHistory VALUES ('99990101000000_Later', '99.0.0')");
        Assert.Equal("ledger-newer", (await FailsAsync(() => bench.Ledger.JobsInHouseAsync(Stop))).Code);
    }

    [Fact]
    public async Task An_entry_of_a_kind_that_this_program_does_not_know_is_refused_not_skipped()
    {
        using var bench = new LedgerBench();
        var job = await bench.OpenAsync();
        await bench.NoteAsync(job, "one");
        bench.Tamper("UPDATE Entries SET Kind = 'tool-sung-to/3' WHERE Number = 2");
        var failure = await FailsAsync(() => bench.Ledger.ReadAsync(job, Stop));
        Assert.Equal("ledger-newer", failure.Code);
        Assert.Contains("tool-sung-to/3", failure.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_in_the_files_place_is_said()
    {
        using var bench = new LedgerBench();
        Directory.CreateDirectory(bench.Path);
        Assert.Equal("ledger-cannot-open", (await FailsAsync(() => bench.Ledger.HeadAsync(Stop))).Code);
    }

    [Theory] // result codes: sqlite.org/rescode.html
    [InlineData(5, "ledger-locked")]
    [InlineData(6, "ledger-locked")]
    [InlineData(8, "ledger-read-only")]
    [InlineData(10, "disk-failing")]
    [InlineData(11, "ledger-damaged")]
    [InlineData(13, "disk-full")]
    [InlineData(14, "ledger-cannot-open")]
    [InlineData(26, "ledger-damaged")]
    [InlineData(1, "ledger-failed")]
    public void Each_result_code_has_its_words(int code, string expected) =>
        Assert.Equal(expected, SqliteFailures.Explain(new InvalidOperationException("outer", new SqliteException("x", code)), "/l.db", TimeSpan.FromSeconds(1))!.Code);

    [Fact]
    public void A_fault_of_our_own_is_not_blamed_on_the_disk() =>
        Assert.Null(SqliteFailures.Explain(new InvalidOperationException("a bug"), "/l.db", TimeSpan.FromSeconds(1)));
}
