using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Devices;

/// <summary>What measures (the reference chain's kinds).</summary>
public enum DeviceKind { ForceCell, PortGauge, PeakHoldGauge, ToolMemory, Simulated }

/// <summary>A measuring device and what it can do.</summary>
public sealed record DeviceDescription
{
    public required DeviceKind Kind { get; init; }
    public required string Name { get; init; }
    public required string Maker { get; init; }
    public required string Serial { get; init; }

    /// <summary>Lowest and highest pressure it reads.</summary>
    public required PressureWindow Range { get; init; }

    /// <summary>Smallest step of its reading, above zero.</summary>
    public required Pressure Resolution { get; init; }

    /// <summary>Time constant of its first-order lag, zero or more.</summary>
    public required TimeSpan TimeConstant { get; init; }

    /// <summary>Time between two samples, zero or more; zero for a device that holds the peak by analogue means.</summary>
    public required TimeSpan SamplingInterval { get; init; }

    /// <summary>Its last calibration; null when it never had one.</summary>
    public Calibration? Calibration { get; init; }
}

/// <summary>A calibration: when, until when, how well.</summary>
/// <param name="Certificate">Number of the certificate.</param>
/// <param name="Due">The last day on which it counts.</param>
/// <param name="Expanded">Expanded uncertainty, k = 2.</param>
public sealed record Calibration(string Certificate, DateOnly Date, DateOnly Due, Pressure Expanded)
{
    public bool ValidOn(DateOnly day) => day >= Date && day <= Due;
}
