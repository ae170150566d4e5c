using Microsoft.EntityFrameworkCore;
using Ramwright.Records.Store.Sqlite;

namespace Ramwright.Records.Tests.Store;

public sealed class SchemaTests
{
    [Fact]
    public void The_migrations_hold_every_table_and_column_of_the_model()
    {
        using var db = new SqliteDesign().CreateDbContext([]);
        Assert.False(db.Database.HasPendingModelChanges());
    }

    [Theory]
    [InlineData("journal_mode", "wal")]
    [InlineData("synchronous", "2")] // FULL
    [InlineData("foreign_keys", "1")]
    public async Task Connections_wait_for_the_disk(string pragma, string value)
    {
        using var bench = new LedgerBench();
        await bench.OpenAsync();
        await using var db = new SqliteStore(bench.Path, TimeSpan.FromSeconds(1)).Open();
        await db.Database.OpenConnectionAsync(TestContext.Current.CancellationToken);
        await using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = $"PRAGMA {pragma}";
        Assert.Equal(value, Convert.ToString(await command.ExecuteScalarAsync(TestContext.Current.CancellationToken), System.Globalization.CultureInfo.InvariantCulture));
    }
}
