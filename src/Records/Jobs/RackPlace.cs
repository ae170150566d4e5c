using System.Collections.Immutable;
using Ramwright.Proving;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.Records.Jobs;

/// <summary>A tool in the house, as the rack shows it.</summary>
/// <param name="Version">The job's last entry.</param>
/// <param name="Verdict">The verdict of the last closed series that still stands; null when none does.</param>
public sealed record RackPlace(JobId Job, Station Station, ToolSerial Tool, string ModelId, CustomerId Customer, LotId? Lot, string Complaint,
    DateOnly? Promised, DateTimeOffset OpenedAt, DateTimeOffset LastAt, EntryNumber Version, Conformity? Verdict, bool Quarantined, JobEnd? End);

/// <summary>A customer's tool and all its jobs, the latest first.</summary>
/// <param name="Registered">Null when it was never registered, only worked on.</param>
public sealed record ToolHistory(ToolSerial Tool, ToolRegistered? Registered, ImmutableArray<RackPlace> Jobs);
