namespace Ramwright.Metrology.Distributions;

/// <summary>Student's t distribution with any positive number of degrees of freedom.</summary>
public static class StudentT
{
    /// <summary>Share above <paramref name="t"/>, without cancellation.</summary>
    public static double Tail(double t, double df)
    {
        if (t < 0)
            return 1 - Tail(-t, df);
        var square = t * t;
        return double.IsPositiveInfinity(square) ? 0 : 0.5 * BetaFunction.Regularised(0.5 * df, 0.5, df / (df + square), square / (df + square));
    }

    /// <summary>Share below <paramref name="t"/>.</summary>
    public static double Cdf(double t, double df) => Tail(-t, df);

    public static double Density(double t, double df) => Math.Exp(
        GammaFunction.Log(0.5 * (df + 1)) - GammaFunction.Log(0.5 * df) - 0.5 * Math.Log(df * Math.PI) - 0.5 * (df + 1) * Math.Log(1 + t * t / df));

    /// <summary>t with <paramref name="q"/> of the distribution above it; q above 0 and below 1.</summary>
    /// <remarks>Newton in asinh t, which tames the heavy tail of few degrees of freedom.</remarks>
    public static double TailQuantile(double q, double df)
    {
        Probability.Inside(q);
        if (q > 0.5)
            return -TailQuantile(1 - q, df);
        if (q == 0.5)
            return 0;
        return Math.Sinh(RisingRoot.Find(y =>
        {
            var t = Math.Sinh(y);
            return (Math.Log(q / Tail(t, df)), Density(t, df) * Math.Cosh(y) / Tail(t, df));
        }, Math.Asinh(Normal.TailQuantile(q)), low: 0));
    }
}
