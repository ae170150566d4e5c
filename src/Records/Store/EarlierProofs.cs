using System.Collections.Concurrent;
using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;

namespace Ramwright.Records.Store;

/// <summary>The latest full series of another tool of the model.</summary>
/// <param name="Peaks">Of the runs that counted, in their order.</param>
public sealed record EarlierProof(JobId Job, Pressure Mean, Pressure Deviation, ImmutableArray<Pressure> Peaks)
{
    /// <summary>What moderation takes.</summary>
    public EarlierScatter Scatter => new(Deviation, Peaks.Length);
}

/// <summary>The full series of jobs, each folded once for each version of its job.</summary>
internal sealed class EarlierProofs
{
    private const int MostKept = 5_000;

    private readonly ConcurrentDictionary<JobId, (EntryNumber Version, EarlierProof? Proof)> kept = [];

    /// <param name="version">The job's last entry, as the rack's table has it.</param>
    /// <returns>Null where the job has no full series with a scatter.</returns>
    public async Task<EarlierProof?> FindAsync(JobId id, EntryNumber version, Func<JobId, Task<JobState?>> read)
    {
        if (kept.TryGetValue(id, out var known) && known.Version == version)
            return known.Proof;
        if (await read(id) is not { } job)
            return null;
        if (kept.Count >= MostKept)
            kept.Clear();
        var proof = Of(job);
        kept[id] = (job.Version, proof);
        return proof;
    }

    private static EarlierProof? Of(JobState job) => job.Series.FindLast(s => s is { Closed: not null, IsFull: true }) is { } series
        && series.Closed!.What.Verdict is { Mean: { } mean, StandardDeviation: { Pascals: > 0 } deviation }
            ? new(job.Id, mean, deviation, series.Peaks)
            : null;
}
