using System.Collections.Immutable;
using Ramwright.Metrology.Distributions;

namespace Ramwright.Diagnosis.Measurements;

/// <summary>How a measured value is spread: around some centres, each with scatter, and a small share anywhere, for slips.</summary>
/// <param name="Centres">One for each severity, all alike likely; the value's own unit.</param>
/// <param name="Share">Scatter as a share of the centre, a standard deviation.</param>
/// <param name="Fixed">Scatter whatever the centre, a standard deviation in the value's unit.</param>
internal sealed record ReadingSpread(ImmutableArray<double> Centres, double Share, double Fixed)
{
    private const double Slips = 0.02;

    /// <summary>Median of the centres.</summary>
    public double Middle => Centres.Order().ElementAt(Centres.Length / 2);

    /// <summary>Scatter around a value, one standard deviation.</summary>
    public double Scatter(double value) => Math.Sqrt(Share * value * (Share * value) + Fixed * Fixed);

    /// <summary>P(value ≤ y). Slips are spread evenly in log-odds of y over the middle: never 0, never 1.</summary>
    /// <param name="y">In the value's unit.</param>
    /// <param name="scale">What a slip is measured by, above 0, in the value's unit.</param>
    public double UpTo(double y, double scale)
    {
        var sum = 0.0;
        foreach (var centre in Centres)
            sum += Normal.Cdf((y - centre) / Scatter(centre));
        return (1 - Slips) * sum / Centres.Length + Slips * (0.5 + Math.Atan(y / scale - 1) / Math.PI);
    }
}
