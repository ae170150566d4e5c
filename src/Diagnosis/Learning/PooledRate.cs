using System.Collections.Immutable;
using Ramwright.Metrology.Distributions;

namespace Ramwright.Diagnosis.Learning;

/// <summary>A rate as jobs have taught it: mean and 90 % interval, probabilities.</summary>
public sealed record RateBelief(double Mean, double Low, double High);

/// <summary>The rate of one fault in several models of a kind, pooled as far as they are alike.</summary>
/// <remarks>
/// Each model has its own rate θ ~ Beta(s·μ, s·(1 − μ)); the kind's μ ~ Beta(w·r, w·(1 − r)) around the rate r that the models state, weighing w jobs; how alike the models are,
/// s jobs, is one of a few strengths, all alike likely beforehand. Given μ and s the posterior of θ is Beta(s·μ + x, s·(1 − μ) + n − x), and what n and x say of them the
/// beta-binomial (A. Gelman and others, Bayesian Data Analysis, ch. 5; chapter from memory). The two are summed over a grid: no fit, no simulation. x may be a fraction: expected counts.
/// </remarks>
public static class PooledRate
{
    /// <summary>How many jobs a stated rate weighs. From judgement.</summary>
    public const double StatedWeight = 12;

    private const int Points = 81;

    private static readonly double[] Strengths = [3, 10, 30, 100, 300];

    /// <param name="stated">The rate that the models state, above 0 and below 1.</param>
    /// <param name="tallies">One for each model.</param>
    /// <returns>The belief for each model, in the same order.</returns>
    public static ImmutableArray<RateBelief> Of(double stated, IReadOnlyList<FaultTally> tallies)
    {
        ArgumentNullException.ThrowIfNull(tallies);
        if (stated is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(stated), stated, "A stated rate lies above 0 and below 1.");
        var grid = Grid(stated, tallies);
        return [.. tallies.Select(t => Belief(grid, t))];
    }

    /// <summary>The means alone, probabilities.</summary>
    internal static double[] Means(double stated, IReadOnlyList<FaultTally> tallies)
    {
        var grid = Grid(stated, tallies);
        return [.. tallies.Select(t => Mean(grid, t))];
    }

    private static double Mean(List<(double Mean, double Strength, double Weight)> grid, FaultTally t) =>
        grid.Sum(p => p.Weight * (p.Strength * p.Mean + t.Count) / (p.Strength + t.Exposure));

    /// <summary>Points (μ, s) and their posterior weights, which sum to 1.</summary>
    private static List<(double Mean, double Strength, double Weight)> Grid(double stated, IReadOnlyList<FaultTally> tallies)
    {
        var points = new List<(double, double, double Log)>();
        var logit = Math.Log(stated / (1 - stated));
        for (var i = 0; i < Points; i++)
        {
            var mean = 1 / (1 + Math.Exp(-(logit + 6.0 * (2.0 * i / (Points - 1) - 1)))); // evenly in log-odds, so the density carries μ(1 − μ)
            var log = StatedWeight * (stated * Math.Log(mean) + (1 - stated) * Math.Log(1 - mean));
            foreach (var strength in Strengths)
                points.Add((mean, strength, log + tallies.Sum(t => LogBetaBinomial(strength * mean, strength * (1 - mean), t))));
        }

        var top = points.Max(p => p.Log);
        var sum = points.Sum(p => Math.Exp(p.Log - top));
        return [.. points.Select(p => (p.Item1, p.Item2, Math.Exp(p.Log - top) / sum)).Where(p => p.Item3 > 1e-9)];
    }

    private static double LogBetaBinomial(double a, double b, FaultTally t) =>
        LogBeta(a + t.Count, b + t.Exposure - t.Count) - LogBeta(a, b);

    private static double LogBeta(double a, double b) => GammaFunction.Log(a) + GammaFunction.Log(b) - GammaFunction.Log(a + b);

    private static RateBelief Belief(List<(double Mean, double Strength, double Weight)> grid, FaultTally t)
    {
        return new(Mean(grid, t), Quantile(0.05), Quantile(0.95));

        double Quantile(double share)
        {
            var (low, high) = (0.0, 1.0);
            for (var i = 0; i < 24; i++)
            {
                var middle = 0.5 * (low + high);
                if (UpTo(middle) < share)
                    low = middle;
                else
                    high = middle;
            }

            return 0.5 * (low + high);
        }

        double UpTo(double rate) => grid.Sum(p => p.Weight * BetaFunction.Regularised(p.Strength * p.Mean + t.Count, p.Strength * (1 - p.Mean) + t.Exposure - t.Count, rate, 1 - rate));
    }
}
