using System.Collections.Immutable;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;

namespace Ramwright.Records.Store;

/// <summary>
/// The house's ledger: entries are added, never changed, and chained by hash. Every write is one transaction that is on the disk
/// before it is acknowledged. Safe for use from several threads.
/// </summary>
public sealed class Ledger(string path, TimeProvider clock)
{
    /// <summary>The database file.</summary>
    public string Path { get; } = path;

    public TimeProvider Clock { get; } = clock;

    /// <summary>Opens a job: gives it the next number and writes the opening, with more events if given, as one.</summary>
    public Task<Appended> OpenJobAsync(SubmitToken token, PersonId by, JobOpened opened, params IReadOnlyList<JobEvent> more) => throw new NotSupportedException();

    /// <summary>Writes events to a job, all or none.</summary>
    /// <param name="seen">The version of the job that the writer saw (<see cref="JobState.Version"/>); null: whatever stands.</param>
    public Task<Appended> AppendOnceAsync(SubmitToken token, PersonId by, JobId job, EntryNumber? seen, params IReadOnlyList<JobEvent> events) => throw new NotSupportedException();

    /// <summary>Writes to the house's registers, all or none.</summary>
    public Task<Appended> AppendOnceAsync(SubmitToken token, PersonId by, params IReadOnlyList<HouseEvent> events) => throw new NotSupportedException();

    /// <summary>The job as it stands; null when there is none of that number.</summary>
    public Task<JobState?> ReadAsync(JobId job, CancellationToken stop = default) => throw new NotSupportedException();

    /// <summary>The registers and settings as they stand.</summary>
    public Task<HouseState> HouseAsync(CancellationToken stop = default) => throw new NotSupportedException();

    /// <summary>Jobs without an end, by promised day.</summary>
    public Task<ImmutableArray<RackPlace>> JobsInHouseAsync(CancellationToken stop = default) => throw new NotSupportedException();

    /// <summary>Ended jobs, the latest first, at most so many.</summary>
    public Task<ImmutableArray<RackPlace>> EndedJobsAsync(int most, CancellationToken stop = default) => throw new NotSupportedException();

    public Task<ToolHistory> ToolHistoryAsync(ToolSerial tool, CancellationToken stop = default) => throw new NotSupportedException();

    /// <summary>Customers' tools, by serial, at most so many.</summary>
    public Task<ImmutableArray<ToolRegistered>> ToolsAsync(int most, CancellationToken stop = default) => throw new NotSupportedException();

    public Task<LedgerHead> HeadAsync(CancellationToken stop = default) => throw new NotSupportedException();

    /// <summary>Checks every entry from the first to the last.</summary>
    /// <param name="head">A head off a paper, whole or its first 8 digits or more, as <see cref="LedgerHead.TryReadHash"/> gives it; null: none.</param>
    public Task<Verification> VerifyAsync(string? head, CancellationToken stop = default) => throw new NotSupportedException();
}
