using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Ramwright.Records.Ids;

namespace Ramwright.Records.Store;

/// <summary>Walks the whole chain and compares it with the witness and with a head off a paper.</summary>
internal static class ChainCheck
{
    private const string Columns = "\"Number\", \"Stream\", \"Kind\", \"At\", \"By\", \"Token\", \"Place\", \"Body\", \"PreviousHash\", \"Hash\"";

    public static async Task<Verification> RunAsync(LedgerDb db, Witness witness, string? head, CancellationToken stop)
    {
        // Read before the entries: a write that comes in between then makes the ledger longer than the witness, never shorter.
        var witnessed = witness.Heads().ToDictionary(h => h.Number.Value, h => h.Hash);
        var last = LedgerHead.Empty;
        EntryNumber? asked = head is not null && LedgerHead.Empty.Hash.StartsWith(head, StringComparison.Ordinal) ? EntryNumber.None : null;

        await db.Database.OpenConnectionAsync(stop);
        await using var command = db.Database.GetDbConnection().CreateCommand();
        command.CommandText = $"SELECT {Columns} FROM \"Entries\" ORDER BY \"Number\"";
        await using var reader = await command.ExecuteReaderAsync(stop);
        while (await reader.ReadAsync(stop))
        {
            var row = Row(reader);
            if (Fault(row, last) is { } fault)
                return new Verification.Altered(new(last.Number.Value + 1), fault);
            if (witnessed.TryGetValue(row.Number, out var seen) && seen != row.Hash)
                return new Verification.Altered(new(row.Number), "its hash is not the one that the witness file saw: the ledger was written anew");
            last = new(new(row.Number), row.Hash);
            if (head is not null && row.Hash.StartsWith(head, StringComparison.Ordinal))
                asked = last.Number;
        }

        var latest = witnessed.Count == 0 ? 0 : witnessed.Keys.Max();
        if (latest > last.Number.Value)
            return new Verification.TailCut(last, new(new(latest), witnessed[latest]));
        return head is not null && asked is null ? new Verification.UnknownHead(last, head) : new Verification.Genuine(last, asked);
    }

    private static string? Fault(EntryRow row, LedgerHead before)
    {
        if (row.Number != before.Number.Value + 1)
            return $"it is missing; the next one there is {row.Number.ToString(CultureInfo.InvariantCulture)}";
        if (row.PreviousHash != before.Hash)
            return "it does not follow on the entry before it";
        return Chain.HashOf(row) == row.Hash ? null : "its content is not what was written";
    }

    /// <summary>A row as text, whatever somebody may have put into it.</summary>
    private static EntryRow Row(System.Data.Common.DbDataReader reader)
    {
        string Text(int column) => Convert.ToString(reader.GetValue(column), CultureInfo.InvariantCulture) ?? "";
        return new()
        {
            Number = reader.GetInt64(0),
            Stream = Text(1),
            Kind = Text(2),
            At = Text(3),
            By = Text(4),
            Token = Text(5),
            Place = int.TryParse(Text(6), CultureInfo.InvariantCulture, out var place) ? place : -1,
            Body = Text(7),
            PreviousHash = Text(8),
            Hash = Text(9),
        };
    }
}
