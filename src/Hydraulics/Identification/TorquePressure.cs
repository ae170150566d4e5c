using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>
/// Pressure by the motor's torque: work at the pump in a turn is p × delivered volume, so p = 2π·gear·η·(k·i − friction − J·dω/dt) / (filling × displacement), with every
/// term averaged over a whole turn of the pump; ω = (U − R·i)/k below the current limit, U from the ripple where it shows. Nothing is said where the motor stands or runs up.
/// </summary>
internal sealed class TorquePressure
{
    /// <summary>What k, gearbox and displacement of one tool differ from the service data together, a share; judged.</summary>
    public const double ScaleDeviation = 0.04;

    /// <summary>Pressure in pascals for a filling of 1, by row; NaN where nothing can be said.</summary>
    public required double[] PascalsIfFull { get; init; }

    /// <summary>Pump turns since the first pull, by row.</summary>
    public required double[] Turns { get; init; }

    /// <param name="volts">Supply without load.</param>
    public static TorquePressure Of(StrokeSignal signal, IReadOnlyList<Span> pulls, StrokeParameters tool, double volts)
    {
        var amperes = signal.Amperes!;
        var (turns, speed) = (new double[signal.Count], new double[signal.Count]);
        var perTurn = tool.GearRatio * 2 * Math.PI;
        var pull = 0;
        for (var row = 1; row < signal.Count; row++)
        {
            while (pull < pulls.Count && row > pulls[pull].To)
                pull++;
            var on = pull < pulls.Count && row >= pulls[pull].From;
            var free = Math.Max(0, (volts - tool.ResistanceOhms * amperes[row]) / tool.TorqueConstant);
            // From standstill the run-up takes J·ω/(k·i): the speed by voltage is not reached before.
            var most = speed[row - 1] + Math.Max(0, tool.TorqueConstant * amperes[row] - tool.MotorFrictionNewtonMetres) / tool.Inertia * signal.Step;
            speed[row] = on ? Math.Min(free, Math.Max(most, amperes[row] < 0.5 * tool.StallAmperes ? free : 0)) : 0;
            turns[row] = turns[row - 1] + 0.5 * (speed[row] + speed[row - 1]) * signal.Step / perTurn;
        }

        var pascals = new double[signal.Count];
        Array.Fill(pascals, double.NaN);
        foreach (var span in pulls)
            Fill(pascals, signal, span, turns, speed, tool);
        return new() { PascalsIfFull = pascals, Turns = turns };
    }

    private static void Fill(double[] pascals, StrokeSignal signal, Span span, double[] turns, double[] speed, StrokeParameters tool)
    {
        var amperes = signal.Amperes!;
        var full = 2 * Math.PI * tool.GearRatio * tool.GearEfficiency / tool.DisplacementCubicMetres;
        var settled = span.From;
        while (settled < span.To && (amperes[settled] > 0.5 * tool.StallAmperes || turns[settled] - turns[span.From] < 0.5 || speed[settled] < 0.99 * speed[Math.Min(span.To, settled + signal.Rows(0.004))]))
            settled++;
        int from = settled, to = settled;
        for (var row = settled; row <= span.To; row++)
        {
            while (from < row && turns[row] - turns[from + 1] > 0.5)
                from++;
            while (to < span.To && turns[to] - turns[row] < 0.5)
                to++;
            if (turns[to] - turns[from] < 0.9 || to - from < 2 || (from == settled && turns[row] - turns[from] < 0.45))
                continue;
            var torque = tool.TorqueConstant * StrokeMarks.Mean(amperes, from, to) - tool.MotorFrictionNewtonMetres - tool.Inertia * (speed[to] - speed[from]) / ((to - from) * signal.Step);
            pascals[row] = full * torque;
        }
    }
}
