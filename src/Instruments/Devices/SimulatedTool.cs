using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Devices;

/// <summary>The hidden truth of a simulated tool at a simulated device. Screw positions count from as-found, clockwise positive.</summary>
public sealed record SimulatedTool
{
    /// <summary>Mean peak with the screw as found.</summary>
    public required Pressure AsFound { get; init; }

    /// <summary>Change of the mean per full turn clockwise, bar; negative where clockwise lowers.</summary>
    public required double BarPerTurn { get; init; }

    /// <summary>Standard deviation of the peaks from run to run, zero or more.</summary>
    public required Pressure Scatter { get; init; }

    /// <summary>Change of the mean from each run to the next.</summary>
    public Pressure DriftPerRun { get; init; }

    /// <summary>Play of the screw: after a change of direction so much of the turn does nothing; zero or more.</summary>
    public Angle Backlash { get; init; }

    /// <summary>Rise of the pressure just before the peak, bar per second, above zero.</summary>
    public double RiseBarPerSecond { get; init; } = 9_000;

    /// <summary>What the device reads too high, the same for every run.</summary>
    public Pressure DeviceOffset { get; init; }

    /// <summary>From the trigger to the peak.</summary>
    public TimeSpan StrokeTime { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>Rest between full runs.</summary>
    public TimeSpan Rest { get; init; } = TimeSpan.FromSeconds(40);
}
