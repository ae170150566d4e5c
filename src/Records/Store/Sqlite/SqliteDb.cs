using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Ramwright.Records.Store.Sqlite;

/// <summary>The tables in SQLite.</summary>
internal sealed class SqliteDb(DbContextOptions<SqliteDb> options) : LedgerDb(options);

/// <summary>Lets <c>dotnet ef migrations add</c> look at the tables; never used at run time.</summary>
internal sealed class SqliteDesign : IDesignTimeDbContextFactory<SqliteDb>
{
    public SqliteDb CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteDb>().UseSqlite("Data Source=:memory:").Options);
}
