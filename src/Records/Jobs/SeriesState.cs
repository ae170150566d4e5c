using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving;
using Ramwright.Records.Events;

namespace Ramwright.Records.Jobs;

/// <summary>A proof series as it stands.</summary>
public sealed record SeriesState(Entry<SeriesOpened> Opened)
{
    /// <summary>Every run taken, void ones too, in order.</summary>
    public ImmutableList<RunState> Runs { get; init; } = [];

    public Entry<SeriesClosed>? Closed { get; init; }

    /// <summary>The later work (a turn, a strip or a rebuild step) after which the series says nothing of the tool as it is; null while it stands.</summary>
    public Entry<JobEvent>? Superseded { get; init; }

    public int Number => Opened.What.Series;

    /// <summary>Peaks of the runs that count, in order.</summary>
    public ImmutableArray<Pressure> Peaks => [.. Runs.Where(r => r.Void is null).Select(r => r.Taken.What.Peak)];

    /// <summary>Whether as many valid runs as planned are there.</summary>
    public bool IsFull => Runs.Count(r => r.Void is null) >= Opened.What.PlannedRuns;

    /// <summary>The number that the next run gets.</summary>
    public int NextRun => Runs.Count == 0 ? 1 : Runs.Max(r => r.Taken.What.Run) + 1;

    /// <summary>What the decision takes.</summary>
    public ProofSeries ToProofSeries() => new()
    {
        Limits = Opened.What.Limits,
        PlannedRuns = Opened.What.PlannedRuns,
        Systematic = Opened.What.Systematic,
        Coverage = Opened.What.Coverage,
        Confidence = Opened.What.Confidence,
        Rule = Opened.What.Rule,
        Peaks = Peaks,
    };
}

/// <summary>A run and, where it is void, why.</summary>
public sealed record RunState(Entry<RunTaken> Taken, Entry<RunVoided>? Void);
