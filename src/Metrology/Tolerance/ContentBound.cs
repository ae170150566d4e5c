using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Tolerance;

/// <summary>What a sample shows of the share of the population on the right side of a limit: exact confidence bounds.</summary>
/// <remarks>
/// With T = √n·(mean − limit)/s noncentral t of δ = √n·z, z the normal score of the share, a bound on δ is a bound on the share.
/// The lower bound is the inverse of <see cref="ToleranceFactor.OneSided"/>: it reaches the coverage exactly when the distance reaches the factor.
/// </remarks>
public static class ContentBound
{
    private const double FarthestScore = 8.5; // Φ(8.5) is 1 in double precision

    /// <summary>With the given confidence at least this share lies on the right side.</summary>
    /// <param name="distance">Distance of the mean from the limit in standard deviations s; positive when the mean is on the right side.</param>
    /// <param name="n">Readings behind the mean, 2 to 1,000,000.</param>
    /// <param name="confidence">Above 0 and below 1.</param>
    /// <param name="df">Degrees of freedom of s when they are not n − 1.</param>
    public static double AtLeast(double distance, int n, double confidence, double? df = null) => Share(distance, n, confidence, df);

    /// <summary>With the given confidence at most this share lies on the right side.</summary>
    /// <inheritdoc cref="AtLeast" path="/param"/>
    public static double AtMost(double distance, int n, double confidence, double? df = null) => Share(distance, n, 1 - Probability.Inside(confidence), df);

    private static double Share(double distance, int n, double p, double? df)
    {
        Sample.Check(n, p, df);
        if (double.IsNaN(distance))
            throw new ArgumentOutOfRangeException(nameof(distance), distance, "A distance in standard deviations is wanted.");
        var root = Math.Sqrt(n);
        var t = Math.Clamp(distance, -1e12, 1e12) * root;
        return Normal.Cdf(NoncentralT.NoncentralityFor(p, t, df ?? n - 1, FarthestScore * root) / root);
    }
}
