using Ramwright.Records.Store;

namespace Ramwright.Records.Tests.Store;

/// <summary>Each way of altering a ledger, and what finds it. The hash itself is checked against FIPS 180-4 in <see cref="ChainTests"/>.</summary>
public sealed class ChainCheckTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static async Task<(LedgerBench Bench, LedgerHead Printed)> EightEntriesAsync()
    {
        var bench = new LedgerBench();
        await bench.RegisterAsync(); // 1, 2
        var job = await bench.OpenAsync(); // 3
        await bench.NoteAsync(job, "four");
        await bench.NoteAsync(job, "five");
        var printed = await bench.Ledger.HeadAsync(Stop);
        await bench.NoteAsync(job, "six");
        await bench.NoteAsync(job, "seven");
        await bench.NoteAsync(job, "eight");
        return (bench, printed);
    }

    [Theory]
    [InlineData("UPDATE Entries SET Body = replace(Body, 'four', 'for') WHERE Number = 4", 4)]
    [InlineData("UPDATE Entries SET At = replace(At, '2026', '2025') WHERE Number = 5", 5)]
    [InlineData("UPDATE Entries SET \"By\" = 'tom-sallow' WHERE Number = 6", 6)]
    [InlineData("UPDATE Entries SET Kind = 'note-written/2' WHERE Number = 4", 4)]
    [InlineData("UPDATE Entries SET Stream = 'job/J-0002' WHERE Number = 4", 4)]
    [InlineData("UPDATE Entries SET Token = lower(hex(randomblob(16))) WHERE Number = 4", 4)]
    [InlineData("UPDATE Entries SET Body = x'00' WHERE Number = 7", 7)]
    [InlineData("DELETE FROM Entries WHERE Number = 5", 5)]
    [InlineData("DELETE FROM Entries WHERE Number = 1", 1)]
    [InlineData("UPDATE Entries SET Number = 100 WHERE Number = 4; UPDATE Entries SET Number = 4 WHERE Number = 5; UPDATE Entries SET Number = 5 WHERE Number = 100", 4)]
    [InlineData("INSERT INTO Entries SELECT 9, Stream, Kind, At, \"By\", lower(hex(randomblob(16))), 0, Body, PreviousHash, Hash FROM Entries WHERE Number = 8", 9)]
    public async Task Any_change_is_found_at_the_first_entry_it_touches(string sql, long first)
    {
        var (bench, _) = await EightEntriesAsync();
        using (bench)
        {
            bench.Tamper(sql);
            Assert.Equal(first, Assert.IsType<Verification.Altered>(await bench.Ledger.VerifyAsync(null, Stop)).First.Value);
        }
    }

    [Fact]
    public async Task The_database_itself_refuses_to_change_or_take_out_an_entry()
    {
        var (bench, _) = await EightEntriesAsync();
        using (bench)
        {
            using var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={bench.Path};Pooling=False");
            connection.Open();
            foreach (var sql in new[] { "UPDATE Entries SET Body = '' WHERE Number = 3", "DELETE FROM Entries WHERE Number = 8" })
            {
                using var command = connection.CreateCommand();
                command.CommandText = sql;
                Assert.Contains("never", Assert.Throws<Microsoft.Data.Sqlite.SqliteException>(() => command.ExecuteNonQuery()).Message, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public async Task A_cut_tail_is_found_by_the_witness()
    {
        var (bench, _) = await EightEntriesAsync();
        using (bench)
        {
            bench.Tamper("DELETE FROM Entries WHERE Number > 6");
            var cut = Assert.IsType<Verification.TailCut>(await bench.Ledger.VerifyAsync(null, Stop));
            Assert.Equal((6, 8), (cut.Head.Number.Value, cut.Witnessed.Number.Value));
        }
    }

    [Fact]
    public async Task A_cut_tail_is_found_by_a_printed_head_when_the_witness_is_gone_too()
    {
        var (bench, printed) = await EightEntriesAsync();
        using (bench)
        {
            bench.Tamper("DELETE FROM Entries WHERE Number > 4");
            File.Delete(bench.Witness);
            Assert.IsType<Verification.Genuine>(await bench.Ledger.VerifyAsync(null, Stop)); // nothing is left that could know
            Assert.IsType<Verification.UnknownHead>(await bench.Ledger.VerifyAsync(printed.Hash, Stop));
        }
    }

    [Fact]
    public async Task A_printed_head_is_found_by_its_eight_digits_among_later_entries()
    {
        var (bench, printed) = await EightEntriesAsync();
        using (bench)
        {
            Assert.True(LedgerHead.TryReadHash(printed.Short.ToUpperInvariant(), out var prefix));
            var genuine = Assert.IsType<Verification.Genuine>(await bench.Ledger.VerifyAsync(prefix, Stop));
            Assert.Equal(5, genuine.Asked!.Value.Value);
            Assert.Equal(8, genuine.Head.Number.Value);
        }
    }

    [Fact]
    public async Task A_ledger_written_anew_as_a_whole_disagrees_with_the_witness()
    {
        var (bench, printed) = await EightEntriesAsync();
        using (bench)
        {
            var witness = await File.ReadAllTextAsync(bench.Witness, Stop);
            bench.Tamper("DELETE FROM Entries; DELETE FROM Jobs;");
            File.Delete(bench.Witness);
            bench.Restart();
            await bench.RegisterAsync();
            var job = await bench.OpenAsync();
            foreach (var note in new[] { "four", "five, but nicer", "six", "seven", "eight" })
                await bench.NoteAsync(job, note);
            await File.WriteAllTextAsync(bench.Witness, witness, Stop);
            Assert.IsType<Verification.Altered>(await bench.Ledger.VerifyAsync(null, Stop));
            File.Delete(bench.Witness);
            Assert.IsType<Verification.UnknownHead>(await bench.Ledger.VerifyAsync(printed.Hash, Stop));
        }
    }

    [Theory]
    [InlineData("9f3c 1ae0", "9f3c1ae0")]
    [InlineData("9F3C1AE0 55", "9f3c1ae055")]
    [InlineData("9f3c 1ae", null)]
    [InlineData("9f3c 1aeg", null)]
    [InlineData("", null)]
    public void A_head_is_read_as_people_type_it(string typed, string? read)
    {
        Assert.Equal(read is not null, LedgerHead.TryReadHash(typed, out var prefix));
        Assert.Equal(read, prefix);
    }
}
