using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>What the current alone says of the drive: the ripple of the pump gives its speed, the run-up its resistance.</summary>
internal sealed class DriveSigns
{
    /// <summary>Charge drawn up to each row, A·s.</summary>
    public required double[] Charge { get; init; }

    /// <summary>Back-EMF k·ω during the advance, V, from the ripple; null where none stands out.</summary>
    public required double? BackVolts { get; init; }

    /// <summary>Mean current of that span.</summary>
    public required double AdvanceAmperes { get; init; }

    /// <summary>Resistance by the run-up of the motor, Ω; null where the start is not seen finely enough.</summary>
    public required double? RunUpOhms { get; init; }

    /// <summary>Row from which the ripple is read to the last.</summary>
    public required Span Advance { get; init; }

    public static DriveSigns Of(StrokeSignal signal, double[] amperes, StrokeMarks marks, StrokeParameters tool)
    {
        var charge = new double[amperes.Length];
        for (var row = 1; row < charge.Length; row++)
            charge[row] = charge[row - 1] + 0.5 * (amperes[row] + amperes[row - 1]) * signal.Step;
        var first = marks.Pulls[0];
        var end = marks.Foot > 0 ? Math.Min(marks.Foot, first.To) : first.To;
        var from = Math.Min(first.From + signal.Rows(0.3), Math.Max(first.From, end - signal.Rows(0.1)));
        var advance = new Span(from, end);
        return new DriveSigns
        {
            Charge = charge,
            Advance = advance,
            AdvanceAmperes = StrokeMarks.Mean(amperes, advance.From, advance.To),
            BackVolts = signal.Amperes is null || signal.Step > 0.0105 ? null : Ripple(signal, amperes, charge, advance, tool),
            RunUpOhms = signal.Amperes is null || signal.Step > 0.0105 ? null : RunUp(signal, amperes, first, tool),
        };
    }

    /// <summary>The speed at which the current, followed along the pump's angle, swings most: angle = (V·t − R·(q − q̄))/(k·gear).</summary>
    private static double? Ripple(StrokeSignal signal, double[] amperes, double[] charge, Span rows, StrokeParameters tool)
    {
        var half = signal.Rows(0.03);
        var count = Math.Min(rows.Length - 2 * half, signal.Rows(6));
        if (count * signal.Step < 0.4)
            return null;
        var swing = new double[count];
        var from = rows.From + half;
        for (var i = 0; i < count; i++)
            swing[i] = amperes[from + i] - StrokeMarks.Mean(amperes, from + i - half, from + i + half);
        var mean = (charge[from + count - 1] - charge[from]) / ((count - 1) * signal.Step);
        var perVolt = 1 / (tool.TorqueConstant * tool.GearRatio);
        var fine = 0.7 / (perVolt * count * signal.Step);
        double Power(double volts)
        {
            double real = 0, imaginary = 0;
            for (var i = 0; i < count; i++)
            {
                var t = i * signal.Step;
                var (sine, cosine) = Math.SinCos(perVolt * (volts * t - tool.ResistanceOhms * (charge[from + i] - charge[from] - mean * t)));
                real += swing[i] * cosine;
                imaginary += swing[i] * sine;
            }

            return real * real + imaginary * imaginary;
        }

        var (least, most) = (0.55 * tool.SupplyVolts, Math.Min(1.2 * tool.SupplyVolts, 0.95 * Math.PI / signal.Step / perVolt));
        var powers = new List<double>();
        for (var volts = least; volts <= most; volts += fine)
            powers.Add(Power(volts));
        if (powers.Count < 20 || most < 1.03 * tool.SupplyVolts)
            return null;
        var best = powers.IndexOf(powers.Max());
        var sorted = powers.Order().ToArray();
        if (powers[best] < 14 * sorted[sorted.Length / 2] || best == 0 || best == powers.Count - 1)
            return null;
        return Highest(Power, least + (best - 1) * fine, least + (best + 1) * fine);
    }

    /// <summary>Golden-section search between two places around a single top.</summary>
    private static double Highest(Func<double, double> of, double low, double high)
    {
        var golden = 0.5 * (Math.Sqrt(5) - 1);
        for (var i = 0; i < 25; i++)
        {
            var (a, b) = (high - golden * (high - low), low + golden * (high - low));
            (low, high) = of(a) > of(b) ? (low, b) : (a, high);
        }

        return 0.5 * (low + high);
    }

    /// <summary>Once off the limit the current falls towards that of the advance with the time constant J·R/k², over which J is known.</summary>
    private static double? RunUp(StrokeSignal signal, double[] amperes, Span pull, StrokeParameters tool)
    {
        var settled = StrokeMarks.Mean(amperes, pull.From + signal.Rows(0.3), pull.From + signal.Rows(0.4));
        var top = 0.0;
        var peak = pull.From;
        for (var row = pull.From; row < pull.From + signal.Rows(0.12); row++)
            (top, peak) = amperes[row] > top ? (amperes[row], row) : (top, peak);
        var limited = top > 0.97 * tool.CurrentLimitAmperes;
        var (n, st, sy, stt, sty) = (0, 0.0, 0.0, 0.0, 0.0);
        for (var row = peak; row < pull.From + signal.Rows(0.35); row++)
        {
            var above = amperes[row] - settled;
            if (amperes[row] > (limited ? 0.9 : 0.97) * top)
                continue;
            if (above < 0.12 * (top - settled))
                break;
            var (t, y) = (row * signal.Step, Math.Log(above));
            (n, st, sy, stt, sty) = (n + 1, st + t, sy + y, stt + t * t, sty + t * y);
        }

        if (n < 4)
            return null;
        var slope = (n * sty - st * sy) / (n * stt - st * st);
        return slope < -2 ? -tool.TorqueConstant * tool.TorqueConstant / (tool.Inertia * slope) : null;
    }
}
