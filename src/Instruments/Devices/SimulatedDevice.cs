using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Devices;

/// <summary>A device that exists in the program alone, for practice and demonstration: a hidden tool, a seed, the same readings every time.</summary>
public sealed class SimulatedDevice : IPeakDevice
{
    /// <param name="pace">How many times faster than life time passes; above zero, infinity for no waiting at all.</param>
    /// <param name="runsBefore">Full runs already made: run k reads the same whether the device was started anew in between or not.</param>
    /// <param name="screw">Position of the screw, counted from as-found.</param>
    public SimulatedDevice(SimulatedTool tool, DeviceDescription description, int seed, TimeProvider clock, double pace = 1, int runsBefore = 0, Angle screw = default)
    {
        Description = description;
    }

    public DeviceDescription Description { get; }

    /// <summary>A made-up peak-hold gauge with an up-to-date calibration.</summary>
    public static DeviceDescription MadeUpGauge(DateOnly today) => throw new NotSupportedException("Signature only; the body follows.");

    /// <summary>Turns the screw; clockwise is positive.</summary>
    public void Turn(Angle by) => throw new NotSupportedException("Signature only; the body follows.");

    public Task<PeakReading> RunAsync(CancellationToken cancel = default) => throw new NotSupportedException("Signature only; the body follows.");

    public IAsyncEnumerable<PeakEvent> WatchAsync(CancellationToken cancel = default) => throw new NotSupportedException("Signature only; the body follows.");
}
