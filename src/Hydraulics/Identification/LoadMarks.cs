using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>Where things happen in a stroke by its current alone.</summary>
/// <param name="Foot">Row at which the load leaves the level of the free advance; −1 when it does not.</param>
/// <param name="ClosedOnNothing">The load then rises as fast as closed dies make it: no connector.</param>
/// <param name="Opened">Last row before the load falls away for good; −1 when it does not.</param>
/// <param name="Dry">Row at which the load falls away though nothing was reached; −1 when it does not.</param>
internal sealed record LoadMarks(int Foot, bool ClosedOnNothing, int Opened, int Dry)
{
    private const double LeavesAt = 30e5, MostTurnsSlower = 2, MostFilling = 1.08;

    public static LoadMarks Of(StrokeSignal signal, IReadOnlyList<Span> pulls, TorquePressure torque, StrokeParameters tool)
    {
        var p = torque.PascalsIfFull;
        var level = Level(signal, pulls[0], p);
        if (double.IsNaN(level))
            return new(-1, false, -1, -1);
        var foot = FootRow(signal, pulls[0], p, level);
        var opened = foot < 0 ? -1 : OpenedRow(signal, pulls, foot, p);
        var dry = opened < 0 || p[opened] < 0.25 * tool.ReliefPascals ? DryRow(signal, pulls[0], p, level) : -1;
        return new(foot, foot >= 0 && Steep(pulls[0], torque, foot, tool), dry >= 0 ? -1 : opened, dry);
    }

    /// <summary>From the opening of the relief to the row at which the averaged load has halved, pump turns: the motor, braked by the load, first makes up its speed.</summary>
    private const double HalvedAfterTurns = 0.6, SeenTurns = 4;

    /// <summary>Pressure in pascals for a filling of 1 at which the load falls away, its standard deviation by jitter and carrying on, both in pascals; null where the rise is not seen.</summary>
    /// <param name="perTurn">Rise by turn of sound closed dies, pascals for a filling of 1.</param>
    /// <remarks>Averages that hold nothing of the fall, each carried on to the opening by the usual rise. An average over about a turn jitters by some 8 %: the pump has one piston.</remarks>
    public (double Pascals, double Deviation)? Fall(TorquePressure torque, double perTurn)
    {
        var p = torque.PascalsIfFull;
        var opened = torque.Turns[Opened] - HalvedAfterTurns;
        var (n, first, sum, carried) = (0, opened, 0.0, 0.0);
        for (var row = Opened; row > Foot && torque.Turns[row] > opened - SeenTurns; row--)
        {
            if (torque.Turns[row] > opened - 0.5)
                continue;
            if (!double.IsFinite(p[row]))
                break;
            (n, first, sum, carried) = (n + 1, torque.Turns[row], sum + p[row], carried + perTurn * (opened - torque.Turns[row]));
        }

        if (n < 3)
            return null;
        var turns = Math.Max(0.5, opened - 0.5 - first);
        return ((sum + carried) / n, Math.Sqrt(Math.Pow(0.08 * sum / n / Math.Sqrt(turns), 2) + Math.Pow(0.3 * carried / n, 2)));
    }

    private static double Level(StrokeSignal signal, Span pull, double[] p)
    {
        var from = pull.From + signal.Rows(0.3);
        var some = new List<double>();
        for (var row = from; row <= Math.Min(pull.To, from + signal.Rows(1.5)); row++)
        {
            if (double.IsFinite(p[row]))
                some.Add(p[row]);
        }

        some.Sort();
        return some.Count < 8 ? double.NaN : some[some.Count / 2];
    }

    private static int FootRow(StrokeSignal signal, Span pull, double[] p, double level)
    {
        var hold = signal.Rows(0.02);
        for (var row = pull.From + signal.Rows(0.3); row + hold <= pull.To; row++)
        {
            if (!(p[row] > level + LeavesAt) || !(p[row + hold] > level + LeavesAt))
                continue;
            while (row > pull.From && p[row] > level + 0.2 * LeavesAt)
                row--;
            return row;
        }

        return -1;
    }

    /// <summary>Turns over the first 100 bar against those that closed dies would take, and a filling that a pump can have: a connector gives way, and touches early.</summary>
    private static bool Steep(Span pull, TorquePressure torque, int foot, StrokeParameters tool)
    {
        var p = torque.PascalsIfFull;
        var swept = tool.RamSquareMetres * tool.StrokeMetres;
        var filling = swept / (Math.Max(1, torque.Turns[foot] - torque.Turns[pull.From]) * tool.DisplacementCubicMetres);
        var end = foot;
        while (end < pull.To && !(p[end] > p[foot] + 100e5))
            end++;
        if (end >= pull.To || filling > MostFilling)
            return false;
        var needed = (tool.DeadCubicMetres + swept) * tool.Oil.Squeeze(100e5).Share + tool.RamSquareMetres * tool.RamSquareMetres * 100e5 / tool.FrameNewtonsPerMetre;
        return torque.Turns[end] - torque.Turns[foot] < MostTurnsSlower * needed / (filling * tool.DisplacementCubicMetres) + 2;
    }

    private static int OpenedRow(StrokeSignal signal, IReadOnlyList<Span> pulls, int foot, double[] p)
    {
        var last = pulls[^1];
        var peak = -1;
        for (var row = Math.Max(foot, last.From); row <= last.To; row++)
        {
            if (double.IsFinite(p[row]) && (peak < 0 || p[row] > p[peak]))
                peak = row;
        }

        if (peak < 0)
            return -1;
        // Averaged over a turn, a load that falls away at once passes half its height just then. The motor still runs a moment: else the trigger was let go.
        var drop = peak;
        while (drop <= last.To && !(p[drop] < 0.5 * p[peak]))
            drop++;
        return last.To - drop >= signal.Rows(0.012) ? drop : -1;
    }

    /// <summary>The load falls to less than half of what the advance asked and stays there for a third of a second.</summary>
    private static int DryRow(StrokeSignal signal, Span pull, double[] p, double level)
    {
        var hold = signal.Rows(0.35);
        for (var row = pull.From + signal.Rows(0.6); row + hold <= pull.To; row++)
        {
            if (p[row] < 0.45 * level && Below(row))
                return row;
        }

        return -1;

        bool Below(int from)
        {
            var (sum, n) = (0.0, 0);
            for (var row = from; row <= from + hold; row++)
            {
                if (double.IsFinite(p[row]))
                    (sum, n) = (sum + p[row], n + 1);
            }

            return n > hold / 2 && sum / n < 0.45 * level;
        }
    }
}
