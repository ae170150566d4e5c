using System.Collections.Immutable;

namespace Ramwright.Hydraulics.Phases;

/// <summary>Dies and relief from current alone: it climbs with the load and drops when the relief takes the load away. Coarse.</summary>
internal static class CurrentMarks
{
    private const double TurnLength = 0.03, Start = 0.2, DropShare = 0.5, Drop = 0.03;

    /// <summary>When current leaves the level of the advance for good; null when it does not.</summary>
    public static double? Loads(SignalGrid current, ImmutableArray<MotorRun> runs)
    {
        var length = current.Steps(TurnLength);
        foreach (var run in runs)
        {
            var (from, to) = (current.IndexOf(run.FromSeconds + Start), current.IndexOf(run.ToSeconds));
            if (to - from < 4 * length)
                continue;
            var level = double.PositiveInfinity;
            for (var i = from; i < to - length; i++)
                level = Math.Min(level, current.Mean(i, i + length));
            var scatter = current.Noise / Math.Sqrt(length);
            for (var i = from; i < to - (2 * length); i++)
            {
                if (current.Mean(i, i + length) > (1.3 * level) + (6 * scatter) && current.Mean(i + length, i + (2 * length)) > (1.5 * level) + (6 * scatter))
                    return current.SecondsAt(i);
            }
        }

        return null;
    }

    /// <summary>When current drops although the motor runs on, in the last run; null when it does not.</summary>
    public static double? Unloads(SignalGrid current, MotorRun last)
    {
        var length = current.Steps(TurnLength);
        var (from, to) = (current.IndexOf(last.FromSeconds), current.IndexOf(last.ToSeconds));
        var first = Math.Max(from + (2 * length), to - current.Steps(0.3));
        for (var i = first; i < to - current.Steps(0.005); i++)
        {
            var before = current.Mean(i - length, i);
            var after = current.Mean(Math.Min(i + current.Steps(Drop), to - 1), to);
            if (after < DropShare * before && before > 10 * current.Noise && current.Mean(i, i + Math.Max(1, length / 3)) < before)
                return current.SecondsAt(i);
        }

        return null;
    }
}
