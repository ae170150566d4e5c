using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Setting;

/// <summary>A run read at a screw position, counted from as-found; clockwise is positive.</summary>
/// <param name="Locked">Whether the screw had been locked before this run, and still is.</param>
public readonly record struct SettingRun(Angle Screw, Pressure Peak, bool Locked = false);

/// <summary>What to do with the screw.</summary>
public enum TurnDirection { Stop, Clockwise, Anticlockwise }

/// <summary>What the advisor concludes beside the turn.</summary>
public enum SettingOutcome
{
    /// <summary>Turn as advised, then run again.</summary>
    Turn,

    /// <summary>The mean is in the window with the asked chance, and a turn would not help.</summary>
    In,

    /// <summary>Run, or run again, without a turn: a reading is worth more.</summary>
    RunFirst,

    /// <summary>The screw does not answer as it should.</summary>
    GoToFind,

    /// <summary>No centred series could be expected to hold.</summary>
    ScatterTooLarge,

    /// <summary>No turn is both safe and useful, and more runs would not change that: window, maximum, device and scatter do not go together.</summary>
    NoTurnHelps,

    /// <summary>A reading cannot be what the tool did; it is asked back and nothing is advised.</summary>
    AskBack,
}

/// <summary>The advice after the runs so far.</summary>
public sealed record SettingAdvice
{
    public required SettingOutcome Outcome { get; init; }
    public required TurnDirection Direction { get; init; }

    /// <summary>How far, zero or more.</summary>
    public required Angle Turn { get; init; }

    /// <summary>Where the screw stands, from as-found; clockwise is positive.</summary>
    public Angle Screw { get; init; }

    /// <summary>Gain of the model's prior, bar per turn clockwise (negative where clockwise lowers).</summary>
    public required double PriorBarPerTurn { get; init; }

    /// <summary>Gain as it stands after the runs.</summary>
    public required double BarPerTurn { get; init; }

    /// <summary>Run-to-run standard deviation as it stands after the runs.</summary>
    public Pressure? Scatter { get; init; }

    /// <summary>Predicted mean pressure after the turn, with its 95 % interval, if the screw answers as it should.</summary>
    public Pressure? PredictedMean { get; init; }
    public PressureWindow? PredictedInterval { get; init; }

    /// <summary>95 % interval of the next run alone, with its scatter.</summary>
    public PressureWindow? NextRun { get; init; }

    /// <summary>Chance (0 to 1) that the mean is in the window after the turn.</summary>
    public double? ChanceInWindow { get; init; }

    /// <summary>Chance (0 to 1) that the mean is past the maximum after the turn.</summary>
    public double? ChancePastMaximum { get; init; }

    public ImmutableArray<Suspicion> Suspicions { get; init; } = [];
}

/// <summary>A reason to look elsewhere than at the screw.</summary>
public sealed record Suspicion(string Code, string Text);
