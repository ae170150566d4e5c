using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Ramwright.Records.Store.Sqlite;

/// <summary>The ledger in one SQLite file with a write-ahead log.</summary>
internal sealed class SqliteStore(string path, TimeSpan wait, string pragmas = "") : ILedgerStore
{
    /// <summary>How long a writer waits for another program's lock before it says so.</summary>
    public static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(8);

    private readonly DbContextOptions<SqliteDb> options = new DbContextOptionsBuilder<SqliteDb>()
        .UseSqlite(ConnectionString(path, SqliteOpenMode.ReadWriteCreate, wait))
        .AddInterceptors(new DurableWrites(pragmas))
        .Options;

    public string Name => path;

    public static string ConnectionString(string path, SqliteOpenMode mode, TimeSpan? wait = null) => new SqliteConnectionStringBuilder
    {
        DataSource = path,
        Mode = mode,
        DefaultTimeout = (int)(wait ?? LongestWait).TotalSeconds,
        ForeignKeys = true,
    }.ToString();

    public LedgerDb Open() => new SqliteDb(options);

    public LedgerUnavailableException? Explain(Exception failure) => SqliteFailures.Explain(failure, path, wait);

    public void Close()
    {
        using var connection = new SqliteConnection(ConnectionString(path, SqliteOpenMode.ReadWriteCreate, wait));
        SqliteConnection.ClearPool(connection);
    }

    public async Task PrepareAsync(CancellationToken stop)
    {
        if (Directory.Exists(path))
            throw SqliteFailures.NotAFile(path);
        await using var db = Open();
        var known = db.Database.GetMigrations().ToArray();
        var applied = await AppliedAsync(db, stop);
        if (applied.FirstOrDefault(m => !known.Contains(m, StringComparer.Ordinal)) is { } later)
            throw SqliteFailures.LaterSchema(path, later);
        if (applied.Count < known.Length)
        {
            if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder)
                Directory.CreateDirectory(folder);
            await db.Database.MigrateAsync(stop);
        }
    }

    /// <summary>Migrations written in the file. Asked directly: EF's own question costs a tenth of a second at every start.</summary>
    private async Task<List<string>> AppliedAsync(LedgerDb db, CancellationToken stop)
    {
        List<string> applied = [];
        if (!File.Exists(path) || new FileInfo(path).Length == 0)
            return applied;
        await db.Database.OpenConnectionAsync(stop);
        await using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = "SELECT COUNT(*) FROM sqlite_master WHERE name = '__EFMigrationsHistory'";
        if (Convert.ToInt64(await command.ExecuteScalarAsync(stop), System.Globalization.CultureInfo.InvariantCulture) == 0)
            return applied;
        command.CommandText = "SELECT MigrationId FROM __EFMigrationsHistory ORDER BY MigrationId";
        await using var reader = await command.ExecuteReaderAsync(stop);
        while (await reader.ReadAsync(stop))
            applied.Add(reader.GetString(0));
        return applied;
    }
}
