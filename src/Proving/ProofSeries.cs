using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Proving;

/// <summary>A proof series as it stands: what was planned before the first run, and the runs taken so far, in order.</summary>
public sealed record ProofSeries
{
    /// <summary>The limits that the tool must keep.</summary>
    public required PressureWindow Limits { get; init; }

    /// <summary>Planned number of full runs, 2 or more, an extension not counted; fixed before the first.</summary>
    public required int PlannedRuns { get; init; }

    /// <summary>What the device may be off, the same for every run.</summary>
    public required SystematicUncertainty Systematic { get; init; }

    /// <summary>Share of full runs that must lie on the right side of each limit, above 0 and below 1.</summary>
    public double Coverage { get; init; } = 0.95;

    /// <summary>Confidence of each claim, above 0 and below 1.</summary>
    public double Confidence { get; init; } = 0.95;

    public DecisionRule Rule { get; init; }

    /// <summary>Whose scatter counts and whether the series may be extended; an extension or moderation goes with one-sided claims per limit alone.</summary>
    public Declared Declared { get; init; } = new Declared.OwnScatter();

    /// <summary>Smallest step of the device's readings, above zero; null when not known, then the smallest difference between two readings stands for it.</summary>
    public Pressure? Resolution { get; init; }

    /// <summary>Peaks of earlier series of the model, for the screen of the form of the scatter alone; empty where there are none.</summary>
    public ImmutableArray<ImmutableArray<Pressure>> EarlierPeaks { get; init; } = [];

    /// <summary>Peaks of the valid runs, in the order taken; void runs are not among them.</summary>
    public required ImmutableArray<Pressure> Peaks { get; init; }
}

/// <summary>Expanded (k = 2) systematic uncertainty towards each side; peak capture moves the upper limit alone.</summary>
/// <param name="BelowLimit">How far the true peak may lie below the reading (moves the lower limit up), zero or more.</param>
/// <param name="AboveLimit">How far the true peak may lie above the reading (moves the upper limit down), zero or more.</param>
/// <param name="RandomExpanded">Expanded random part of one reading, for the total uncertainty of a single run; zero or more.</param>
public sealed record SystematicUncertainty(Pressure BelowLimit, Pressure AboveLimit, Pressure RandomExpanded)
{
    public static SystematicUncertainty Symmetric(Pressure expanded) => new(expanded, expanded, Pressure.FromBar(0));
}
