using Ramwright.Records.Ids;

namespace Ramwright.Records.Events;

/// <summary>The papers that a job can leave.</summary>
public enum ReportKind { WorkSheet, Quote, ServiceRecord, ProofReport, Label, DoNotUseTag, SensorCheck }

/// <summary>A paper was made.</summary>
/// <param name="Number">As printed on it; unique in the house. <see cref="Jobs.JobState.NextReportNumber"/> gives the next one.</param>
/// <param name="FileSha256">SHA-256 of the file, 64 lower-case hex digits.</param>
/// <param name="StandsOn">The ledger head printed on it.</param>
public sealed record ReportIssued(ReportKind Kind, string Number, string FileSha256, Store.LedgerHead StandsOn) : JobEvent;

/// <summary>The job moved along its route, forward or back; what was recorded stays.</summary>
/// <param name="Why">Given when it goes back.</param>
public sealed record StationReached(Station Station, string? Why) : JobEvent;

/// <summary>The job came to one of its five ends.</summary>
public sealed record JobEnded(JobEnd End, string Why) : JobEvent;

/// <summary>An earlier entry of the job no longer counts. It stays readable, and so does this.</summary>
public sealed record EntryCorrected(EntryNumber Entry, string Why) : JobEvent;
