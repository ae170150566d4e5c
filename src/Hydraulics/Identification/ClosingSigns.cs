namespace Ramwright.Hydraulics.Identification;

/// <summary>What follows the opening: where the relief closes again, and whether the ram comes home. Pressures in pascals.</summary>
/// <param name="Seen">The relief closed with the ram still out, so that its closing pressure shows.</param>
/// <param name="Value">Closing pressure, or what is expected of it.</param>
/// <param name="Low">Lower limit.</param>
/// <param name="High">Upper limit: while oil flows home at a pressure, the relief is open at it.</param>
/// <param name="EndPascals">Pressure at the end of the recording.</param>
/// <param name="StaysOut">The ram did not come home though there was time.</param>
internal sealed record ClosingSigns(bool Seen, double Value, double Low, double High, double EndPascals, bool StaysOut)
{
    public static ClosingSigns? Of(StrokeEvidence evidence)
    {
        var (signal, marks, tool) = (evidence.Signal, evidence.Marks, evidence.Tool);
        if (marks.Opened < 0 || signal.Pascals is not { } pascals || signal.Count - marks.Opened < signal.Rows(0.15))
            return null;
        var peak = pascals[marks.Opened];
        var width = Math.Max(0, signal.Rows(0.004) / 2);
        var (least, at) = (double.MaxValue, marks.Opened);
        var until = Math.Min(signal.Count - 1, marks.Opened + signal.Rows(0.06));
        for (var row = marks.Opened + 1; row <= until; row++)
        {
            var here = StrokeMarks.Mean(pascals, row - width, row + width);
            if (here < least - 0.2e5)
                (least, at) = (here, row);
        }

        var end = StrokeMarks.Mean(pascals, signal.Count - signal.Rows(0.08), signal.Count - 1);
        var expected = tool.ClosingRatio * evidence.OpeningPascals;
        var homePressure = (tool.SpringPreloadNewtons - tool.DryFrictionNewtons) / tool.RamSquareMetres;
        var levelAfter = StrokeMarks.Mean(pascals, marks.Opened + signal.Rows(0.1), marks.Opened + signal.Rows(0.2));
        if (end < 0.35 * homePressure || (least < 1.3 * homePressure && levelAfter < 1.6 * homePressure))
        {
            var lastFlow = end < 0.35 * homePressure ? LastFlow(signal, pascals, at, end) : Math.Max(least, levelAfter);
            return new(false, Math.Min(expected, lastFlow), 0, Math.Max(lastFlow, 1.15 * expected), end, end >= 0.35 * homePressure && signal.Count - marks.Opened > signal.Rows(1.5));
        }

        // Falling by dp/dt = −a·√p, the poppet needs about a millisecond to close: √p at the beginning of that from √p at the end.
        var rate = FallRate(signal, pascals, marks.Opened, at);
        double Began(double seconds, double ended) => Math.Pow(0.5 * (rate * seconds + Math.Sqrt(rate * rate * seconds * seconds + 4 * Math.Max(0, ended))), 2);
        var late = tool.ReliefSeconds;
        return new(true, Math.Min(peak, Began(late, least)), Math.Min(peak, Began(0.2 * late, least - 2 * signal.NoisePascals)), Math.Min(peak, Began(2 * late + 0.5 * signal.Step, least + 2 * signal.NoisePascals)), end, true);
    }

    /// <summary>a in dp/dt = −a·√p, by the fall from nine tenths to four tenths of the way down, √Pa/s.</summary>
    private static double FallRate(StrokeSignal signal, double[] pascals, int opened, int least)
    {
        double steepest = 0;
        for (var row = opened + 1; row <= least; row++)
        {
            var (above, below) = (Math.Sqrt(Math.Max(0, pascals[row - 1])), Math.Sqrt(Math.Max(0, pascals[row])));
            if (pascals[row] > pascals[least] + 0.25 * (pascals[opened] - pascals[least]))
                steepest = Math.Max(steepest, 2 * (above - below) / signal.Step);
        }

        return steepest;
    }

    /// <summary>Median pressure over the last fifth of a second before it falls away because the ram is home.</summary>
    private static double LastFlow(StrokeSignal signal, double[] pascals, int from, double end)
    {
        var width = signal.Rows(0.02);
        var row = signal.Count - 1;
        while (row > from + width && StrokeMarks.Mean(pascals, row - width, row) < end + 4e5)
            row--;
        var first = Math.Max(from, row - signal.Rows(0.2));
        if (row - width - first < 3)
            return end + 10e5;
        var level = pascals.AsSpan(first, row - width - first).ToArray();
        Array.Sort(level);
        return level[level.Length / 2] + 1e5;
    }
}
