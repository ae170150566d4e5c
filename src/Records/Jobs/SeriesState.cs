using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving;
using Ramwright.Records.Events;

namespace Ramwright.Records.Jobs;

/// <summary>A proof series as it stands.</summary>
public sealed record SeriesState(Entry<SeriesOpened> Opened)
{
    private static readonly ConditionalWeakTable<ImmutableList<RunState>, StrongBox<bool>> Decided = []; // a list of runs belongs to one series, so it is decided once

    /// <summary>Every run taken, void ones too, in order.</summary>
    public ImmutableList<RunState> Runs { get; init; } = [];

    public Entry<SeriesClosed>? Closed { get; init; }

    /// <summary>The later work (a turn, a strip or a rebuild step) after which the series says nothing of the tool as it is; null while it stands.</summary>
    public Entry<JobEvent>? Superseded { get; init; }

    public int Number => Opened.What.Series;

    /// <summary>Peaks of the runs that count, in order.</summary>
    public ImmutableArray<Pressure> Peaks => [.. Runs.Where(r => r.Void is null).Select(r => r.Taken.What.Peak)];

    /// <summary>Places for valid runs: the planned ones, and those of a declared extension once the planned ones have left the series undecided.</summary>
    public int Places => Opened.What.MoreRuns is { } more && Peaks.Length >= Opened.What.PlannedRuns && IsExtended ? Opened.What.PlannedRuns + more : Opened.What.PlannedRuns;

    /// <summary>Whether every place is taken.</summary>
    public bool IsFull => Peaks.Length >= Places;

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
        Declared = Opened.What switch
        {
            { MoreRuns: { } more } => new Declared.Extension(more),
            { Earlier: { } earlier } => new Declared.Moderated(new EarlierSeries(earlier)),
            _ => new Declared.OwnScatter(),
        },
        Resolution = Opened.What.Resolution,
        Peaks = Peaks,
    };

    /// <summary>Whether the planned runs alone leave the series undecided.</summary>
    private bool IsExtended => Decided.GetValue(Runs, _ => new(LeftUndecided)).Value;

    private bool LeftUndecided => ProofDecision.Decide(ToProofSeries() with { Peaks = Peaks[..Opened.What.PlannedRuns] }).Conformity == Conformity.Undecided;
}

/// <summary>A run and, where it is void, why.</summary>
public sealed record RunState(Entry<RunTaken> Taken, Entry<RunVoided>? Void);
