using System.Collections.Immutable;

namespace Ramwright.Hydraulics.Phases;

/// <summary>Dies and relief from current alone: it climbs with the load and drops when the relief takes the load away. Coarse.</summary>
internal static class CurrentMarks
{
    private const double TurnLength = 0.03, Start = 0.2, DropShare = 0.6, LeastGrowth = 1.1, LongestStop = 0.12;

    /// <summary>When current leaves the level of the advance for good; null when it does not.</summary>
    /// <param name="zero">What the sensor shows without current, in amperes.</param>
    public static double? Loads(SignalGrid current, ImmutableArray<MotorRun> runs, double zero)
    {
        var length = current.Steps(TurnLength);
        foreach (var run in runs)
        {
            var (from, to) = (current.IndexOf(run.FromSeconds + Start), current.IndexOf(run.ToSeconds));
            if (to - from < 4 * length)
                continue;
            var level = double.PositiveInfinity;
            for (var i = from; i < to - length; i++)
                level = Math.Min(level, current.Mean(i, i + length) - zero);
            var scatter = current.Noise / Math.Sqrt(length);
            for (var i = from; i < to - (2 * length); i++)
            {
                if (current.Mean(i, i + length) - zero > (1.3 * level) + (6 * scatter) && current.Mean(i + length, i + (2 * length)) - zero > (1.5 * level) + (6 * scatter))
                    return current.SecondsAt(i);
            }
        }

        return null;
    }

    /// <summary>When current drops for good although the motor runs on, at the end of the last run; null when it does not.</summary>
    /// <param name="zero">What the sensor shows without current, in amperes.</param>
    /// <remarks>Followed back from the end: what the motor draws when it is switched off is the load that is left.</remarks>
    public static double? Unloads(SignalGrid current, MotorRun last, double zero)
    {
        var length = current.Steps(TurnLength);
        var (from, to) = (current.IndexOf(last.FromSeconds), current.IndexOf(last.ToSeconds));
        var tail = Math.Max(1, current.Steps(0.008));
        if (to - from < (3 * length) + tail)
            return null;
        var left = current.Mean(to - tail, to) - zero;
        var at = to - tail;
        var highest = left;
        for (var i = at; i > Math.Max(from + length, to - current.Steps(LongestStop)); i--)
        {
            var drawn = current.Around(i, tail) - zero;
            var before = current.Around(i - tail, tail) - zero;
            if (drawn > LeastGrowth * left && before < LeastGrowth * drawn)
                break; // no longer falling: the load is still there
            (at, highest) = (i - tail, Math.Max(before, highest));
        }

        return left < DropShare * highest && highest - left > 8 * current.Noise / Math.Sqrt(tail) ? current.SecondsAt(at + (tail / 2)) : null;
    }
}
