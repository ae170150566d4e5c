using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.Records.Store.Sqlite;
using Ramwright.Records.Wire;

namespace Ramwright.Records.Store;

/// <summary>
/// The house's ledger: entries are added, never changed, and chained by hash. Every write is one transaction that is on the disk
/// before it is acknowledged. Safe for use from several threads. Every call may throw <see cref="LedgerUnavailableException"/>.
/// </summary>
/// <remarks>The file is looked at on the first call, not before: whoever only holds a ledger pays nothing for it.</remarks>
public sealed class Ledger : IDisposable
{
    /// <summary>So many earlier series of a model are looked at, the latest first; beyond, more say nothing new of how alike its tools are.</summary>
    public const int MostEarlierSeries = 200;

    private readonly LedgerSession session;
    private readonly LedgerWriter writer;
    private readonly EarlierProofs proofs = new();

    /// <param name="path">The database file; made on the first write or read when it does not exist. Its witness lies beside it.</param>
    public Ledger(string path, TimeProvider clock)
        : this(path, clock, new SqliteStore(path, SqliteStore.LongestWait))
    {
    }

    internal Ledger(string path, TimeProvider clock, ILedgerStore store)
    {
        Path = path;
        Clock = clock;
        session = new(store, new(WitnessOf(path)), clock);
        writer = new(session);
    }

    /// <summary>The database file.</summary>
    public string Path { get; }

    public TimeProvider Clock { get; }

    /// <summary>Opens a job: gives it the next number and writes the opening, with more events if given, as one.</summary>
    public Task<Appended> OpenJobAsync(SubmitToken token, PersonId by, JobOpened opened, params IReadOnlyList<JobEvent> more) =>
        session.DoAsync(() => writer.OpenJobAsync(token, by, [opened, .. more]));

    /// <summary>Writes events to a job, all or none.</summary>
    /// <param name="seen">The version of the job that the writer saw (<see cref="JobState.Version"/>); null: whatever stands.</param>
    public Task<Appended> AppendOnceAsync(SubmitToken token, PersonId by, JobId job, EntryNumber? seen, params IReadOnlyList<JobEvent> events) =>
        session.DoAsync(() => writer.AppendAsync(token, by, job, seen, events));

    /// <summary>Writes to the house's registers, all or none.</summary>
    public Task<Appended> AppendOnceAsync(SubmitToken token, PersonId by, params IReadOnlyList<HouseEvent> events) =>
        session.DoAsync(() => writer.AppendAsync(token, by, events));

    /// <summary>What a submission wrote; null when nothing with this token was written.</summary>
    public Task<Appended.Written?> FindAsync(SubmitToken token, CancellationToken stop = default) =>
        session.ReadAsync(db => LedgerWriter.FirstResultAsync(db, token), stop);

    /// <summary>The job as it stands; null when there is none of that number.</summary>
    public Task<JobState?> ReadAsync(JobId job, CancellationToken stop = default) => session.ReadAsync(async db =>
    {
        var entries = await Streams.ReadAsync<JobEvent>(db, Streams.Of(job), EntryNumber.None, stop);
        return entries.Count == 0 ? null : JobState.Fold(job, entries);
    }, stop);

    /// <summary>The registers and settings as they stand.</summary>
    public Task<HouseState> HouseAsync(CancellationToken stop = default) => session.ReadAsync(db => session.HouseAsync(db, stop), stop);

    /// <summary>Jobs without an end, by promised day.</summary>
    public Task<ImmutableArray<RackPlace>> JobsInHouseAsync(CancellationToken stop = default) => session.ReadAsync(async db =>
    {
        var rows = await db.Jobs.AsNoTracking().Where(j => j.End == null).ToListAsync(stop);
        return rows.OrderBy(j => j.Promised ?? "9999", StringComparer.Ordinal).ThenBy(j => j.Number).Select(Projections.ToPlace).ToImmutableArray();
    }, stop);

    /// <summary>Ended jobs, the latest first, at most so many.</summary>
    public Task<ImmutableArray<RackPlace>> EndedJobsAsync(int most, CancellationToken stop = default) => session.ReadAsync(async db =>
    {
        var rows = await db.Jobs.AsNoTracking().Where(j => j.End != null).OrderByDescending(j => j.Version).Take(most).ToListAsync(stop);
        return rows.Select(Projections.ToPlace).ToImmutableArray();
    }, stop);

    /// <summary>The tool's registration and all its jobs, the latest first.</summary>
    public Task<ToolHistory> ToolHistoryAsync(ToolSerial tool, CancellationToken stop = default) => session.ReadAsync(async db =>
    {
        var jobs = await db.Jobs.AsNoTracking().Where(j => j.Tool == tool.Value).OrderByDescending(j => j.Number).ToListAsync(stop);
        var facts = await Streams.ReadAsync<HouseEvent>(db, Streams.Of(tool), EntryNumber.None, stop);
        return new ToolHistory(tool, facts.LastOrDefault()?.What as ToolRegistered, [.. jobs.Select(Projections.ToPlace)]);
    }, stop);

    /// <summary>Earlier full series of a model: of each other tool its latest, the latest first, at most <see cref="MostEarlierSeries"/>.</summary>
    /// <param name="except">The tool that is to be proved: its own past does not speak for it.</param>
    public async Task<ImmutableArray<EarlierProof>> EarlierProofsAsync(string modelId, ToolSerial except, CancellationToken stop = default)
    {
        var rows = await session.ReadAsync(db => db.Jobs.AsNoTracking()
            .Where(j => j.ModelId == modelId && j.Tool != except.Value && j.Verdict != null)
            .OrderByDescending(j => j.Version).Select(j => new { j.Id, j.Tool, j.Version }).ToListAsync(stop), stop);
        var earlier = ImmutableArray.CreateBuilder<EarlierProof>();
        foreach (var row in rows.DistinctBy(r => r.Tool, StringComparer.Ordinal).Take(MostEarlierSeries))
        {
            if (await proofs.FindAsync(JobId.Parse(row.Id), new(row.Version), id => ReadAsync(id, stop)) is { } proof)
                earlier.Add(proof);
        }

        return earlier.ToImmutable();
    }

    /// <summary>Jobs in which an instrument read a proof or tightened a step on these days, both included; the latest first, at most so many.</summary>
    public async Task<ImmutableArray<JobState>> MeasuredWithAsync(InstrumentId instrument, DateOnly since, DateOnly until, int most, CancellationToken stop = default)
    {
        var (series, step) = ($"\"device\":\"{instrument}\"", $"\"wrench\":\"{instrument}\"");
        var streams = await session.ReadAsync(db => db.Entries.AsNoTracking()
            .Where(e => (e.Kind.StartsWith("series-opened/") && e.Body.Contains(series)) || (e.Kind.StartsWith("rebuild-step-signed/") && e.Body.Contains(step)))
            .OrderByDescending(e => e.Number).Select(e => new { e.Stream, e.At }).ToListAsync(stop), stop);
        var jobs = ImmutableArray.CreateBuilder<JobState>();
        foreach (var stream in streams.Where(s => DateOnly.FromDateTime(UtcText.Read(s.At).UtcDateTime) is var day && day >= since && day <= until)
            .Select(s => s.Stream).Distinct(StringComparer.Ordinal).Take(most))
        {
            if (Streams.JobOf(stream) is { } id && await ReadAsync(id, stop) is { } job)
                jobs.Add(job);
        }

        return jobs.ToImmutable();
    }

    /// <summary>Customers' tools, by serial, at most so many.</summary>
    public Task<ImmutableArray<ToolRegistered>> ToolsAsync(int most, CancellationToken stop = default) => session.ReadAsync(async db =>
    {
        var rows = await db.Tools.AsNoTracking().OrderBy(t => t.Serial).Take(most)
            .Join(db.Entries.AsNoTracking(), t => t.Entry, e => e.Number, (_, e) => e).ToListAsync(stop);
        return rows.Select(r => Streams.ToEntry<HouseEvent>(r).What).OfType<ToolRegistered>().OrderBy(t => t.Tool.Value, StringComparer.Ordinal).ToImmutableArray();
    }, stop);

    /// <summary>The hash of the last entry, as papers print it.</summary>
    public Task<LedgerHead> HeadAsync(CancellationToken stop = default) => session.ReadAsync(db => Streams.HeadAsync(db, stop), stop);

    /// <summary>Checks every entry from the first to the last, against the chain, the witness and the head asked for.</summary>
    /// <param name="head">A head off a paper, whole or its first 8 digits or more, as <see cref="LedgerHead.TryReadHash"/> gives it; null: none.</param>
    public Task<Verification> VerifyAsync(string? head, CancellationToken stop = default) =>
        session.ReadAsync(db => ChainCheck.RunAsync(db, session.Witness, head, stop), stop);

    /// <summary>Makes the rack's and the tools' tables anew from the entries; returns how many jobs there are.</summary>
    public Task<int> RebuildTablesAsync(CancellationToken stop = default) => session.DoAsync(() => writer.RebuildTablesAsync(stop), stop);

    /// <summary>Where the witness of a ledger lies.</summary>
    public static string WitnessOf(string path) => path + ".witness";

    /// <summary>Lets go of the file.</summary>
    public void Dispose() => session.Dispose();
}
