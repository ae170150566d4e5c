using System.Collections.Immutable;

namespace Ramwright.Hydraulics.Strokes;

/// <summary>What happens in a stroke, as a person would say it.</summary>
public enum StrokeEventKind
{
    TriggerPulled,
    RamMoves,
    ConnectorTouched,
    DiesClosed,
    DiesParted,
    TriggerReleased,
    MotorStalled,
    ReservoirEmpty,
    ReliefOpened,
    MotorSwitchedOff,
    ReliefClosed,
    RamHome,
    GivenUp,
}

/// <summary>An event and how things stood then; averaged over a turn of the pump.</summary>
/// <param name="Seconds">From the start of the recording.</param>
/// <param name="Pascals">True gauge pressure.</param>
/// <param name="PascalsPerSecond">Rate of rise just before.</param>
/// <param name="Amperes">Battery current just before.</param>
/// <param name="Metres">Ram travel.</param>
public sealed record StrokeEvent(StrokeEventKind Kind, double Seconds, double Pascals, double PascalsPerSecond, double Amperes, double Metres);

/// <summary>One row of a simulated recording.</summary>
/// <param name="Seconds">From the start of the recording.</param>
/// <param name="ReadingPascals">As the sensor shows it, behind its lag.</param>
/// <param name="Amperes">Battery current.</param>
/// <param name="Pascals">True gauge pressure.</param>
/// <param name="Metres">Ram travel.</param>
public readonly record struct StrokeSample(double Seconds, double ReadingPascals, double Amperes, double Pascals, double Metres);

/// <summary>How a simulated stroke ended.</summary>
public enum StrokeEnd
{
    /// <summary>The relief opened and the ram came home.</summary>
    Home,

    /// <summary>The relief opened, but the ram stayed out.</summary>
    RamStaysOut,

    /// <summary>The operator gave up before the relief opened.</summary>
    GivenUp,

    /// <summary>Not carried to its end: too many steps or events for a stroke. The parameters belong to no tool.</summary>
    LimitReached,
}

/// <summary>A simulated stroke.</summary>
public sealed record Stroke(StrokeEnd End, ImmutableArray<StrokeEvent> Events, ImmutableArray<StrokeSample> Samples)
{
    /// <summary>Highest true gauge pressure.</summary>
    public required double PeakPascals { get; init; }

    /// <summary>Highest pressure as the sensor shows it.</summary>
    public required double ReadingPeakPascals { get; init; }

    /// <summary>Net oil that left the reservoir at most.</summary>
    public required double MostDrawnCubicMetres { get; init; }

    /// <summary>Number of integration steps taken.</summary>
    public required int Steps { get; init; }

    /// <summary>Number of steps tried again shorter.</summary>
    public required int StepsRefused { get; init; }

    /// <summary>The first event of a kind, or null.</summary>
    public StrokeEvent? First(StrokeEventKind kind) => Events.FirstOrDefault(e => e.Kind == kind);

    /// <summary>From trigger to closed dies, in seconds; null when they did not close.</summary>
    public double? AdvanceSeconds => Between(StrokeEventKind.TriggerPulled, StrokeEventKind.DiesClosed);

    /// <summary>From the opening of the relief until the ram is home, in seconds; null when it does not come home.</summary>
    public double? ReturnSeconds => Between(StrokeEventKind.ReliefOpened, StrokeEventKind.RamHome);

    /// <summary>From one first event to another, in seconds; null when one of them did not happen.</summary>
    private double? Between(StrokeEventKind from, StrokeEventKind to) => First(to)?.Seconds - First(from)?.Seconds;
}
