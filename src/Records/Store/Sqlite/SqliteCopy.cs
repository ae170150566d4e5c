using Microsoft.Data.Sqlite;

namespace Ramwright.Records.Store.Sqlite;

/// <summary>Copies a database by SQLite's online backup: one instant of it, whoever else writes.</summary>
internal static class SqliteCopy
{
    private const int Busy = 5, Locked = 6;

    /// <summary>Copies into a file that holds everything by itself, no log beside it, on the disk when this returns.</summary>
    public static async Task CopyAsync(string from, string to, CancellationToken stop)
    {
        await using (var source = Connection(from, SqliteOpenMode.ReadOnly))
        await using (var target = Connection(to, SqliteOpenMode.ReadWriteCreate))
        {
            await source.OpenAsync(stop);
            await target.OpenAsync(stop);
            source.BackupDatabase(target);
        }

        await using var file = new FileStream(to, FileMode.Open, FileAccess.ReadWrite);
        file.Flush(flushToDisk: true);
    }

    /// <summary>
    /// Whether another program has the database open. Leaving the write-ahead log needs the file for oneself alone, so that is tried;
    /// it also brings the log home into the file. A file that is no database is in nobody's use.
    /// </summary>
    public static bool InUse(string path)
    {
        if (!File.Exists(path))
            return false;
        try
        {
            using var connection = Connection(path, SqliteOpenMode.ReadWrite);
            connection.DefaultTimeout = 1;
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA journal_mode = DELETE;";
            command.ExecuteNonQuery();
            return false;
        }
        catch (SqliteException e)
        {
            return e.SqliteErrorCode is Busy or Locked;
        }
    }

    private static SqliteConnection Connection(string path, SqliteOpenMode mode) =>
        new(new SqliteConnectionStringBuilder { DataSource = path, Mode = mode, Pooling = false }.ToString());
}
