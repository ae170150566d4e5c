using System.Collections.Immutable;

namespace Ramwright.Hydraulics.Recordings;

/// <summary>What the sensors showed before anything happened: their zero and their noise.</summary>
/// <param name="FromSeconds">On the clock of the recording.</param>
/// <param name="ToSeconds">A little before the trigger.</param>
/// <param name="Pressure">Null without pressure.</param>
/// <param name="Current">Null without current.</param>
public sealed record Standstill(double FromSeconds, double ToSeconds, Standstill.Finding? Pressure, Standstill.Finding? Current)
{
    /// <summary>Zero and noise of one sensor.</summary>
    /// <param name="Zero">Mean, in Pa or A.</param>
    /// <param name="ZeroUncertainty">Standard uncertainty of the mean, in Pa or A: noise/√rows.</param>
    /// <param name="Noise">Standard deviation of single rows, in Pa or A.</param>
    /// <param name="Rows">Number of rows.</param>
    public sealed record Finding(double Zero, double ZeroUncertainty, double Noise, int Rows);

    private const int FewestRows = 5;

    /// <summary>The rows up to a moment; null where there are fewer than five.</summary>
    /// <param name="beforeSeconds">When the trigger is pulled; the rows of the last 5 ms before it are left out.</param>
    public static Standstill? Before(Recording recording, double beforeSeconds)
    {
        ArgumentNullException.ThrowIfNull(recording);
        var end = 0;
        while (end < recording.Seconds.Length && recording.Seconds[end] < beforeSeconds - 0.005)
            end++;
        return end < FewestRows ? null : new(recording.Seconds[0], recording.Seconds[end - 1], Of(recording.Pascals, end), Of(recording.Amperes, end));
    }

    private static Finding? Of(ImmutableArray<double>? signal, int end)
    {
        if (signal is not { } values)
            return null;
        var held = values.Take(end).Where(v => !double.IsNaN(v)).ToList();
        if (held.Count < FewestRows)
            return null;
        var mean = held.Average();
        var noise = Math.Sqrt(held.Sum(v => (v - mean) * (v - mean)) / (held.Count - 1));
        return new(mean, noise / Math.Sqrt(held.Count), noise, held.Count);
    }
}
