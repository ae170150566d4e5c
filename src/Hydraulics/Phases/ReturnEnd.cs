namespace Ramwright.Hydraulics.Phases;

/// <summary>How a stroke ends after its relief has opened.</summary>
/// <param name="Closed">When the relief closed; null where that is not to be seen.</param>
/// <param name="ClosedUnseen">Whether it closed at the latest then.</param>
/// <param name="Home">When the ram was home; null where it is not.</param>
/// <param name="StaysOut">Whether pressure stands to the end.</param>
internal readonly record struct ReturnEnd(double? Closed, bool ClosedUnseen, double? Home, bool StaysOut)
{
    private const double Look = 0.01, LevelFrom = 0.02, LevelLength = 0.08, LeastPascals = 5e5, HighShare = 0.1;

    /// <summary>Follows pressure after the fall: the spring holds a low level until the ram is home; a relief that closes early leaves more, or pressure climbs again.</summary>
    /// <param name="motorOff">When the motor stopped for good; null when that is not seen.</param>
    public static ReturnEnd Of(SignalGrid pressure, ReliefFall fall, double zero, double? motorOff)
    {
        var foot = pressure.IndexOf(fall.FootSeconds);
        var look = pressure.Steps(Look);
        var least = Math.Max(LeastPascals, 6 * pressure.Noise / Math.Sqrt(look));
        if (Lowest(pressure, foot, pressure.IndexOf(motorOff ?? (fall.FootSeconds + 0.1)), look) is var (low, lowest)
            && Highest(pressure, low, pressure.IndexOf((motorOff ?? fall.FootSeconds) + 0.15), look) - lowest > least)
        {
            return StaysOrHome(pressure, low, zero, pressure.SecondsAt(low));
        }

        var level = pressure.Mean(foot + pressure.Steps(LevelFrom), foot + pressure.Steps(LevelFrom + LevelLength)) - zero;
        return level > Math.Max(2 * least, HighShare * (fall.TopPascals - zero))
            ? StaysOrHome(pressure, foot, zero, fall.FootSeconds)
            : StaysOrHome(pressure, foot, zero, null);
    }

    private static ReturnEnd StaysOrHome(SignalGrid pressure, int from, double zero, double? closed)
    {
        var look = pressure.Steps(Look);
        var level = pressure.Mean(from + pressure.Steps(LevelFrom), from + pressure.Steps(LevelFrom + LevelLength)) - zero;
        var end = pressure.Mean(pressure.Length - (4 * look), pressure.Length) - zero;
        var scatter = 5 * pressure.Noise / Math.Sqrt(look);
        if (level < scatter)
            return new(closed ?? pressure.SecondsAt(from), closed is null, pressure.SecondsAt(from), StaysOut: false);
        if (end > Math.Max(0.4 * level, scatter))
            return new(closed, ClosedUnseen: false, null, StaysOut: end > 0.9 * level || closed is not null);
        var at = from + pressure.Steps(LevelFrom);
        while (at < pressure.Length - look && pressure.Mean(at, at + look) - zero > Math.Max(0.5 * level, 0.5 * scatter))
            at++;
        var home = pressure.SecondsAt(at + (look / 2));
        return new(closed ?? home, closed is null, home, StaysOut: false);
    }

    private static (int At, double Value) Lowest(SignalGrid pressure, int from, int to, int look)
    {
        var (at, lowest) = (from, double.PositiveInfinity);
        for (var i = from; i <= to; i++)
        {
            if (pressure.Around(i, Math.Max(1, look / 2)) is var mean && mean < lowest)
                (at, lowest) = (i, mean);
        }

        return (at, lowest);
    }

    private static double Highest(SignalGrid pressure, int from, int to, int look)
    {
        var highest = double.NegativeInfinity;
        for (var i = from; i <= to; i++)
            highest = Math.Max(highest, pressure.Around(i, Math.Max(1, look / 2)));
        return highest;
    }
}
