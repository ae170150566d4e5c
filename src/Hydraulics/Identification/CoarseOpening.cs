namespace Ramwright.Hydraulics.Identification;

/// <summary>The opening where single pump strokes are not seen: the highest row, plus what the sensor lags and what can have happened between two rows.</summary>
internal static class CoarseOpening
{
    /// <summary>A pump with one piston raises the pressure up to about three times as fast as on the mean of a turn.</summary>
    private const double PulseFactor = 3;

    public static (double Pascals, double Deviation)? Of(StrokeEvidence evidence)
    {
        var (signal, opened) = (evidence.Signal, evidence.Marks.Opened);
        if (opened < 2 || signal.Pascals is null)
            return null;
        var pascals = signal.Pascals!;
        var back = Math.Min(opened, Math.Max(2, signal.Rows(2 * StrokeMarks.TurnSeconds(evidence.Tool))));
        var rise = Math.Max(0, (pascals[opened] - pascals[opened - back]) / (back * signal.Step));
        var turn = StrokeMarks.StiffRise(evidence.Tool, pascals[opened]) * StrokeMarks.TurnSeconds(evidence.Tool);
        var between = Math.Min(1, signal.Step / (0.5 * StrokeMarks.TurnSeconds(evidence.Tool)));
        var missed = Math.Max(rise * (evidence.Tool.SensorSeconds + 0.5 * signal.Step - evidence.Tool.ReliefDelaySeconds), 0.3 * between * turn);
        var spread = Math.Max(rise * PulseFactor * (0.5 * signal.Step + evidence.Tool.SensorSeconds + evidence.Tool.ReliefDelaySeconds) / Math.Sqrt(3), 0.4 * between * turn);
        return (pascals[opened] + missed, Math.Sqrt(spread * spread + signal.NoisePascals * signal.NoisePascals));
    }
}
