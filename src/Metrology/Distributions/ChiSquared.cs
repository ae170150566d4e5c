namespace Ramwright.Metrology.Distributions;

/// <summary>The χ² distribution with any positive number of degrees of freedom.</summary>
public static class ChiSquared
{
    /// <summary>Share below <paramref name="x"/>, zero or more.</summary>
    public static double Cdf(double x, double df) => GammaFunction.Lower(0.5 * df, 0.5 * x);

    /// <summary>Share above <paramref name="x"/>, without cancellation.</summary>
    public static double Tail(double x, double df) => GammaFunction.Upper(0.5 * df, 0.5 * x);

    /// <summary>Density at <paramref name="x"/>, above zero.</summary>
    public static double Density(double x, double df) => GammaFunction.Term(0.5 * df, 0.5 * x) / x;

    /// <summary>x with <paramref name="p"/> of the distribution below it.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <param name="df">Degrees of freedom, above zero.</param>
    /// <remarks>Newton in ln x, kept in a bracket, from the cube-root approximation of Wilson and Hilferty (1931).</remarks>
    public static double Quantile(double p, double df)
    {
        Probability.Inside(p, nameof(p));
        var cube = 1 - 2 / (9 * df) + Normal.Quantile(p) * Math.Sqrt(2 / (9 * df));
        var start = cube > 0.1 ? df * cube * cube * cube : 2 * Math.Exp((Math.Log(p) + GammaFunction.Log(0.5 * df + 1)) / (0.5 * df));
        return Math.Exp(RisingRoot.Find(y =>
        {
            var x = Math.Exp(y);
            var miss = p < 0.5 ? Cdf(x, df) - p : 1 - p - Tail(x, df);
            return (miss, Density(x, df) * x);
        }, Math.Log(start)));
    }
}
