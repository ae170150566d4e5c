using Ramwright.Instruments.Devices;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Practice;

/// <summary>The pressure of a made-up tool that strokes by itself, over time: rest, the ram running out, a climb to the peak, a steep fall. A drawing, not a simulation of a tool.</summary>
/// <param name="mean">Mean peak.</param>
/// <param name="scatter">Standard deviation of the peaks, zero or more.</param>
/// <param name="strokeTime">From the trigger to the peak; a tenth of a second or more.</param>
/// <param name="rest">From one stroke to the next, a tenth of a second or more.</param>
/// <param name="seed">Same seed, same peaks.</param>
public sealed class PracticeStrokes(Pressure mean, Pressure scatter, TimeSpan strokeTime, TimeSpan rest, int seed)
{
    private const double FallSeconds = 0.01;
    private readonly double _strokeSeconds = Checked(strokeTime);
    private readonly double _restSeconds = Checked(rest);

    /// <summary>Peak of a run, counted from 1.</summary>
    public Pressure PeakOf(int run) => Pressure.FromBar(Math.Max(0, mean.Bar + (scatter.Bar * SeededNoise.Normal(seed, run, 0))));

    /// <summary>The pressure so many seconds, zero or more, after the start; the first stroke begins after a rest.</summary>
    public Pressure At(double seconds)
    {
        var period = _restSeconds + _strokeSeconds;
        var run = (int)Math.Min(int.MaxValue - 1, Math.Floor(seconds / period)) + 1;
        var since = seconds - ((run - 1) * period);
        if (since < _restSeconds)
            return run > 1 && since < FallSeconds ? (1 - (since / FallSeconds)) * PeakOf(run - 1) : Pressure.FromBar(0);
        var share = (since - _restSeconds) / _strokeSeconds;
        return (share < 0.5 ? 0.04 : 0.04 + (0.96 * (share - 0.5) * (share - 0.5) / 0.25)) * PeakOf(run);
    }

    private static double Checked(TimeSpan time) => time >= TimeSpan.FromSeconds(0.1)
        ? time.TotalSeconds
        : throw new ArgumentOutOfRangeException(nameof(time), time, "Stroke and rest take a tenth of a second or more.");
}
