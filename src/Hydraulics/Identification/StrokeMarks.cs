using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>A span of rows, the last one included.</summary>
internal readonly record struct Span(int From, int To)
{
    public int Length => To - From + 1;
}

/// <summary>Where things happen in a recorded stroke, by row: what the fits start from.</summary>
internal sealed class StrokeMarks
{
    /// <summary>Spans in which the motor runs, in order.</summary>
    public required List<Span> Pulls { get; init; }

    /// <summary>Last row before the pressure falls away; −1 when the relief did not open.</summary>
    public required int Opened { get; init; }

    /// <summary>First row at which the pressure leaves the level of the advance: dies closed or a connector touched; −1 when it does not.</summary>
    public required int Foot { get; init; }

    /// <summary>Row at which the dies close; the same as the foot when they close on nothing, −1 when they do not.</summary>
    public required int Closed { get; init; }

    /// <summary>Something was pressed before the dies closed.</summary>
    public required bool Connector { get; init; }

    /// <summary>Mean pressure of the advance, and its slope by row: level at row r is Advance + AdvanceSlope·(r − Foot).</summary>
    public required double AdvancePascals { get; init; }

    /// <summary>The pause after a pull, motor standing, up to the next pull or the end; the coasting pump left out.</summary>
    public IEnumerable<Span> Pauses(StrokeSignal signal)
    {
        for (var i = 0; i < Pulls.Count; i++)
        {
            var from = Pulls[i].To + signal.Rows(0.12);
            var to = (i + 1 < Pulls.Count ? Pulls[i + 1].From : signal.Count) - 3;
            if (from < to - signal.Rows(0.3) && (Opened < 0 || to < Opened))
                yield return new(from, to);
        }
    }

    public static StrokeMarks Of(StrokeSignal signal, StrokeParameters tool)
    {
        var pulls = signal.Amperes is not null ? ByCurrent(signal, tool) : [];
        var opened = signal.Pascals is null ? -1 : Opening(signal);
        if (signal.Amperes is null && signal.Pascals is not null)
            pulls = ByPressure(signal, opened);
        var (foot, advance) = signal.Pascals is null || pulls.Count == 0 ? (-1, 0) : FootOf(signal, pulls, opened, tool);
        var (closed, connector) = foot < 0 ? (-1, false) : ClosingOf(signal, pulls, opened, foot, tool);
        return new StrokeMarks { Pulls = pulls, Opened = opened, Foot = foot, Closed = closed, Connector = connector, AdvancePascals = advance };
    }

    /// <summary>The motor runs while its mean current over 5 ms is above a third of what turning alone takes.</summary>
    private static List<Span> ByCurrent(StrokeSignal signal, StrokeParameters tool)
    {
        var amperes = signal.Amperes!;
        var idle = tool.MotorFrictionNewtonMetres / tool.TorqueConstant;
        var half = signal.Rows(0.004) / 2;
        var least = Math.Max(0.35 * idle, 4 * signal.NoiseAmperes / Math.Sqrt(2 * half + 1));
        var pulls = new List<Span>();
        var from = -1;
        for (var row = 0; row <= amperes.Length; row++)
        {
            var on = row < amperes.Length && Mean(amperes, row - half, row + half) > least;
            if (on && from < 0)
                from = row;
            if (on || from < 0)
                continue;
            if (pulls.Count > 0 && from - pulls[^1].To < signal.Rows(0.03))
                pulls[^1] = new(pulls[^1].From, row - 1);
            else if (row - from >= signal.Rows(0.04))
                pulls.Add(new(from, row - 1));
            from = -1;
        }

        return pulls;
    }

    /// <summary>Without a current: the motor runs from the first rise to the last, but for spans of 0.4 s and more in which the pressure is high and does not rise.</summary>
    private static List<Span> ByPressure(StrokeSignal signal, int opened)
    {
        var pascals = signal.Pascals!;
        var end = opened < 0 ? pascals.Length - 1 : opened;
        var top = pascals.AsSpan(0, end + 1).ToArray().Max();
        if (top < 8e5 + 4 * signal.NoisePascals)
            return [];
        var (half, look) = (signal.Rows(0.015), signal.Rows(0.12));
        var from = Math.Max(0, (int)(signal.StandSeconds / signal.Step) - signal.Rows(0.025));
        var pulls = new List<Span>();
        var flat = -1;
        for (var row = from + signal.Rows(0.3); row + look <= end; row++)
        {
            var stands = pascals[row] > 0.25 * top && pascals[row] > 40e5 && Mean(pascals, row + look - half, row + look) - Mean(pascals, row, row + half) < 2e5;
            if (stands && flat < 0)
                flat = row;
            if (stands || flat < 0)
                continue;
            if (row - flat >= signal.Rows(0.4))
            {
                pulls.Add(new(from, flat));
                from = row + look - signal.Rows(0.03);
            }

            flat = -1;
        }

        // A last pull up to the opening may be too short to be seen by looking ahead.
        if (flat >= 0 && opened >= 0 && end - look - flat >= signal.Rows(0.4))
        {
            pulls.Add(new(from, flat));
            from = end - look;
            while (from < end - 2 && Mean(pascals, from, from + half) < Mean(pascals, end - look - half, end - look) + 3e5)
                from++;
        }

        pulls.Add(new(from, opened < 0 ? end : Math.Min(signal.Count - 1, opened + signal.Rows(0.04))));
        return pulls;
    }

    /// <summary>The relief opens where the pressure falls by an eighth and 30 bar within 12 ms (two rows when they are further apart): no leak does that.</summary>
    private static int Opening(StrokeSignal signal)
    {
        var pascals = signal.Pascals!;
        var over = Math.Max(2, signal.Rows(0.012));
        for (var row = 1; row + over < pascals.Length; row++)
        {
            if (pascals[row] < 40e5 || pascals[row] - pascals[row + over] < Math.Max(30e5, 0.125 * pascals[row]))
                continue;
            var peak = row;
            for (var near = row; near <= row + over; near++)
                peak = pascals[near] > pascals[peak] ? near : peak;
            return peak;
        }

        return -1;
    }

    private static (int Foot, double Advance) FootOf(StrokeSignal signal, List<Span> pulls, int opened, StrokeParameters tool)
    {
        var pascals = signal.Pascals!;
        var first = pulls[0];
        var from = first.From + signal.Rows(0.1);
        var end = Math.Min(opened < 0 ? signal.Count - 1 : opened, Math.Max(first.To, from));
        if (end - from < signal.Rows(0.2))
            return (-1, 0);
        var level = new double[Math.Max(8, Math.Min(end - from, signal.Rows(1.0)))];
        Array.Copy(pascals, from, level, 0, Math.Min(level.Length, signal.Count - from));
        Array.Sort(level);
        var advance = level[level.Length / 2];
        var half = signal.Rows(0.01);
        var spring = tool.SpringNewtonsPerMetre * tool.StrokeMetres / tool.RamSquareMetres;
        for (var row = from; row <= end; row++)
        {
            if (Mean(pascals, row - half, row + half) < advance + spring + 14e5)
                continue;
            var before = Mean(pascals, row - signal.Rows(0.3), row - signal.Rows(0.1));
            while (row > from && Mean(pascals, row - half / 2, row + half / 2) > before + 2.5 * signal.NoisePascals / Math.Sqrt(half + 1) + 1e5)
                row--;
            while (row < end && Mean(pascals, row, row + 2) < before + 2 * signal.NoisePascals)
                row++;
            return (Math.Max(from, row - signal.Rows(tool.SensorSeconds)), before);
        }

        return (-1, advance);
    }

    /// <summary>Dies that close on nothing raise the pressure at once at two fifths or more of what pump and stiffness give; a connector gives way.</summary>
    private static (int Closed, bool Connector) ClosingOf(StrokeSignal signal, List<Span> pulls, int opened, int foot, StrokeParameters tool)
    {
        var pascals = signal.Pascals!;
        var turn = signal.Rows(TurnSeconds(tool));
        var at = foot;
        while (at < signal.Count - 1 && pascals[at] < pascals[foot] + 90e5 && at - foot < signal.Rows(2))
            at++;
        var mean = (pascals[at] - pascals[foot]) / ((at - foot + 0.5 * turn) * signal.Step);
        if (mean > 0.22 * StiffRise(tool, 50e5))
            return (foot, false);
        var last = opened < 0 ? signal.Count - 1 : opened;
        var (closed, sharpest) = (-1, 2.0);
        for (var row = foot + 2 * turn; row + 2 * turn <= last; row++)
        {
            if (!pulls.Exists(p => p.From + signal.Rows(0.09) + turn < row && row + turn < p.To))
                continue;
            var (before, after) = ((pascals[row] - pascals[row - turn]) / (turn * signal.Step), (pascals[row + 2 * turn] - pascals[row]) / (2 * turn * signal.Step));
            var stiff = StiffRise(tool, pascals[row]);
            if (after > 0.35 * stiff && after / Math.Max(before, 0.05 * stiff) > sharpest)
                (closed, sharpest) = (row, after / Math.Max(before, 0.05 * stiff));
        }

        return (closed, true);
    }

    /// <summary>Time of a pump turn without load, in seconds.</summary>
    public static double TurnSeconds(StrokeParameters tool) =>
        2 * Math.PI * tool.GearRatio * tool.TorqueConstant / (tool.SupplyVolts - tool.ResistanceOhms * tool.MotorFrictionNewtonMetres / tool.TorqueConstant);

    /// <summary>Whether single strokes of the pump show in a rise: it departs from its own mean over a turn by more than noise.</summary>
    public static bool PulsesShow(StrokeSignal signal, Span rise, StrokeParameters tool)
    {
        var half = signal.Rows(1.2 * TurnSeconds(tool)) / 2;
        var (sum, count) = (0.0, 0);
        for (var row = rise.From + half; row + half <= rise.To; row++)
        {
            sum += Math.Pow(signal.Pascals![row] - Mean(signal.Pascals, row - half, row + half), 2);
            count++;
        }

        return count > 0 && Math.Sqrt(sum / count) > 2.2 * signal.NoisePascals + 0.03 * StiffRise(tool, 200e5) * TurnSeconds(tool);
    }

    /// <summary>Rate of rise with the dies closed and a sound pump, Pa/s: delivery over the compliance of oil and frame.</summary>
    public static double StiffRise(StrokeParameters tool, double pascals) =>
        tool.FilledCubicMetres / TurnSeconds(tool) / ((tool.DeadCubicMetres + tool.RamSquareMetres * tool.StrokeMetres) / tool.Oil.ModulusPascals(pascals)
            + tool.RamSquareMetres * tool.RamSquareMetres / tool.FrameNewtonsPerMetre);

    /// <summary>Mean of some rows in their own unit; rows outside are left out.</summary>
    public static double Mean(double[] values, int from, int to)
    {
        (from, to) = (Math.Max(from, 0), Math.Min(to, values.Length - 1));
        var sum = 0.0;
        for (var i = from; i <= to; i++)
            sum += values[i];
        return sum / Math.Max(1, to - from + 1);
    }
}
