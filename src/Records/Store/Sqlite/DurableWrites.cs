using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Ramwright.Records.Store.Sqlite;

/// <summary>Every connection waits for the disk at each commit (FULL), so that an acknowledged entry survives a crash of program or machine.</summary>
/// <param name="more">More statements for each connection; tests make a disk full with it.</param>
internal sealed class DurableWrites(string more) : DbConnectionInterceptor
{
    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData) => Set(connection);

    public override Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        Set(connection);
        return Task.CompletedTask;
    }

    private void Set(DbConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA synchronous = FULL;" + more;
        command.ExecuteNonQuery();
    }
}
