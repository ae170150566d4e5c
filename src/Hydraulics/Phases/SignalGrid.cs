using System.Collections.Immutable;
using Ramwright.Hydraulics.Recordings;

namespace Ramwright.Hydraulics.Phases;

/// <summary>One signal on even steps of time: the mean of the rows around each step, holes bridged by a straight line. Means and slopes of stretches cost nothing.</summary>
internal sealed class SignalGrid
{
    private readonly double[] _sums;

    private SignalGrid(double start, double step, double[] values)
    {
        (StartSeconds, StepSeconds, Values) = (start, step, values);
        _sums = new double[values.Length + 1];
        for (var i = 0; i < values.Length; i++)
            _sums[i + 1] = _sums[i] + values[i];
        Noise = NoiseOf(values);
    }

    public double StartSeconds { get; }

    public double StepSeconds { get; }

    /// <summary>Pascals or amperes, as the signal is.</summary>
    public double[] Values { get; }

    public int Length => Values.Length;

    /// <summary>Standard deviation of one step's value about its neighbours: median of the differences, so that a stroke's own movement hardly counts. Above 0.</summary>
    public double Noise { get; }

    /// <summary>A signal on steps of a millisecond, or of a row where rows are farther apart; null where nothing of it is there.</summary>
    public static SignalGrid? Of(Recording recording, ImmutableArray<double>? signal)
    {
        if (signal is not { } rows)
            return null;
        var (start, duration) = (recording.Seconds[0], recording.Duration);
        var step = Math.Max(1e-3, MedianStep(recording.Seconds));
        var length = (int)Math.Min(2_000_000, Math.Floor((duration / step) + 0.5)) + 1;
        var (sums, counts) = (new double[length], new int[length]);
        for (var i = 0; i < rows.Length; i++)
        {
            if (double.IsNaN(rows[i]))
                continue;
            var at = Math.Min(length - 1, (int)(((recording.Seconds[i] - start) / step) + 0.5));
            sums[at] += rows[i];
            counts[at]++;
        }

        return Bridge(sums, counts) ? new(start, step, sums) : null;
    }

    public double SecondsAt(double index) => StartSeconds + (index * StepSeconds);

    /// <summary>The step nearest to a time, kept inside.</summary>
    public int IndexOf(double seconds) => (int)Math.Clamp(Math.Round((seconds - StartSeconds) / StepSeconds), 0, Length - 1);

    /// <summary>Number of steps in a length of time, one at least.</summary>
    public int Steps(double seconds) => Math.Max(1, (int)Math.Round(seconds / StepSeconds));

    /// <summary>Mean of the steps from one to before another, both kept inside; one step at least.</summary>
    public double Mean(int from, int to)
    {
        from = Math.Clamp(from, 0, Length - 1);
        to = Math.Clamp(to, from + 1, Length);
        return (_sums[to] - _sums[from]) / (to - from);
    }

    /// <summary>Mean of steps around one.</summary>
    public double Around(int index, int steps) => Mean(index - (steps / 2), index - (steps / 2) + steps);

    /// <summary>Rate of change at a step, per second: mean of a length behind it less mean of the same length before it.</summary>
    public double Slope(int index, int steps) => (Mean(index, index + steps) - Mean(index - steps, index)) / (steps * StepSeconds);

    /// <summary>Straight line through the steps from one to before another, by least squares, and the standard deviation of means of some steps about it.</summary>
    public (double AtFrom, double PerStep, double Scatter) Line(int from, int to, int meanOf)
    {
        var n = to - from;
        var (mean, sumXY, sumXX) = (Mean(from, to), 0.0, 0.0);
        for (var i = from; i < to; i++)
        {
            var x = i - from - (0.5 * (n - 1));
            sumXY += x * (Values[i] - mean);
            sumXX += x * x;
        }

        var slope = sumXX > 0 ? sumXY / sumXX : 0;
        var atFrom = mean - (0.5 * (n - 1) * slope);
        var (squares, count) = (0.0, 0);
        for (var i = from; i + meanOf <= to; i += meanOf, count++)
        {
            var off = Mean(i, i + meanOf) - (atFrom + ((i - from + (0.5 * (meanOf - 1))) * slope));
            squares += off * off;
        }

        return (atFrom, slope, Math.Max(Math.Sqrt(squares / Math.Max(1, count - 2)), Noise / Math.Sqrt(meanOf)));
    }

    /// <summary>Median time from row to row, in seconds.</summary>
    public static double MedianStep(ImmutableArray<double> seconds)
    {
        var steps = new double[seconds.Length - 1];
        for (var i = 0; i < steps.Length; i++)
            steps[i] = seconds[i + 1] - seconds[i];
        Array.Sort(steps);
        return steps[steps.Length / 2];
    }

    private static bool Bridge(double[] sums, int[] counts)
    {
        var last = -1;
        for (var i = 0; i < sums.Length; i++)
        {
            if (counts[i] == 0)
                continue;
            sums[i] /= counts[i];
            for (var j = last + 1; j < i; j++)
                sums[j] = last < 0 ? sums[i] : sums[last] + ((sums[i] - sums[last]) * (j - last) / (i - last));
            last = i;
        }

        for (var j = last + 1; j < sums.Length && last >= 0; j++)
            sums[j] = sums[last];
        return last >= 0;
    }

    private static double NoiseOf(double[] values)
    {
        var (lowest, highest) = (values.Min(), values.Max());
        var steps = new double[Math.Max(1, values.Length - 1)];
        for (var i = 0; i + 1 < values.Length; i++)
            steps[i] = Math.Abs(values[i + 1] - values[i]);
        Array.Sort(steps);
        // Median of |difference| of normal noise is 0.6745·√2 standard deviations. The floor stands for a signal without noise.
        return Math.Max(steps[steps.Length / 2] / (0.6745 * Math.Sqrt(2)), 1e-4 * (highest - lowest)) + double.Epsilon;
    }
}
