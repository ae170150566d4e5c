using Ramwright.Instruments.Lines;
using Ramwright.Instruments.Runs;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Devices;

/// <summary>A device that gives one peak per full run of the tool.</summary>
public interface IPeakDevice
{
    DeviceDescription Description { get; }

    /// <summary>Waits for one full run and gives its peak.</summary>
    Task<PeakReading> RunAsync(CancellationToken cancel = default);

    /// <summary>What happens at the device, run after run, until cancelled.</summary>
    IAsyncEnumerable<PeakEvent> WatchAsync(CancellationToken cancel = default);
}

/// <summary>The peak of one full run as the device shows it.</summary>
/// <param name="Run">1-based count of the device.</param>
/// <param name="OverRange">The device stood at the end of its range: the peak is at least so high.</param>
public sealed record PeakReading(int Run, Pressure Peak, DateTimeOffset At, bool OverRange)
{
    /// <summary>How the peak was found, where it was found in a live reading or a recording.</summary>
    public PeakEstimate? Estimate { get; init; }
}

/// <summary>Something that happens at a device.</summary>
public abstract record PeakEvent
{
    private PeakEvent() { }

    /// <summary>The pressure while the ram works, for a live figure; <paramref name="Since"/> is the time since the trigger.</summary>
    public sealed record Rising(int Run, TimeSpan Since, Pressure Pressure) : PeakEvent;

    /// <summary>A full run is over and this is its peak.</summary>
    public sealed record Peaked(PeakReading Reading) : PeakEvent;

    /// <summary>The tool rests before the next run.</summary>
    public sealed record Resting(TimeSpan For) : PeakEvent;

    /// <summary>The device cannot be asked; it is reached for again until it answers. Runs made meanwhile are not known.</summary>
    /// <param name="What">What is wrong, in words.</param>
    public sealed record Lost(DeviceFault Fault, string What, DateTimeOffset At) : PeakEvent;

    /// <summary>The device answers again, after so long.</summary>
    public sealed record Back(TimeSpan Away) : PeakEvent;

    /// <summary>A run that counts for nothing, told so that nobody waits for it.</summary>
    /// <param name="Highest">Its highest reading, where there was one.</param>
    public sealed record NotTaken(WhyNotTaken Why, Pressure? Highest) : PeakEvent;

    /// <summary>A file of other software could not be taken; <paramref name="What"/> says why.</summary>
    public sealed record Unreadable(string File, string What) : PeakEvent;
}
