namespace Ramwright.Hydraulics.Phases;

/// <summary>The fall of pressure when the relief snaps open.</summary>
/// <param name="TopSeconds">When pressure stood highest.</param>
/// <param name="FootSeconds">When the fall was over.</param>
/// <param name="TopPascals">Just before the fall, as read.</param>
/// <param name="FootPascals">Just after it.</param>
/// <param name="WithinSeconds">How far off the top may be.</param>
internal sealed record ReliefFall(double TopSeconds, double FootSeconds, double TopPascals, double FootPascals, double WithinSeconds)
{
    private const double Fall = 0.006, Before = 0.05, LeastPascals = 8e5, LeastShare = 0.03, WholeShare = 0.25, ClimbsOn = 0.1;

    /// <summary>The first fall that no leak makes: from the highest pressure of the last 50 ms, fast, with the motor running.</summary>
    /// <param name="from">First step of the search.</param>
    /// <param name="to">Step past the last.</param>
    /// <param name="zero">Pressure of the standstill, in pascals.</param>
    public static ReliefFall? Find(SignalGrid pressure, int from, int to, double zero)
    {
        var fall = Math.Max(2, pressure.Steps(Fall));
        var before = pressure.Steps(Before);
        for (var i = Math.Max(1, from); i < Math.Min(to, pressure.Length - 1); i++)
        {
            var least = Math.Max(Math.Max(LeastPascals, 8 * pressure.Noise), LeastShare * (pressure.Values[i] - zero));
            if (pressure.Values[i] - pressure.Values[Math.Min(i + fall, pressure.Length - 1)] < least)
                continue;
            var top = pressure.Values.AsSpan(Math.Max(0, i - before), Math.Min(i, before) + 1);
            var highest = double.NegativeInfinity;
            foreach (var value in top)
                highest = Math.Max(highest, value);
            if (pressure.Values[i] < highest - (4 * pressure.Noise))
                continue;
            var found = From(pressure, i, fall);
            if (found.TopPascals - found.FootPascals > WholeShare * (found.TopPascals - zero) || !IsExceeded(pressure, found, to, zero))
                return found;
        }

        return null;
    }

    /// <summary>Whether pressure soon climbs past the top again: then it fell in the suction half of a pump turn, through a leaking check.</summary>
    private static bool IsExceeded(SignalGrid pressure, ReliefFall fall, int to, double zero)
    {
        var last = Math.Min(to, pressure.IndexOf(fall.TopSeconds + ClimbsOn));
        for (var i = pressure.IndexOf(fall.FootSeconds); i < last; i++)
        {
            if (pressure.Values[i] > fall.TopPascals + Math.Max(4 * pressure.Noise, 0.015 * (fall.TopPascals - zero)))
                return true;
        }

        return false;
    }

    private static ReliefFall From(SignalGrid pressure, int at, int fall)
    {
        // The last step that still stands as high as the steps before the fall.
        var end = Math.Min(at + fall, pressure.Length - 1);
        var top = at;
        for (var i = at; i <= end; i++)
            top = pressure.Values[i] >= pressure.Values[top] - (2 * pressure.Noise) ? i : top;
        var foot = Math.Min(top + 1, pressure.Length - 1);
        while (foot < pressure.Length - fall - 1)
        {
            var left = pressure.Mean(foot, foot + Math.Max(1, fall / 2)) - pressure.Mean(foot + (fall / 2), foot + fall + 1);
            if (left < Math.Max(3 * pressure.Noise, 0.02 * (pressure.Values[top] - pressure.Values[foot])))
                break;
            foot++;
        }

        return new(pressure.SecondsAt(top), pressure.SecondsAt(foot), pressure.Values[top], pressure.Mean(foot, foot + fall), Math.Max(3e-3, 1.5 * pressure.StepSeconds));
    }
}
