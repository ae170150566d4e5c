using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Tolerance;

/// <summary>One-sided claims that are looked at twice: after the first readings, and, if nothing was decided, after more, on all of them.</summary>
/// <remarks>
/// Both looks use the exact factor of one common confidence γ′ &gt; γ, so large that a population whose share is just the coverage is accepted at
/// the first look or at the second with probability 1 − γ (equal confidence at each look is the plan of S. J. Pocock, Biometrika 64 (1977) 191, here for noncentral t).
/// With μ = 0, σ = 1 the mean of all is M, the first mean M + c·D, c = √(n₂/(n₁N)), D standard normal and independent of M; the sum of squares of all is
/// S₁ + S₂ + D². Given D, S₁ and S₂ both looks are bounds on M; what is left is a sum over three grids.
/// </remarks>
public static class TwoLooks
{
    private const int Digits = 6;
    private const double StepOfD = 0.25;
    private const double EndOfD = 5.5;

    /// <summary>γ′, the confidence of each look.</summary>
    /// <param name="first">Readings at the first look, 2 to 1,000.</param>
    /// <param name="more">Readings added for the second, 1 to 1,000.</param>
    /// <param name="coverage">The share, above 0 and below 1. For a refusal (a share shown to be below β) give 1 − β: the two are mirror images.</param>
    /// <param name="confidence">γ of both looks together, above 0 and below 1.</param>
    public static double ConfidenceOfEach(int first, int more, double coverage, double confidence)
    {
        Check(first, more);
        Probability.Inside(coverage);
        var spent = 1 - Probability.Inside(confidence);
        var grids = new Grids(first, more, coverage);
        var each = spent; // the two looks together spend once to twice as much as each
        for (var step = 0; step < 60; step++)
        {
            var together = grids.AcceptedShare(ToleranceFactor.OneSided(first, coverage, 1 - each), ToleranceFactor.OneSided(first + more, coverage, 1 - each));
            var next = each * spent / together;
            if (Math.Abs(next - each) < 1e-10 * each)
                break;
            each = Math.Min(spent, next);
        }

        return 1 - each;
    }

    /// <summary>How often a population whose share is just <paramref name="coverage"/> is accepted at the first look or at the second; a probability.</summary>
    /// <param name="firstFactor">Standard deviations asked at the first look.</param>
    /// <param name="lastFactor">Standard deviations asked at the second, of all readings.</param>
    /// <inheritdoc cref="ConfidenceOfEach" path="/param"/>
    public static double Accepted(int first, int more, double coverage, double firstFactor, double lastFactor)
    {
        Check(first, more);
        return new Grids(first, more, Probability.Inside(coverage)).AcceptedShare(firstFactor, lastFactor);
    }

    private static void Check(int first, int more)
    {
        if (first is < 2 or > 1_000)
            throw new ArgumentOutOfRangeException(nameof(first), first, "Two to 1,000 readings come first.");
        if (more is < 1 or > 1_000)
            throw new ArgumentOutOfRangeException(nameof(more), more, "One to 1,000 readings are added.");
    }

    private sealed class Grids(int first, int more, double coverage)
    {
        private readonly double _z = Normal.Quantile(coverage);
        private readonly ScatterGrid _first = new(first - 1, Math.Sqrt(first + more) * Math.Abs(Normal.Quantile(coverage)), Digits);
        private readonly ScatterGrid? _more = more > 1 ? new(more - 1, Math.Sqrt(first + more) * Math.Abs(Normal.Quantile(coverage)), Digits) : null;

        public double AcceptedShare(double firstFactor, double lastFactor)
        {
            double all = first + more, root = Math.Sqrt(all), c = Math.Sqrt(more / (first * all));
            ReadOnlySpan<double> ratios = _more is null ? [0] : _more.Ratios, weights = _more is null ? [1] : _more.Weights;
            double neither = 0, total = 0;
            for (var d = -EndOfD; d <= EndOfD; d += StepOfD)
            {
                var weightOfD = Normal.Density(d);
                total += weightOfD;
                for (var i = 0; i < _first.Ratios.Length; i++)
                {
                    var s = _first.Ratios[i];
                    var weight = weightOfD * _first.Weights[i];
                    if (weight < 1e-9)
                        continue;
                    var atFirst = firstFactor * s - _z - c * d;
                    var squares = (first - 1) * s * s + d * d;
                    for (var j = 0; j < ratios.Length; j++)
                    {
                        var scatter = Math.Sqrt((squares + (more - 1) * ratios[j] * ratios[j]) / (all - 1));
                        neither += weight * weights[j] * Normal.Cdf(root * Math.Min(atFirst, lastFactor * scatter - _z));
                    }
                }
            }

            return 1 - neither / total;
        }
    }
}
