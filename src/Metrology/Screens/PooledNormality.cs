using System.Collections.Immutable;

namespace Ramwright.Metrology.Screens;

/// <summary>The Shapiro–Wilk statistic on what several series leave when each one's own mean and scatter are taken out. It flags; it deletes nothing.</summary>
/// <remarks>
/// One short series shows little of its form; several together do. Residuals of a series hang together, so the chance is simulated with a fixed seed
/// for series of just these lengths.
/// </remarks>
public static class PooledNormality
{
    private const int MostReadings = 1_000;

    /// <summary>The statistic and its chance; null with fewer than two series of three readings that differ, or more than 1,000 readings in all.</summary>
    public static ShapiroWilkResult? Test(ImmutableArray<ImmutableArray<double>> series)
    {
        var used = series.Where(s => s.Length >= 3 && Moments.Of(s.AsSpan()).StandardDeviation > 0).ToList();
        var count = used.Sum(s => s.Length);
        if (used.Count < 2 || count > MostReadings)
            return null;
        var weights = ShapiroWilk.Weights(count);
        var pooled = new double[count];
        var start = 0;
        foreach (var s in used)
            start += Residuals(s.AsSpan(), pooled.AsSpan(start));
        var w = ShapiroWilk.Statistic(pooled, weights)!.Value;
        return new(w, Chance(w, [.. used.Select(s => s.Length)], weights));
    }

    /// <summary>Readings less their mean, over their standard deviation, and stretched so that series of all lengths scatter alike.</summary>
    private static int Residuals(ReadOnlySpan<double> readings, Span<double> to)
    {
        var moments = Moments.Of(readings);
        var scale = Math.Sqrt(readings.Length / (readings.Length - 1.0)) / moments.StandardDeviation;
        for (var i = 0; i < readings.Length; i++)
            to[i] = (readings[i] - moments.Mean) * scale;
        return readings.Length;
    }

    private static double Chance(double w, int[] lengths, double[] weights)
    {
        var draws = new double[weights.Length + (8 - weights.Length % 8) % 8];
        var pooled = new double[weights.Length];
        var passes = 0;
        for (var i = 0; i < NullSeries.Series; i++)
        {
            NullSeries.Draw(draws, i);
            var start = 0;
            foreach (var length in lengths)
                start += Residuals(draws.AsSpan(start, length), pooled.AsSpan(start));
            passes += ShapiroWilk.Statistic(pooled, weights) <= w ? 1 : 0;
        }

        return (1.0 + passes) / (1.0 + NullSeries.Series);
    }
}
