using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Tolerance;

/// <summary>Exact normal tolerance factors: how many standard deviations must lie between mean and limit.</summary>
/// <remarks>No approximation formula is used; both factors are roots of their defining equation, to about 12 digits.</remarks>
public static class ToleranceFactor
{
    /// <summary>k such that mean − k·s lies, with the given confidence, below at least the given share of the population (and mean + k·s above).</summary>
    /// <param name="n">Readings behind the mean, 2 to 1,000,000.</param>
    /// <param name="coverage">The share, above 0 and below 1.</param>
    /// <param name="confidence">Above 0 and below 1.</param>
    /// <param name="df">Degrees of freedom of s when they are not n − 1, as with a pooled standard deviation; 0.5 to 1e7.</param>
    /// <remarks>k = t′_γ(ν, √n·z_β)/√n with the noncentral t quantile; ISO 16269-6:2014, Annex on exact one-sided factors (clause from memory).</remarks>
    public static double OneSided(int n, double coverage, double confidence, double? df = null)
    {
        Sample.Check(n, coverage, confidence, df);
        var root = Math.Sqrt(n);
        return NoncentralT.Quantile(confidence, df ?? n - 1, root * Normal.Quantile(coverage)) / root;
    }

    /// <summary>k such that mean ∓ k·s holds, with the given confidence, at least the given share of the population.</summary>
    /// <inheritdoc cref="OneSided" path="/param"/>
    /// <remarks>Root of ∫ P(χ²_ν ≥ ν·r(x)²/k²) dΦ(√n·x) = γ with Φ(x + r) − Φ(x − r) = β: ISO 16269-6:2014, Annex F; integrated in <see cref="ContentIntegral"/>.</remarks>
    public static double TwoSided(int n, double coverage, double confidence, double? df = null)
    {
        Sample.Check(n, coverage, confidence, df);
        var integral = new ContentIntegral(n, coverage, df ?? n - 1);
        return Math.Exp(RisingRoot.Find(y =>
        {
            var (reached, slope) = integral.ConfidenceOf(Math.Exp(y));
            return (reached - confidence, slope);
        }, Math.Log(integral.Guess(confidence))));
    }
}
