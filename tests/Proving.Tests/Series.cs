using System.Collections.Immutable;
using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Proving.Tests;

/// <summary>Invented series: by mean and standard deviation, or drawn from a seeded normal tool.</summary>
internal static class Series
{
    public static ProofSeries Of(double low, double high, double systematic, int planned, params double[] bar) => new()
    {
        Limits = new(Pressure.FromBar(low), Pressure.FromBar(high)),
        PlannedRuns = planned,
        Systematic = SystematicUncertainty.Symmetric(Pressure.FromBar(systematic)),
        Peaks = [.. bar.Select(Pressure.FromBar)],
    };

    /// <summary>n readings with exactly this mean and standard deviation: normal scores, shifted and scaled, in a fixed mixed order.</summary>
    public static double[] With(double mean, double deviation, int n)
    {
        double[] scores = [.. Enumerable.Range(0, n).Select(i => Normal.Quantile(((i * 7 + 3) % n + 0.5) / n))];
        if (scores.Distinct().Count() < n) // 7 divides n: another order
            scores = [.. Enumerable.Range(0, n).Select(i => Normal.Quantile(((i * 5 + 3) % n + 0.5) / n))];
        var average = scores.Average();
        var s = Math.Sqrt(scores.Sum(x => (x - average) * (x - average)) / (n - 1));
        return [.. scores.Select(x => mean + deviation * (x - average) / s)];
    }

    public static ImmutableArray<Pressure> Draw(Random random, double mean, double sigma, int n, double step = 0)
    {
        var peaks = ImmutableArray.CreateBuilder<Pressure>(n);
        for (var i = 0; i < n; i++)
        {
            var x = mean + sigma * Normal.Quantile(Math.Max(1e-300, random.NextDouble()));
            peaks.Add(Pressure.FromBar(step > 0 ? step * Math.Round(x / step) : x));
        }

        return peaks.ToImmutable();
    }
}
