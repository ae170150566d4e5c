using System.Collections.Immutable;
using Ramwright.Hydraulics.Recordings;

namespace Ramwright.Hydraulics.Phases;

/// <summary>A time during which the motor runs.</summary>
/// <param name="WithinSeconds">How far off both ends may be.</param>
internal readonly record struct MotorRun(double FromSeconds, double ToSeconds, double WithinSeconds);

/// <summary>Finds when the motor runs from the current: it starts with a jump, draws something as long as it turns, and nothing when switched off.</summary>
internal static class MotorRuns
{
    private const double ShortestPause = 0.03, ShortestRun = 0.015, Look = 0.05;

    public static ImmutableArray<MotorRun> Find(SignalGrid current, Recording recording)
    {
        var looked = current.Steps(Look);
        var zero = Lowest(current, looked);
        var first = current.Mean(0, looked);
        var spread = 6 * current.Noise / Math.Sqrt(looked);
        if (first - zero < spread)
            zero = first;
        var highest = current.Values.Max();
        if (highest - zero < 10 * current.Noise)
            return [];
        var smooth = Smoothing(current, zero, highest, out var level);
        var rowNoise = current.Noise * Math.Sqrt(Math.Max(1, recording.RowsPerSecond * current.StepSeconds));
        var runs = ImmutableArray.CreateBuilder<MotorRun>();
        var (from, off) = (-1, 0);
        var within = Math.Max(current.StepSeconds, smooth * current.StepSeconds);
        for (var i = 0; i <= current.Length; i++)
        {
            var on = i < current.Length && current.Around(i, smooth) > zero + level;
            if (on)
            {
                from = from < 0 ? i : from;
                off = 0;
                continue;
            }

            off++;
            if (from < 0 || (i < current.Length && off < Math.Max(3, current.Steps(ShortestPause))))
                continue;
            var end = i - off;
            if ((end - from + 1) * current.StepSeconds >= ShortestRun)
                runs.Add(Refined(current, recording, new(current.SecondsAt(from), current.SecondsAt(end), within), zero + level, 5 * rowNoise < level));
            from = -1;
        }

        return runs.ToImmutable();
    }

    /// <summary>How many steps are averaged so that the running level stands out, and half that level over zero.</summary>
    private static int Smoothing(SignalGrid current, double zero, double highest, out double level)
    {
        var steps = Math.Max(current.Steps(0.01), Math.Min(4, current.Steps(0.04)));
        var least = Math.Max(6 * current.Noise / Math.Sqrt(steps), 0.006 * (highest - zero));
        var drawn = new List<double>();
        for (var i = 0; i < current.Length; i++)
        {
            if (current.Around(i, steps) - zero is var over && over > least)
                drawn.Add(over);
        }

        drawn.Sort();
        level = drawn.Count > 0 ? Math.Max(least, 0.5 * drawn[drawn.Count / 10]) : least;
        // A threshold five deviations of a mean away from both sides.
        var needed = Math.Pow(5 * current.Noise / level, 2);
        return Math.Clamp((int)Math.Ceiling(needed), 1, Math.Max(current.Steps(0.03), 3));
    }

    private static double Lowest(SignalGrid current, int looked)
    {
        var lowest = double.PositiveInfinity;
        for (var i = 0; i + looked <= current.Length; i++)
            lowest = Math.Min(lowest, current.Mean(i, i + looked));
        return double.IsFinite(lowest) ? lowest : current.Mean(0, current.Length);
    }

    /// <summary>Both ends between two rows, where a single row tells on from off.</summary>
    private static MotorRun Refined(SignalGrid current, Recording recording, MotorRun run, double threshold, bool rowsTell)
    {
        if (!rowsTell)
            return run;
        var (seconds, amperes) = (recording.Seconds, recording.Amperes!.Value);
        var reach = run.WithinSeconds + (2 * current.StepSeconds);
        var from = First(seconds, run.FromSeconds - reach);
        while (from < seconds.Length - 1 && seconds[from] < run.FromSeconds + reach && !(amperes[from] > threshold))
            from++;
        var to = First(seconds, run.ToSeconds + reach) - 1;
        while (to > from && seconds[to] > run.ToSeconds - reach && !(amperes[to] > threshold))
            to--;
        var start = from > 0 ? 0.5 * (seconds[from - 1] + seconds[from]) : seconds[0];
        var end = to < seconds.Length - 1 ? 0.5 * (seconds[to] + seconds[to + 1]) : seconds[^1];
        var step = Math.Max(from > 0 ? seconds[from] - seconds[from - 1] : 0, to < seconds.Length - 1 ? seconds[to + 1] - seconds[to] : 0);
        return new(start, end, Math.Max(1e-3, step));
    }

    private static int First(ImmutableArray<double> seconds, double from)
    {
        var at = seconds.AsSpan().BinarySearch(from);
        return at >= 0 ? at : Math.Min(~at, seconds.Length - 1);
    }
}
