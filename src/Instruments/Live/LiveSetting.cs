using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Runs;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Live;

/// <summary>What a live device needs to know beside its connection.</summary>
public sealed record LiveSetting
{
    /// <summary>A peak at least so high is that of a full run, where the connection says nothing.</summary>
    public Pressure Full { get; init; } = Pressure.FromBar(300);

    /// <summary>The ram area, with which a force becomes a pressure.</summary>
    public Area? RamArea { get; init; }

    /// <summary>What return spring and friction hold back of the force on the ram.</summary>
    public Force ForceHeldBack { get; init; }

    /// <summary>Full runs taken before: the next one bears the number behind.</summary>
    public int RunsBefore { get; init; }

    /// <summary>First wait before a lost device is reached for again; doubled each time up to <see cref="LongestWait"/>.</summary>
    public TimeSpan FirstWait { get; init; } = TimeSpan.FromMilliseconds(250);

    public TimeSpan LongestWait { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>When a signal makes a run; a full run lies above the start in any case.</summary>
    internal RunRule RuleFor(Signal signal)
    {
        var full = signal.Full ?? Full;
        return new(signal.Begins, signal.Ends, full > signal.Begins ? full : 1.01 * signal.Begins);
    }

    /// <summary>A number of the device as a pressure; null when it can be none: no number, or beyond −100 to 2000 bar.</summary>
    internal Pressure? PressureOf(Signal signal, double number)
    {
        const double LeastBar = -100;
        const double MostBar = 2000;
        var value = (signal.Factor * number) + signal.Offset;
        return double.IsFinite(value) && signal.Unit.ToPressure(value, RamArea, ForceHeldBack) is { Bar: >= LeastBar and <= MostBar } pressure ? pressure : null;
    }
}
