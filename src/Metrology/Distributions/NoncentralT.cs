namespace Ramwright.Metrology.Distributions;

/// <summary>The noncentral t distribution: (Z + δ)/(χ_ν/√ν) with Z standard normal.</summary>
/// <remarks>P(T ≤ t) = E[Φ(t·s/σ − δ)] over the distribution of s/σ: Johnson, Kotz &amp; Balakrishnan, Continuous Univariate Distributions 2, ch. 31.</remarks>
public static class NoncentralT
{
    /// <summary>P(T ≤ t); absolute error about 1e-14.</summary>
    /// <param name="t">Any finite value.</param>
    /// <param name="df">ν, degrees of freedom, 0.5 to 1e7.</param>
    /// <param name="delta">δ, the noncentrality, up to ± 1e5.</param>
    public static double Cdf(double t, double df, double delta)
    {
        if (!(Math.Abs(delta) <= 1e5))
            throw new ArgumentOutOfRangeException(nameof(delta), delta, "The noncentrality is a number within ± 1e5.");
        return OnGrid(new(df, delta), t, delta).Cdf;
    }

    /// <summary>t with P(T ≤ t) = <paramref name="p"/>, above 0 and below 1.</summary>
    public static double Quantile(double p, double df, double delta)
    {
        Probability.Inside(p);
        var grid = new ScatterGrid(df, delta);
        var z = Normal.Quantile(p);
        var spread = Math.Sqrt(1 + delta * delta / (2 * df));
        return RisingRoot.Find(t =>
        {
            var (cdf, density, _) = OnGrid(grid, t, delta);
            return (cdf - p, density);
        }, delta + z * spread);
    }

    /// <summary>δ with P(T ≤ t; δ) = <paramref name="p"/>: the confidence bound on δ after t was seen. Held within ± <paramref name="most"/>.</summary>
    public static double NoncentralityFor(double p, double t, double df, double most)
    {
        Probability.Inside(p);
        var grid = new ScatterGrid(df, most);
        if (OnGrid(grid, t, most).Cdf >= p)
            return most;
        if (OnGrid(grid, t, -most).Cdf <= p)
            return -most;
        var start = Math.Clamp(t - Normal.Quantile(p) * Math.Sqrt(1 + t * t / (2 * df)), -0.9 * most, 0.9 * most);
        return RisingRoot.Find(delta =>
        {
            var (cdf, _, slope) = OnGrid(grid, t, delta);
            return (p - cdf, slope);
        }, start, -most, most);
    }

    /// <summary>P(T ≤ t), its slope in t, and its fall per unit of δ.</summary>
    private static (double Cdf, double Density, double FallPerDelta) OnGrid(ScatterGrid grid, double t, double delta)
    {
        var ratios = grid.Ratios;
        var weights = grid.Weights;
        double cdf = 0, density = 0, fall = 0;
        for (var i = 0; i < ratios.Length; i++)
        {
            var x = t * ratios[i] - delta;
            if (x < -39)
                continue;
            var (share, height) = Normal.Both(x);
            cdf += weights[i] * share;
            var phi = weights[i] * height;
            density += phi * ratios[i];
            fall += phi;
        }

        return (cdf, density, fall);
    }
}
