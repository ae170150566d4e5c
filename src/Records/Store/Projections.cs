using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Ramwright.Proving;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.Records.Wire;

namespace Ramwright.Records.Store;

/// <summary>The tables that lists are read from; each row follows from entries alone.</summary>
internal static class Projections
{
    public static async Task WriteAsync(LedgerDb db, JobState job)
    {
        if (job.Opened is not { } opened)
            return;
        var row = await db.Jobs.FindAsync(job.Id.Value);
        if (row is null)
            db.Jobs.Add(row = new() { Id = job.Id.Value, Number = job.Id.Number });
        row.Station = (int)job.Station;
        row.Tool = opened.What.Tool.Value;
        row.ModelId = opened.What.ModelId;
        row.Customer = opened.What.Customer.Value;
        row.Lot = opened.What.Lot?.Value;
        row.Complaint = opened.What.Complaint;
        row.Promised = opened.What.Promised?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        row.OpenedAt = UtcText.Write(opened.At);
        row.LastAt = UtcText.Write(job.History[^1].At);
        row.Version = job.Version.Value;
        row.Verdict = (int?)job.StandingProof?.Closed!.What.Verdict.Conformity;
        row.Quarantined = job.Quarantine is not null;
        row.End = (int?)job.End?.What.End;
    }

    public static async Task WriteAsync(LedgerDb db, ToolRegistered tool, long entry)
    {
        var row = await db.Tools.FindAsync(tool.Tool.Value);
        if (row is null)
            db.Tools.Add(row = new() { Serial = tool.Tool.Value });
        row.ModelId = tool.ModelId;
        row.Owner = tool.Owner.Value;
        row.Entry = entry;
    }

    public static RackPlace ToPlace(JobRow row) => new(
        JobId.Parse(row.Id), (Station)row.Station, ToolSerial.Parse(row.Tool), row.ModelId, CustomerId.Parse(row.Customer),
        row.Lot is { } lot ? LotId.Parse(lot) : null, row.Complaint,
        row.Promised is { } day ? DateOnly.ParseExact(day, "yyyy-MM-dd", CultureInfo.InvariantCulture) : null,
        UtcText.Read(row.OpenedAt), UtcText.Read(row.LastAt), new(row.Version), (Conformity?)row.Verdict, row.Quarantined, (JobEnd?)row.End);

    /// <summary>Empties the tables and fills them from the entries, job by job.</summary>
    public static async Task<int> RebuildAsync(LedgerDb db, CancellationToken stop)
    {
        await db.Jobs.ExecuteDeleteAsync(stop);
        await db.Tools.ExecuteDeleteAsync(stop);
        var jobs = 0;
        foreach (var stream in await db.Entries.AsNoTracking().Select(e => e.Stream).Distinct().ToListAsync(stop))
        {
            if (Streams.JobOf(stream) is { } job)
            {
                await WriteAsync(db, JobState.Fold(job, await Streams.ReadAsync<JobEvent>(db, stream, EntryNumber.None, stop)));
                jobs++;
            }
            else if (stream != Streams.House && (await Streams.ReadAsync<HouseEvent>(db, stream, EntryNumber.None, stop)).LastOrDefault() is { What: ToolRegistered tool } last)
            {
                await WriteAsync(db, tool, last.Number.Value);
            }

            await db.SaveChangesAsync(stop);
            db.ChangeTracker.Clear();
        }

        return jobs;
    }
}
