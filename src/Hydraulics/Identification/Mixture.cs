using Ramwright.Metrology.Distributions;

namespace Ramwright.Hydraulics.Identification;

/// <summary>A figure under several hypotheses: normal laws by weight. Of logarithms where the figure is positive by nature.</summary>
internal sealed class Mixture
{
    private readonly (double Weight, double Mean, double Deviation)[] _parts;

    /// <param name="parts">Weights need not sum to 1; deviations above 0.</param>
    public Mixture(IEnumerable<(double Weight, double Mean, double Deviation)> parts)
    {
        _parts = [.. parts];
        var sum = _parts.Sum(p => p.Weight);
        for (var i = 0; i < _parts.Length; i++)
            _parts[i].Weight /= sum;
    }

    public static Mixture Of(double mean, double deviation) => new([(1, mean, deviation)]);

    /// <summary>Probability that the figure is below a value.</summary>
    public double Below(double value)
    {
        var sum = 0.0;
        foreach (var (weight, mean, deviation) in _parts)
            sum += weight * Normal.Cdf((value - mean) / deviation);
        return sum;
    }

    /// <summary>Probability that it is above.</summary>
    public double Above(double value) => 1 - Below(value);

    /// <summary>Takes into account what is usual: most tools lie close to a value, the others anywhere. Sharp laws hardly change.</summary>
    /// <param name="usual">The usual value.</param>
    /// <param name="deviation">How far tools lie from it.</param>
    /// <param name="share">Share of tools that are usual.</param>
    /// <param name="range">Width over which the others lie.</param>
    public Mixture Given(double usual, double deviation, double share, double range) => new(_parts.SelectMany(p =>
    {
        var variance = p.Deviation * p.Deviation + deviation * deviation;
        var near = p.Weight * share * Normal.Density((p.Mean - usual) / Math.Sqrt(variance)) / Math.Sqrt(variance);
        var mean = (p.Mean * deviation * deviation + usual * p.Deviation * p.Deviation) / variance;
        return new[] { (near + 1e-300, mean, p.Deviation * deviation / Math.Sqrt(variance)), (p.Weight * (1 - share) / range, p.Mean, p.Deviation) };
    }));

    /// <summary>The value below which this share lies, by bisection.</summary>
    public double Quantile(double share)
    {
        var low = _parts.Min(p => p.Mean - 9 * p.Deviation);
        var high = _parts.Max(p => p.Mean + 9 * p.Deviation);
        for (var i = 0; i < 80; i++)
        {
            var middle = 0.5 * (low + high);
            (low, high) = Below(middle) < share ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }
}
