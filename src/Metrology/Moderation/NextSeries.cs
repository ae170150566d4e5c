using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Moderation;

/// <summary>A series still to be made of a tool drawn from the population: how far its mean must lie from a limit.</summary>
/// <remarks>
/// The claim 'at least β lie on the right side' is made when the mean lies k·max(s, s̃) inside, s the tool's own scatter and s̃ the moderated one.
/// For a tool of content exactly β the false accept is the mean of Φ(√n·(z − k·max(s, s̃)/σ)) over σ and s together: one sum over two grids.
/// k makes it (1 − γ)·<see cref="Spent"/>. So k is known before the first run, and the rule that a larger scatter of one's own counts is inside it.
/// </remarks>
public sealed class NextSeries
{
    /// <summary>Share of 1 − γ that is spent: by simulation the false accept then stays within 1 − γ for every ν₀ (docs/explanation/how-often-a-verdict-is-wrong.md).</summary>
    /// <remarks>What is kept back pays for the doubt of ν₀, which the sum over possible populations settles only on the average over ν₀; it shrinks with more series.</remarks>
    public static double Spent(int series) => 0.92 - 0.7 / series;

    /// <summary>The longest series; by then a tool's own scatter says all.</summary>
    public const int MostRuns = 200;

    private const double Negligible = 1e-6;
    private const double FarthestScore = 8.5; // Φ(8.5) is 1 in double precision
    private const double LargestFactor = 1e6;

    private readonly double _root;
    private readonly double _spent;
    private readonly double[] _ratios; // max(s, s̃)/σ
    private readonly double[] _weights;

    /// <param name="population">What the earlier series say.</param>
    /// <param name="runs">Planned runs, 2 to <see cref="MostRuns"/>.</param>
    public NextSeries(ScatterPopulation population, int runs)
    {
        ArgumentNullException.ThrowIfNull(population);
        if (runs is < 2 or > MostRuns)
            throw new ArgumentOutOfRangeException(nameof(runs), runs, $"A moderated series has 2 to {MostRuns} runs.");
        Runs = runs;
        _root = Math.Sqrt(runs);
        _spent = Spent(population.Series);
        (_ratios, _weights) = Pairs(population, runs - 1);
    }

    public int Runs { get; }

    /// <summary>k in units of the larger of own and moderated scatter.</summary>
    /// <param name="coverage">The share β, above 0 and below 1.</param>
    /// <param name="confidence">γ, above 0 and below 1.</param>
    public double Factor(double coverage, double confidence)
    {
        var z = Normal.Quantile(Probability.Inside(coverage));
        var spent = _spent * (1 - Probability.Inside(confidence));
        return RisingRoot.Find(k =>
        {
            var (accept, perFactor, _) = Accept(k, z);
            return (Math.Log(spent / accept), perFactor / accept); // the logarithm bends less
        }, z + Normal.TailQuantile(spent) / _root, -LargestFactor, LargestFactor);
    }

    /// <summary>The share shown by a mean that lies <paramref name="distance"/> inside; the inverse of <see cref="Factor"/>.</summary>
    /// <param name="distance">In units of the larger of own and moderated scatter.</param>
    /// <param name="confidence">γ, above 0 and below 1.</param>
    public double ShareAtLeast(double distance, double confidence)
    {
        if (double.IsNaN(distance))
            throw new ArgumentOutOfRangeException(nameof(distance), distance, "A distance in standard deviations is wanted.");
        var spent = _spent * (1 - Probability.Inside(confidence));
        if (Accept(distance, FarthestScore).Share <= spent)
            return 1;
        if (Accept(distance, -FarthestScore).Share >= spent)
            return 0;
        return Normal.Cdf(RisingRoot.Find(z =>
        {
            var (accept, _, perScore) = Accept(distance, z);
            return (accept - spent, perScore);
        }, 0, -FarthestScore, FarthestScore));
    }

    /// <summary>How often a tool whose share is just that of score <paramref name="z"/> is accepted with factor <paramref name="k"/>; its fall per unit of k, its rise per unit of z.</summary>
    private (double Share, double FallPerFactor, double RisePerScore) Accept(double k, double z)
    {
        double share = 0, fall = 0, rise = 0;
        for (var i = 0; i < _ratios.Length; i++)
        {
            var (cdf, density) = Normal.Both(_root * (z - k * _ratios[i]));
            share += _weights[i] * cdf;
            rise += _weights[i] * density * _root;
            fall += _weights[i] * density * _root * _ratios[i];
        }

        return (share, fall, rise);
    }

    private static (double[] Ratios, double[] Weights) Pairs(ScatterPopulation population, int df)
    {
        var h = population.Step;
        var logs = population.Logs;
        var prior = population.Weights;
        var (down, up) = (Steps(df, -h), Steps(df, h));
        var likelihood = new double[down + up + 1];
        for (var d = 0; d < likelihood.Length; d++)
            likelihood[d] = Math.Exp(Likelihood.Log(df, (d - down) * h));
        var precisions = new double[logs.Length]; // 1/σ, in units of the first
        for (var j = 0; j < precisions.Length; j++)
            precisions[j] = Math.Exp(logs[0] - logs[j]);
        var stride = Math.Max(1, (int)(0.8 / Math.Sqrt(2 * df) / h)); // s needs no finer grid than its own width
        List<double> ratios = [], weights = [];
        for (var i = -down; i < logs.Length + up; i += stride) // ln s
        {
            int first = Math.Max(0, i - up), last = Math.Min(logs.Length - 1, i + down);
            double sum = 0, square = 0;
            for (var j = first; j <= last; j++)
            {
                var weight = prior[j] * likelihood[i - j + down];
                sum += weight;
                square += weight * precisions[j] * precisions[j];
            }

            if (sum < Negligible)
                continue;
            var used = Math.Max(Math.Sqrt(sum / square), Math.Exp(i * h));
            for (var j = first; j <= last; j++)
            {
                var weight = prior[j] * likelihood[i - j + down];
                if (weight < 0.02 * Negligible * stride)
                    continue;
                ratios.Add(used * precisions[j]);
                weights.Add(weight);
            }
        }

        var all = weights.Sum();
        return ([.. ratios], [.. weights.Select(w => w / all)]);
    }

    private static int Steps(int df, double h)
    {
        var count = 1;
        while (Likelihood.Log(df, count * h) > Math.Log(Negligible))
            count++;
        return count;
    }
}
