using System.Collections.Concurrent;
using Ramwright.Metrology.Uncertainty.MonteCarlo;

namespace Ramwright.Metrology.Screens;

/// <summary>What the screens without an exact chance show on series in which there is nothing to see: normal readings in no order, simulated with a fixed seed.</summary>
/// <remarks>
/// The chance of a statistic as large is (1 + passes)/(1 + series): valid as it stands, also for few series (A. C. Davison &amp; D. V. Hinkley,
/// Bootstrap Methods and their Application (1997), 4.2). The least chance that can be shown is 1 in 5,000.
/// </remarks>
internal sealed class NullSeries
{
    public const int Series = 4_999;
    private const ulong Seed = 20_000;
    private const int MostKept = 32;
    private static readonly ConcurrentDictionary<int, Lazy<NullSeries>> Kept = new();
    private readonly double[] several;
    private readonly double[] single;
    private readonly double[] drift;

    private NullSeries(int n)
    {
        (several, single, drift) = (new double[Series], new double[Series], new double[Series]);
        var readings = new double[n + (8 - n % 8) % 8];
        for (var i = 0; i < Series; i++)
        {
            Draw(readings, i);
            var series = readings.AsSpan(0, n);
            var chart = IndividualsChart.Of(series)!;
            (several[i], single[i], drift[i]) = (SeveralOutliers(GeneralizedEsd.Steps(series, MostOutliers(n))), SingleReading(series, chart), Drift(series, chart));
        }

        Array.Sort(several);
        Array.Sort(single);
        Array.Sort(drift);
    }

    /// <summary>Worked out once for each number of readings, 4 to 1,000.</summary>
    public static NullSeries Of(int n)
    {
        if (Kept.Count >= MostKept)
            Kept.Clear();
        return Kept.GetOrAdd(n, key => new(() => new NullSeries(key))).Value;
    }

    /// <summary>Outliers looked for at most: one reading in five, ten at most.</summary>
    public static int MostOutliers(int n) => Math.Clamp(n / 5, 1, 10);

    /// <summary>How unlikely the most unlikely step is; larger is farther out. A log of a chance.</summary>
    public static double SeveralOutliers(IReadOnlyCollection<EsdStep> steps) => steps.Count == 0 ? 0 : -Math.Log(Math.Max(1e-300, steps.Min(s => s.PValue)));

    /// <summary>Distance of the farthest reading, a number of standard deviations from neighbour to neighbour.</summary>
    public static double SingleReading(ReadOnlySpan<double> readings, IndividualsChart chart) => Math.Abs(readings[chart.Farthest] - chart.Mean) / chart.Sigma;

    /// <summary>Farthest value of the moving average, a number of its standard deviations.</summary>
    public static double Drift(ReadOnlySpan<double> readings, IndividualsChart chart) => MovingAverage(readings, chart).Farthest().Deviations;

    public static Ewma MovingAverage(ReadOnlySpan<double> readings, IndividualsChart chart) => Ewma.Of(readings, 0.25, chart.Mean, chart.Sigma);

    /// <summary>Chance of a statistic as large.</summary>
    public double ChanceOfSeveralOutliers(double statistic) => Chance(several, statistic);

    /// <inheritdoc cref="ChanceOfSeveralOutliers"/>
    public double ChanceOfSingleReading(double statistic) => Chance(single, statistic);

    /// <inheritdoc cref="ChanceOfSeveralOutliers"/>
    public double ChanceOfDrift(double statistic) => Chance(drift, statistic);

    /// <summary>Fills with standard normal draws; as many as a multiple of eight.</summary>
    internal static void Draw(double[] readings, int series)
    {
        Array.Clear(readings);
        Draws.AddNormal(1, new RandomStream(Seed, (ulong)series), readings);
    }

    /// <summary>Chance of a statistic as large as this among sorted ones from nothing.</summary>
    internal static double Chance(double[] sorted, double statistic)
    {
        var below = Array.BinarySearch(sorted, statistic);
        if (below < 0)
            below = ~below;
        while (below > 0 && sorted[below - 1] == statistic)
            below--;
        return (1.0 + sorted.Length - below) / (1.0 + sorted.Length);
    }
}
