using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Setting;

/// <summary>A run read at a screw position, counted from as-found; clockwise is positive.</summary>
public readonly record struct SettingRun(Angle Screw, Pressure Peak);

/// <summary>What to do with the screw.</summary>
public enum TurnDirection { Stop, Clockwise, Anticlockwise }

/// <summary>What the advisor concludes beside the turn.</summary>
public enum SettingOutcome { Turn, In, RunFirst, GoToFind, ScatterTooLarge }

/// <summary>The advice after the runs so far.</summary>
public sealed record SettingAdvice
{
    public required SettingOutcome Outcome { get; init; }
    public required TurnDirection Direction { get; init; }

    /// <summary>How far, zero or more.</summary>
    public required Angle Turn { get; init; }

    /// <summary>Gain of the model's prior, bar per turn clockwise (negative where clockwise lowers).</summary>
    public required double PriorBarPerTurn { get; init; }

    /// <summary>Gain as it stands after the runs.</summary>
    public required double BarPerTurn { get; init; }

    /// <summary>Predicted mean pressure after the turn, with its 95 % interval.</summary>
    public Pressure? PredictedMean { get; init; }
    public PressureWindow? PredictedInterval { get; init; }

    /// <summary>Chance (0 to 1) that the mean is in the window after the turn.</summary>
    public double? ChanceInWindow { get; init; }

    /// <summary>Chance (0 to 1) that the mean is past the maximum after the turn.</summary>
    public double? ChancePastMaximum { get; init; }

    public ImmutableArray<Suspicion> Suspicions { get; init; } = [];
}

/// <summary>A reason to look elsewhere than at the screw.</summary>
public sealed record Suspicion(string Code, string Text);
