using Ramwright.Hydraulics.Recordings;

namespace Ramwright.Hydraulics.Identification;

/// <summary>A recording made ready for reading: evenly spaced, free of its zero offsets, with the noise that it shows. Missing rows are bridged and marked.</summary>
internal sealed class StrokeSignal
{
    /// <summary>Finer rows tell a stroke nothing more and are averaged.</summary>
    private const double MostRowsPerSecond = 1000;

    private const int MostRows = 400_000;

    private StrokeSignal(double start, double step, int count) => (Start, Step, Count) = (start, step, count);

    /// <summary>Time of the first row, seconds.</summary>
    public double Start { get; }

    /// <summary>Spacing of the rows, seconds.</summary>
    public double Step { get; }

    public int Count { get; }

    /// <summary>Gauge pressure as the sensor showed it, less its zero; null when none was recorded.</summary>
    public double[]? Pascals { get; private init; }

    /// <summary>Whether the pressure row was read, and not bridged or clipped.</summary>
    public bool[] PressureIsRead { get; private init; } = [];

    public double[]? Amperes { get; private init; }

    /// <summary>Standard deviation of one row at rest.</summary>
    public double NoisePascals { get; private init; }

    public double NoiseAmperes { get; private init; }

    /// <summary>What the sensor showed at standstill.</summary>
    public double ZeroPascals { get; private init; }

    public double Seconds(int row) => Start + row * Step;

    public int Row(double seconds) => Math.Clamp((int)Math.Round((seconds - Start) / Step), 0, Count - 1);

    /// <summary>Rows in a span of time, at least one.</summary>
    public int Rows(double seconds) => Math.Max(1, (int)Math.Round(seconds / Step));

    /// <summary>Length of the standstill at the beginning, over which zero and noise were taken; 0 where there is none.</summary>
    public double StandSeconds { get; private init; }

    /// <summary>Makes a recording ready. Rows finer than 1 ms are averaged.</summary>
    public static StrokeSignal Of(Recording recording)
    {
        var step = Math.Max(1 / MostRowsPerSecond, MedianStep(recording));
        step = Math.Max(step, recording.Duration / MostRows);
        var count = Math.Max(2, (int)Math.Floor(recording.Duration / step + 1e-6) + 1);
        var start = recording.Seconds[0];
        var (pascals, read) = recording.Pascals is { } p ? Even(recording, p.AsSpan(), start, step, count) : (null, []);
        var (amperes, _) = recording.Amperes is { } a ? Even(recording, a.AsSpan(), start, step, count) : (null, []);
        var head = Math.Max(10, (int)(0.15 / step));
        var still = Math.Min(pascals is null ? count : StandRows(pascals, head, 5e5), amperes is null ? count : StandRows(amperes, head, 1));
        var (zeroPascals, noisePascals) = AtRest(pascals, still, 1e5);
        var (zeroAmperes, noiseAmperes) = AtRest(amperes, still, 0.2);
        Shift(pascals, zeroPascals);
        Shift(amperes, zeroAmperes);
        return new StrokeSignal(start, step, count)
        {
            Pascals = pascals,
            PressureIsRead = read,
            Amperes = amperes,
            NoisePascals = noisePascals,
            NoiseAmperes = noiseAmperes,
            ZeroPascals = zeroPascals,
            StandSeconds = still * step,
        };
    }

    /// <summary>Rows before the first that three in a row leave the level of the beginning by six deviations, and by at least this much.</summary>
    private static int StandRows(double[] values, int headRows, double least)
    {
        var head = values.AsSpan(0, Math.Min(values.Length, headRows)).ToArray();
        Array.Sort(head);
        var level = head[head.Length / 2];
        var deviation = Math.Max((head[head.Length * 3 / 4] - head[head.Length / 4]) / 1.35, least / 6);
        var run = 0;
        for (var row = 0; row < values.Length; row++)
        {
            run = Math.Abs(values[row] - level) > 6 * deviation ? run + 1 : 0;
            if (run == 3 || (run > 0 && Math.Abs(values[row] - level) > 60 * deviation))
                return Math.Max(0, row - run - 1);
        }

        return values.Length;
    }

    private static double MedianStep(Recording recording)
    {
        var steps = new double[recording.Seconds.Length - 1];
        for (var i = 0; i < steps.Length; i++)
            steps[i] = recording.Seconds[i + 1] - recording.Seconds[i];
        Array.Sort(steps);
        return steps[steps.Length / 2];
    }

    /// <summary>Rows that lie within half a step are averaged; where there are none, the line between neighbours is taken and marked as not read if it spans three steps or more.</summary>
    private static (double[] Values, bool[] Read) Even(Recording recording, ReadOnlySpan<double> given, double start, double step, int count)
    {
        var (sums, hits) = (new double[count], new int[count]);
        for (var i = 0; i < given.Length; i++)
        {
            if (double.IsNaN(given[i]))
                continue;
            var row = (int)Math.Floor((recording.Seconds[i] - start) / step + 0.5 + 1e-6);
            if (row < 0 || row >= count)
                continue;
            sums[row] += given[i];
            hits[row]++;
        }

        var (values, read, last) = (new double[count], new bool[count], -1);
        for (var row = 0; row < count; row++)
        {
            if (hits[row] == 0)
                continue;
            values[row] = sums[row] / hits[row];
            read[row] = true;
            for (var gap = last + 1; gap < row; gap++)
            {
                values[gap] = last < 0 ? values[row] : values[last] + (values[row] - values[last]) * (gap - last) / (row - last);
                read[gap] = row - last < 3;
            }

            last = row;
        }

        for (var row = last + 1; row < count; row++)
            values[row] = last < 0 ? 0 : values[last];
        return (values, read);
    }

    private static (double Zero, double Noise) AtRest(double[]? values, int still, double otherwise)
    {
        if (values is null || still < 5)
            return (0, otherwise);
        var rest = values.AsSpan(0, still).ToArray();
        Array.Sort(rest);
        var middle = rest.AsSpan(still / 10, still - 2 * (still / 10));
        double mean = 0, square = 0;
        foreach (var value in middle)
            mean += value / middle.Length;
        foreach (var value in values.AsSpan(0, still))
            square += (value - mean) * (value - mean) / still;
        return (mean, Math.Max(Math.Sqrt(square), 0.1 * otherwise));
    }

    private static void Shift(double[]? values, double by)
    {
        for (var i = 0; values is not null && i < values.Length; i++)
            values[i] -= by;
    }
}
