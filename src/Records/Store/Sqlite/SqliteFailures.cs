using Microsoft.Data.Sqlite;

namespace Ramwright.Records.Store.Sqlite;

/// <summary>What SQLite's failures mean to the person in front of the bench. Result codes: sqlite.org/rescode.html.</summary>
internal static class SqliteFailures
{
    private const int Busy = 5, Locked = 6, ReadOnly = 8, InputOutput = 10, Corrupt = 11, Full = 13, NoRoomForSharedMemory = 4874, CannotOpen = 14, NotADatabase = 26;

    public static LedgerUnavailableException? Explain(Exception failure, string path, TimeSpan wait) => failure switch
    {
        _ when Within<SqliteException>(failure) is { } e => OfCode(e, path, wait),
        _ when Within<UnauthorizedAccessException>(failure) is { } e => Denied(path, e),
        _ when Within<IOException>(failure) is { } e => OfDisk(e, path),
        _ => null,
    };

    public static LedgerUnavailableException NotAFile(string path) => new("ledger-cannot-open",
        $"{path} is a folder, not a ledger.", "Name a file in it, such as ledger.db.");

    public static LedgerUnavailableException LaterSchema(string path, string migration) => new("ledger-newer",
        $"{path} was written by a later version of this program (it holds {migration}).",
        "Use that version or a later one. Nothing was changed.");

    public static LedgerUnavailableException Unreadable(string path, string what, Exception inner) => new("ledger-newer",
        $"{path} holds an entry that this program cannot read: {what}",
        "Use the version that wrote it or a later one. If it is the latest, run: ramwright verify ledger.", inner);

    private static LedgerUnavailableException OfCode(SqliteException e, string path, TimeSpan wait) => e.SqliteErrorCode switch
    {
        Busy or Locked => new("ledger-locked", $"Another program holds {path}, and did not let go in {wait.TotalSeconds:0} seconds.",
            "Close the other program (a backup, a database browser), then send again. Nothing was written.", e),
        ReadOnly => new("ledger-read-only", $"{path} may be read but not written.",
            "Give this user the right to write the file and its folder, then send again. Nothing was written.", e),
        Corrupt => Damaged(path, "its content is damaged", e),
        NotADatabase => Damaged(path, "it is no ledger, or its first bytes are damaged", e),
        CannotOpen => new("ledger-cannot-open", $"{path} cannot be opened.",
            "Check that the folder exists and that this user may use it.", e),
        InputOutput when e.SqliteExtendedErrorCode != NoRoomForSharedMemory => new("disk-failing", $"The disk that holds {path} fails to read or write (SQLite {e.SqliteExtendedErrorCode}).",
            "Copy the file to another disk and go on from there. Nothing was written.", e),
        Full or InputOutput => new("disk-full", $"The disk that holds {path} is full.",
            "Free some space, then send again. Nothing was written.", e),
        _ => new("ledger-failed", $"The database {path} refused: {e.Message}",
            "Run: ramwright verify ledger. If it is sound, this is a fault of the program: please report it.", e),
    };

    private static LedgerUnavailableException Damaged(string path, string what, Exception e) => new("ledger-damaged",
        $"{path} cannot be used: {what}.",
        "Keep the file for evidence and restore the last backup: ramwright restore FILE. Nothing was written.", e);

    private static LedgerUnavailableException Denied(string path, Exception e) => new("ledger-read-only",
        $"This user may not write {path} or its folder.", "Give this user the right, or name another folder.", e);

    private static LedgerUnavailableException OfDisk(IOException e, string path) => (e.HResult & 0xFFFF) is 28 or 0x70
        ? new("disk-full", $"The disk that holds {path} is full.", "Free some space, then send again; what already stands is not doubled.", e)
        : new("disk-failing", $"The disk that holds {path} fails: {e.Message}", "Check the disk and the folder, then send again; what already stands is not doubled.", e);

    private static T? Within<T>(Exception failure)
        where T : Exception
    {
        for (var e = failure; e is not null; e = e.InnerException)
        {
            if (e is T found)
                return found;
        }

        return null;
    }
}
