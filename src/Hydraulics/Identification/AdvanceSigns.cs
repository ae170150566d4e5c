using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>What the free advance of the ram shows: friction by pressure against spring, drag of the motor by current, a reservoir that runs dry.</summary>
/// <param name="FrictionNewtons">Dry friction of the ram.</param>
/// <param name="FrictionDeviation">Its standard deviation, N; infinite where no advance is seen.</param>
/// <param name="DragNewtonMetres">Friction torque at the motor; null without current.</param>
/// <param name="DrySeconds">Time at which the pump began to turn without load, though the dies had not closed or pressure stood; null when it did not.</param>
/// <param name="SpringFilling">Filling by how fast the spring's pressure grows, for strokes whose dies do not close, and its deviation; null if not readable.</param>
internal sealed record AdvanceSigns(double FrictionNewtons, double FrictionDeviation, double? DragNewtonMetres, double? DrySeconds, (double Filling, double Deviation)? SpringFilling)
{
    /// <summary>A current that falls by this share of what load adds, and stays there: nothing is pumped any more.</summary>
    private const double DryDrop = 0.6;

    public static AdvanceSigns Of(StrokeEvidence evidence, ToolState state)
    {
        var (signal, marks, tool) = (evidence.Signal, evidence.Marks, evidence.Tool);
        var first = marks.Pulls[0];
        var from = first.From + signal.Rows(0.25);
        var dry = signal.Amperes is null ? null : DryRow(evidence, tool);
        var to = Math.Min(dry ?? int.MaxValue, marks.Foot > 0 ? marks.Foot - signal.Rows(0.03) : first.To - signal.Rows(0.03));
        if (signal.Pascals is null || to - from < signal.Rows(0.3))
            return new(tool.DryFrictionNewtons, double.PositiveInfinity, null, dry is { } d ? signal.Seconds(d) : null, null);

        var speed = state.Filling * tool.DisplacementCubicMetres / (2 * Math.PI) * (state.SupplyVolts - state.ResistanceOhms * evidence.Drive.AdvanceAmperes) / (tool.TorqueConstant * tool.GearRatio) / tool.RamSquareMetres;
        var (mean, slope, slopeDeviation) = Line(signal, from, to);
        var middle = Math.Clamp(speed * (0.5 * (from + to) - first.From - signal.Rows(0.03)) * signal.Step, 0, tool.StrokeMetres);
        var friction = mean * tool.RamSquareMetres * (1 - state.SealShare) - tool.SpringPreloadNewtons - tool.SpringNewtonsPerMetre * middle - tool.ViscousFriction * speed;
        var deviation = Math.Sqrt(40 * 40 + Math.Pow(0.02 * tool.SpringPreloadNewtons, 2) + Math.Pow(0.15e5 * tool.RamSquareMetres, 2) + (signal.StandSeconds < 0.05 ? Math.Pow(3e5 * tool.RamSquareMetres, 2) : 0));
        double? drag = signal.Amperes is null ? null
            : tool.TorqueConstant * StrokeMarks.Mean(signal.Amperes, from, to) - state.Filling * tool.DisplacementCubicMetres * mean / (2 * Math.PI * tool.GearRatio * tool.GearEfficiency);
        var turning = (state.SupplyVolts - state.ResistanceOhms * evidence.Drive.AdvanceAmperes) / (tool.TorqueConstant * tool.GearRatio * 2 * Math.PI);
        var perFilling = tool.DisplacementCubicMetres * turning * tool.SpringNewtonsPerMetre / (tool.RamSquareMetres * tool.RamSquareMetres);
        return new(Math.Max(0, friction), deviation, drag, dry is { } row ? signal.Seconds(row) : null, (slope / perFilling, Math.Sqrt(Math.Pow(slopeDeviation / perFilling, 2) + 0.05 * 0.05)));
    }

    /// <summary>Mean, slope by second, and the slope's standard deviation, of the pressure over some rows.</summary>
    private static (double Mean, double Slope, double Deviation) Line(StrokeSignal signal, int from, int to)
    {
        var n = to - from + 1;
        var mean = StrokeMarks.Mean(signal.Pascals!, from, to);
        double up = 0, square = 0;
        for (var row = from; row <= to; row++)
        {
            var t = (row - 0.5 * (from + to)) * signal.Step;
            up += t * (signal.Pascals![row] - mean);
            square += t * t;
        }

        return (mean, up / square, 1.3 * signal.NoisePascals / Math.Sqrt(square) + 1e3 / n);
    }

    /// <summary>The row after which the current of a pull is lower for good by more than half of what load adds to idling, though the trigger is still held for half a second.</summary>
    private static int? DryRow(StrokeEvidence evidence, StrokeParameters tool)
    {
        var (signal, marks) = (evidence.Signal, evidence.Marks);
        var amperes = signal.Amperes!;
        var span = signal.Rows(0.25);
        foreach (var pull in marks.Pulls)
        {
            if (marks.Opened >= 0 && pull.To >= marks.Opened)
                continue;
            var from = pull.From + signal.Rows(0.35);
            var (row, most) = (-1, 0.0);
            for (var at = from + span; at + 2 * span <= pull.To; at += Math.Max(1, span / 25))
            {
                var (before, after) = (StrokeMarks.Mean(amperes, at - span, at - 1), StrokeMarks.Mean(amperes, at + signal.Rows(0.02), at + span));
                var rest = StrokeMarks.Mean(amperes, at + span, pull.To - signal.Rows(0.02));
                var drop = before - Math.Max(after, rest);
                var load = before - tool.MotorFrictionNewtonMetres / tool.TorqueConstant;
                if (drop > most && drop > Math.Max(DryDrop * load, 8 * signal.NoiseAmperes / Math.Sqrt(span)) && drop > 0.08 * before)
                    (row, most) = (at, drop);
            }

            if (row > 0)
                return row;
        }

        return null;
    }
}
