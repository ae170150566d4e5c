using Ramwright.Records.Store;

namespace Ramwright.Records.Tests.Store;

public sealed class LedgerBackupTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_backup_made_while_in_use_comes_back_and_says_what_is_lost()
    {
        using var bench = new LedgerBench();
        var job = await bench.OpenAsync();
        await bench.NoteAsync(job, "kept");
        var copy = bench.Path + ".backup";
        var made = Assert.IsType<BackupAnswer.Done>(await LedgerBackup.CopyAsync(bench.Ledger, copy, Stop));
        Assert.Equal(2, made.Head.Number.Value);
        await bench.NoteAsync(job, "after the backup");
        bench.Ledger.Dispose();

        var back = Assert.IsType<BackupAnswer.Done>(await LedgerBackup.RestoreAsync(copy, bench.Path, bench.Clock, Stop));
        Assert.Equal(3, back.Lost!.Value.Number.Value);
        Assert.Contains(back.SetAside, f => f.EndsWith(".witness", StringComparison.Ordinal) && File.Exists(f));
        bench.Restart();
        Assert.Equal("kept", Assert.Single((await bench.Ledger.ReadAsync(job, Stop))!.Notes).What.Text);
        Assert.IsType<Verification.Genuine>(await bench.Ledger.VerifyAsync(null, Stop));
        await bench.NoteAsync(job, "life goes on");
        Assert.IsType<Verification.Genuine>(await bench.Ledger.VerifyAsync(null, Stop));
    }

    [Fact]
    public async Task A_backup_never_overwrites()
    {
        using var bench = new LedgerBench();
        await bench.OpenAsync();
        var copy = bench.Path + ".backup";
        await File.WriteAllTextAsync(copy, "mine", Stop);
        Assert.Equal("backup-exists", Assert.IsType<BackupAnswer.Refused>(await LedgerBackup.CopyAsync(bench.Ledger, copy, Stop)).Code);
        Assert.Equal("mine", await File.ReadAllTextAsync(copy, Stop));
    }

    [Fact]
    public async Task An_altered_backup_is_not_restored_and_the_ledger_stays()
    {
        using var bench = new LedgerBench();
        var job = await bench.OpenAsync();
        await bench.NoteAsync(job, "one");
        var copy = bench.Path + ".backup";
        await LedgerBackup.CopyAsync(bench.Ledger, copy, Stop);
        using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={copy};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "DROP TRIGGER Entries_no_update; UPDATE Entries SET Body = replace(Body, 'one', 'two')";
            command.ExecuteNonQuery();
        }

        bench.Ledger.Dispose();
        Assert.Equal("backup-altered", Assert.IsType<BackupAnswer.Refused>(await LedgerBackup.RestoreAsync(copy, bench.Path, bench.Clock, Stop)).Code);
        bench.Restart();
        Assert.Equal("one", Assert.Single((await bench.Ledger.ReadAsync(job, Stop))!.Notes).What.Text);
    }

    [Fact]
    public async Task A_ledger_in_use_is_not_replaced()
    {
        using var bench = new LedgerBench();
        await bench.OpenAsync();
        var copy = bench.Path + ".backup";
        await LedgerBackup.CopyAsync(bench.Ledger, copy, Stop);
        using var other = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={bench.Path};Pooling=False");
        other.Open();
        using var command = other.CreateCommand();
        command.CommandText = "SELECT COUNT(*) FROM Entries";
        command.ExecuteScalar();
        Assert.Equal("ledger-locked", Assert.IsType<BackupAnswer.Refused>(await LedgerBackup.RestoreAsync(copy, bench.Path, bench.Clock, Stop)).Code);
    }

    [Fact]
    public async Task A_damaged_ledger_is_replaced_and_kept_for_evidence()
    {
        using var bench = new LedgerBench();
        var job = await bench.OpenAsync();
        var copy = bench.Path + ".backup";
        await LedgerBackup.CopyAsync(bench.Ledger, copy, Stop);
        bench.Ledger.Dispose();
        await File.WriteAllTextAsync(bench.Path, new string('x', 9000), Stop);
        var back = Assert.IsType<BackupAnswer.Done>(await LedgerBackup.RestoreAsync(copy, bench.Path, bench.Clock, Stop));
        Assert.Contains(back.SetAside, f => new FileInfo(f).Length == 9000);
        bench.Restart();
        Assert.NotNull(await bench.Ledger.ReadAsync(job, Stop));
    }
}
