using Microsoft.EntityFrameworkCore;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Wire;

namespace Ramwright.Records.Store;

/// <summary>Entries by stream: one per job, one per customer's tool, one for the house.</summary>
internal static class Streams
{
    public const string House = "house";
    private const string JobPrefix = "job/";

    public static string Of(JobId job) => JobPrefix + job.Value;

    public static string Of(ToolSerial tool) => "tool/" + tool.Value;

    public static string Of(HouseEvent what) => what is ToolRegistered tool ? Of(tool.Tool) : House;

    /// <summary>The job that a stream belongs to; null for another stream.</summary>
    public static JobId? JobOf(string stream) =>
        stream.StartsWith(JobPrefix, StringComparison.Ordinal) && JobId.TryParse(stream[JobPrefix.Length..], out var job) ? job : null;

    /// <summary>The entries of a stream after a number, in order.</summary>
    public static async Task<List<Entry<T>>> ReadAsync<T>(LedgerDb db, string stream, EntryNumber after, CancellationToken stop)
        where T : class
    {
        var rows = await db.Entries.AsNoTracking()
            .Where(e => e.Stream == stream && e.Number > after.Value).OrderBy(e => e.Number).ToListAsync(stop);
        return rows.ConvertAll(ToEntry<T>);
    }

    /// <exception cref="UnreadableEventException">The row is of a later program, or not what it was.</exception>
    public static Entry<T> ToEntry<T>(EntryRow row)
        where T : class
    {
        try
        {
            return new(new(row.Number), UtcText.Read(row.At), PersonId.Parse(row.By), WireJson.Read<T>(row.Kind, row.Body));
        }
        catch (FormatException e)
        {
            throw new UnreadableEventException(row.Kind, $"entry {row.Number}: {e.Message}", e);
        }
    }

    public static async Task<LedgerHead> HeadAsync(LedgerDb db, CancellationToken stop)
    {
        var last = await db.Entries.AsNoTracking().OrderByDescending(e => e.Number).Select(e => new { e.Number, e.Hash }).FirstOrDefaultAsync(stop);
        return last is null ? LedgerHead.Empty : new(new(last.Number), last.Hash);
    }
}
