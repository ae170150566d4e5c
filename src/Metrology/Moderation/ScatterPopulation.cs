using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Moderation;

/// <summary>What earlier series of a model say about the scatter σ of the next tool, before its first run.</summary>
/// <remarks>
/// A grid in ln σ that carries the mean, over the populations left possible, of the density of ln σ. All that follows are sums over it:
/// the moderated scatter, and by <see cref="NextSeries"/> the factor.
/// </remarks>
public sealed class ScatterPopulation
{
    /// <summary>Fewer earlier series say too little about how alike tools are.</summary>
    public const int FewestSeries = 8;

    private const double FinestStep = 0.05;   // in ln σ; the sharpest population, ν₀ = 310, is 0.04 wide and its scale is never known exactly
    private const double CoarsestStep = 0.08;
    private const double Negligible = 1e-6;
    private const double WidestLog = 12; // a factor of 160,000 either side

    private readonly double[] _logs;
    private readonly double[] _precisions; // 1/σ²
    private readonly double[] _weights;

    /// <param name="earlier">Eight or more series of other tools of the model, all that there are; leaving some out spoils the claim.</param>
    public ScatterPopulation(ReadOnlySpan<SeriesScatter> earlier)
    {
        if (earlier.Length < FewestSeries)
            throw new ArgumentException($"{earlier.Length} earlier series; {FewestSeries} or more are wanted.", nameof(earlier));
        Series = earlier.Length;
        var possible = PopulationPosterior.Of(earlier);
        double low = double.MaxValue, high = double.MinValue, all = 0, logScale = 0;
        foreach (var p in possible)
        {
            low = Math.Min(low, p.LogScale - Reach(p, 1));
            high = Math.Max(high, p.LogScale + Reach(p, -1));
            all += p.Weight;
            logScale += p.Weight * p.LogScale;
        }

        Step = Math.Clamp(1 / Math.Sqrt(2 * possible.Max(p => p.AlikeDegrees)), FinestStep, CoarsestStep);
        TypicalDeviation = Math.Exp(logScale / all);
        AlikeDegrees = MiddleOf(possible, all);
        _logs = new double[(int)Math.Ceiling((high - low) / Step) + 1];
        _weights = new double[_logs.Length];
        _precisions = new double[_logs.Length];
        for (var j = 0; j < _logs.Length; j++)
        {
            _logs[j] = low + j * Step;
            _precisions[j] = Math.Exp(-2 * _logs[j]);
        }

        foreach (var p in possible)
            Add(p, low);
        var sum = _weights.Sum();
        for (var j = 0; j < _weights.Length; j++)
            _weights[j] /= sum;
    }

    /// <summary>How many earlier series there were.</summary>
    public int Series { get; }

    /// <summary>s₀, the scatter of a typical tool of the model; the unit of the earlier series, SI.</summary>
    public double TypicalDeviation { get; }

    /// <summary>ν₀, the middle of what the earlier series leave possible, in degrees of freedom: about 10 when tools differ much, 60 and more when they scatter alike.</summary>
    public double AlikeDegrees { get; }

    /// <summary>Of the grid, in ln σ.</summary>
    internal double Step { get; }

    internal ReadOnlySpan<double> Logs => _logs;

    internal ReadOnlySpan<double> Weights => _weights;

    /// <summary>The moderated scatter of a tool whose own series shows <paramref name="own"/>: 1/√(mean of 1/σ²) given both; the unit of the earlier series, SI.</summary>
    /// <remarks>With s₀ and ν₀ known it is √((ν₀s₀² + νs²)/(ν₀ + ν)), as in Smyth's paper.</remarks>
    public double Moderate(SeriesScatter own)
    {
        double sum = 0, precision = 0, square = own.Deviation * own.Deviation, best = Best(own);
        for (var j = 0; j < _logs.Length; j++)
        {
            var weight = _weights[j] * Math.Exp(Agreement(own, square, j) - best);
            sum += weight;
            precision += weight * _precisions[j];
        }

        return Math.Sqrt(sum / precision);
    }

    /// <summary>What the earlier series and its own leave possible of a tool's σ: values in the unit of the earlier series, with weights that sum to 1.</summary>
    public (double Deviation, double Weight)[] Possible(SeriesScatter own)
    {
        double sum = 0, square = own.Deviation * own.Deviation, best = Best(own);
        var possible = new (double Deviation, double Weight)[_logs.Length];
        for (var j = 0; j < possible.Length; j++)
        {
            possible[j] = (Math.Exp(_logs[j]), _weights[j] * Math.Exp(Agreement(own, square, j) - best));
            sum += possible[j].Weight;
        }

        for (var j = 0; j < possible.Length; j++)
            possible[j].Weight /= sum;
        return possible;
    }

    /// <summary>The logarithm of the likelihood of σ at a node, up to what is the same for all.</summary>
    private double Agreement(SeriesScatter own, double square, int j) => -own.DegreesOfFreedom * (_logs[j] + 0.5 * square * _precisions[j]);

    private double Best(SeriesScatter own)
    {
        double best = double.NegativeInfinity, square = own.Deviation * own.Deviation;
        for (var j = 0; j < _logs.Length; j++)
            best = Math.Max(best, Agreement(own, square, j));
        return best;
    }

    private void Add(PossiblePopulation p, double low)
    {
        // v = ln(s₀/σ) is half the logarithm of χ²/ν₀: density 2·f(ν₀/2)·e^(…), f the gamma density's front
        var front = 2 * p.Weight * GammaFunction.Term(0.5 * p.AlikeDegrees, 0.5 * p.AlikeDegrees);
        var first = Math.Max(0, (int)((p.LogScale - Reach(p, 1) - low) / Step));
        var last = Math.Min(_logs.Length - 1, (int)((p.LogScale + Reach(p, -1) - low) / Step) + 1);
        for (var j = first; j <= last; j++)
            _weights[j] += front * Math.Exp(Likelihood.Log(p.AlikeDegrees, p.LogScale - _logs[j]));
    }

    /// <summary>How far in ln σ a population reaches below (+1) or above (−1) its scale before it counts for nothing.</summary>
    private static double Reach(PossiblePopulation p, int sign)
    {
        var floor = Math.Log(Negligible / p.Weight);
        var reach = 0.0;
        while (reach < WidestLog && Likelihood.Log(p.AlikeDegrees, sign * reach) > floor)
            reach += 0.1;
        return reach;
    }

    private static double MiddleOf(IReadOnlyList<PossiblePopulation> possible, double all)
    {
        var below = 0.0;
        foreach (var p in possible.OrderBy(p => p.AlikeDegrees))
        {
            below += p.Weight;
            if (below >= 0.5 * all)
                return p.AlikeDegrees;
        }

        return possible[^1].AlikeDegrees;
    }
}

/// <summary>The density of y = ln(s/σ) for ν degrees of freedom, up to its front factor: 0 at y = 0, its largest value.</summary>
internal static class Likelihood
{
    public static double Log(double df, double y) => df * (y - 0.5 * (Math.Exp(2 * y) - 1));
}
