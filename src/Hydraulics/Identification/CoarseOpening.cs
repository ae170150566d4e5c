namespace Ramwright.Hydraulics.Identification;

/// <summary>The opening where single pump strokes are not seen: the highest row, plus what the sensor lags and what can have happened between two rows.</summary>
internal static class CoarseOpening
{
    /// <summary>A pump with one piston raises the pressure up to about three times as fast as on the mean of a turn.</summary>
    private const double PulseFactor = 3;

    public static (double Pascals, double Deviation)? Of(StrokeEvidence evidence)
    {
        var (signal, opened) = (evidence.Signal, evidence.Marks.Opened);
        if (opened < 2)
            return null;
        var pascals = signal.Pascals!;
        var back = Math.Min(opened, Math.Max(2, signal.Rows(2 * StrokeMarks.TurnSeconds(evidence.Tool))));
        var rise = Math.Max(0, (pascals[opened] - pascals[opened - back]) / (back * signal.Step));
        var missed = rise * (evidence.Tool.SensorSeconds + 0.5 * signal.Step) - rise * evidence.Tool.ReliefDelaySeconds;
        var spread = rise * PulseFactor * (0.5 * signal.Step + evidence.Tool.SensorSeconds + evidence.Tool.ReliefDelaySeconds) / Math.Sqrt(3);
        return (pascals[opened] + missed, Math.Sqrt(spread * spread + signal.NoisePascals * signal.NoisePascals));
    }
}
