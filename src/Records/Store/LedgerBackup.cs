using System.Globalization;
using Ramwright.Records.Store.Sqlite;

namespace Ramwright.Records.Store;

/// <summary>What became of a backup or a restore.</summary>
public abstract record BackupAnswer
{
    private BackupAnswer() { }

    /// <summary>The copy stands, its chain is sound.</summary>
    /// <param name="SetAside">On a restore: the files that lay there before, under their new names.</param>
    /// <param name="Lost">On a restore: the later head that the replaced ledger stood at, where it could be read; null when nothing later is lost.</param>
    public sealed record Done(string Path, LedgerHead Head, IReadOnlyList<string> SetAside, LedgerHead? Lost) : BackupAnswer;

    /// <summary>Nothing was copied or replaced.</summary>
    public sealed record Refused(string Code, string What, string Mend) : BackupAnswer;
}

/// <summary>Copies a ledger while it is in use, and puts a copy back after checking it.</summary>
public static class LedgerBackup
{
    private static readonly string[] Companions = ["", "-wal", "-shm", ".witness"];

    /// <summary>Copies the ledger into a new file, as it stands at one instant, and checks the copy's chain.</summary>
    public static async Task<BackupAnswer> CopyAsync(Ledger ledger, string to, CancellationToken stop = default)
    {
        if (File.Exists(to) || Directory.Exists(to))
            return new BackupAnswer.Refused("backup-exists", $"{to} exists already.", "Name a file that does not exist; a backup never overwrites.");
        var head = await ledger.HeadAsync(stop); // makes sure that there is a sound ledger to copy
        var unfinished = to + ".unfinished";
        try
        {
            await SqliteCopy.CopyAsync(ledger.Path, unfinished, stop);
            if (await SoundHeadAsync(unfinished, ledger.Clock, stop) is not { } copied || copied.Number < head.Number)
                return new BackupAnswer.Refused("ledger-damaged", $"The copy of {ledger.Path} is not sound.", "Run: ramwright verify ledger.");
            File.Move(unfinished, to);
            return new BackupAnswer.Done(to, copied, [], null);
        }
        catch (Exception e) when (e is not LedgerUnavailableException && SqliteFailures.Explain(e, to, SqliteStore.LongestWait) is not null)
        {
            throw SqliteFailures.Explain(e, to, SqliteStore.LongestWait)!;
        }
        finally
        {
            Remove(unfinished);
        }
    }

    /// <summary>Puts a backup in the ledger's place. What lay there is renamed, never removed. No program may be using the ledger.</summary>
    public static async Task<BackupAnswer> RestoreAsync(string backup, string ledger, TimeProvider clock, CancellationToken stop = default)
    {
        if (!File.Exists(backup))
            return new BackupAnswer.Refused("no-such-file", $"There is no file {backup}.", "Name the file that a backup made.");
        var incoming = ledger + ".incoming";
        try
        {
            await SqliteCopy.CopyAsync(backup, incoming, stop);
            if (await SoundHeadAsync(incoming, clock, stop) is not { } head)
                return new BackupAnswer.Refused("backup-altered", $"The chain of {backup} is not sound; nothing was replaced.", $"Take another backup. To see what is wrong: ramwright verify ledger --ledger {backup}.");
            var before = await HeadOrNullAsync(ledger, clock, stop);
            if (SqliteCopy.InUse(ledger))
                return new BackupAnswer.Refused("ledger-locked", $"Another program is using {ledger}; nothing was replaced.", "Stop the bench (ramwright serve), then restore.");
            var aside = SetAside(ledger, clock);
            File.Move(incoming, ledger);
            new Witness(Ledger.WitnessOf(ledger)).See(head);
            return new BackupAnswer.Done(ledger, head, aside, before is { } b && b.Number > head.Number ? b : null);
        }
        catch (Exception e) when (e is not LedgerUnavailableException && SqliteFailures.Explain(e, backup, SqliteStore.LongestWait) is not null)
        {
            var failure = SqliteFailures.Explain(e, backup, SqliteStore.LongestWait)!;
            throw failure.Code is "disk-full" or "ledger-read-only" ? SqliteFailures.Explain(e, ledger, SqliteStore.LongestWait)! : failure;
        }
        finally
        {
            Remove(incoming);
        }
    }

    /// <summary>The head of a ledger whose chain is sound; null when it is not, or when it is no ledger.</summary>
    private static async Task<LedgerHead?> SoundHeadAsync(string path, TimeProvider clock, CancellationToken stop)
    {
        using var ledger = new Ledger(path, clock);
        return await ledger.VerifyAsync(null, stop) is Verification.Genuine genuine ? genuine.Head : null;
    }

    private static async Task<LedgerHead?> HeadOrNullAsync(string path, TimeProvider clock, CancellationToken stop)
    {
        if (!File.Exists(path))
            return null;
        try
        {
            using var ledger = new Ledger(path, clock);
            return await ledger.HeadAsync(stop);
        }
        catch (LedgerUnavailableException)
        {
            return null; // damaged: that is why somebody restores
        }
    }

    private static List<string> SetAside(string ledger, TimeProvider clock)
    {
        var stamp = clock.GetUtcNow().UtcDateTime.ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture);
        List<string> moved = [];
        foreach (var companion in Companions.Where(c => File.Exists(ledger + c)))
        {
            var aside = $"{ledger}.before-{stamp}{companion}";
            File.Move(ledger + companion, aside);
            moved.Add(aside);
        }

        return moved;
    }

    private static void Remove(string path)
    {
        foreach (var companion in Companions)
            File.Delete(path + companion);
    }
}
