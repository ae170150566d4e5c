using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Faults;

/// <summary>All that is known of a tool on the bench. Each part may be empty.</summary>
public sealed record Evidence
{
    public static Evidence None { get; } = new();

    /// <summary>Seen, heard or felt.</summary>
    public ImmutableArray<SymptomId> Seen { get; init; } = [];

    /// <summary>Looked for and not there. What nobody looked for stands in neither list.</summary>
    public ImmutableArray<SymptomId> NotSeen { get; init; } = [];

    public ImmutableArray<CheckResult> Checks { get; init; } = [];

    /// <summary>Quick measurements, as read.</summary>
    public ImmutableArray<Reading> Readings { get; init; } = [];

    /// <summary>What a recording of a stroke says.</summary>
    public RecordingEvidence? Recording { get; init; }
}

/// <summary>A check that was made, and its outcome by id.</summary>
public sealed record CheckResult(CheckId Check, string Outcome);

/// <summary>A value read, by the name of the reading (<c>Measurements.QuickMeasurement</c> lists them).</summary>
/// <param name="Name">Such as <c>advance-time</c>.</param>
/// <param name="Si">The value in SI: seconds, pascals, amperes, volts; strokes as a number.</param>
public sealed record Reading(string Name, double Si);

/// <summary>What a recording says about faults: the door for the identification of a stroke.</summary>
/// <param name="Factors">For each fault that the recording speaks about the ratio P(recording | fault) / P(recording | sound), above 0; faults that are not named have 1.</param>
/// <param name="Shows">Symptoms that the recording shows by itself (a slow advance, a fall in a pause): they are not counted beside it.</param>
/// <param name="Measures">Readings and checks, by name or id, that the recording repeats more exactly: not counted beside it either.</param>
public sealed record RecordingEvidence(ImmutableDictionary<FaultId, double> Factors, ImmutableHashSet<SymptomId> Shows, ImmutableHashSet<string> Measures);
