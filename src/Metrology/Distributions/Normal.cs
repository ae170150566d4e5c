namespace Ramwright.Metrology.Distributions;

/// <summary>The standard normal distribution, to full double accuracy in both tails.</summary>
public static class Normal
{
    private const double InverseRootTwoPi = 0.39894228040143267794;

    // Chebyshev coefficients of e^(z²)·erfc(z)/t over t = 2/(2+z), 0 to 1, computed for this file in 160-digit arithmetic; the first one left out is 4e-17.
    private static ReadOnlySpan<double> Scaled =>
    [
        5.77033738616469671356e-01, 3.55436921270498473735e-01, 6.50951588287865257065e-02, 3.67114239583663914263e-03,
        -1.11284474335263247266e-03, -1.60758299153780789218e-04, 3.27803157417313727477e-05, 5.44244164550501624371e-06,
        -1.51546655531714824746e-06, -1.42976081811698648843e-07, 8.23460882741949311645e-08, -1.29628468523065629367e-09,
        -4.15472163101519868590e-09, 6.34705827836281124091e-10, 1.43208227122562246148e-10, -6.16039010520458509727e-11,
        2.06121385547216978196e-12, 3.57149314884770424925e-12, -8.58642284325179604971e-13, -6.14560021379063011635e-14,
        7.41872574859661665646e-14, -1.28950427550323252399e-14, -2.35872638571063216370e-15, 1.57293493816859117210e-15,
        -2.27829662395464647363e-16, -6.31233045075643032013e-17,
    ];

    /// <summary>φ(x) = e^(−x²/2)/√(2π).</summary>
    public static double Density(double x) => InverseRootTwoPi * ExpOfHalfSquare(x);

    /// <summary>Φ(x), the share below <paramref name="x"/>; relative error a few units of the last place, down to 1e-300.</summary>
    public static double Cdf(double x) => x > 0 ? 1 - HalfErfc(x) : HalfErfc(-x);

    /// <summary>1 − Φ(x), the share above <paramref name="x"/>, without cancellation.</summary>
    public static double Tail(double x) => Cdf(-x);

    /// <summary>Φ(x) and φ(x) together, for the price of one.</summary>
    internal static (double Cdf, double Density) Both(double x)
    {
        var exp = ExpOfHalfSquare(x);
        var tail = 0.5 * ScaledErfc(Math.Abs(x)) * exp;
        return (x > 0 ? 1 - tail : tail, InverseRootTwoPi * exp);
    }

    /// <summary>z with Φ(z) = p.</summary>
    /// <param name="p">0 to 1; the ends give −∞ and +∞.</param>
    /// <remarks>Start: Abramowitz &amp; Stegun 26.2.23 (error 4.5e-4); then Halley's step, whose error is cubed each time.</remarks>
    public static double Quantile(double p)
    {
        if (p is not (>= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(p), p, "A probability is 0 to 1.");
        if (p > 0.5)
            return -Quantile(1 - p); // 1 − p is exact here
        if (p == 0)
            return double.NegativeInfinity;
        var t = Math.Sqrt(-2 * Math.Log(p));
        var z = -(t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))));
        for (var step = 0; step < 3; step++)
        {
            var error = (Cdf(z) - p) / Density(z);
            z -= error / (1 + 0.5 * z * error);
        }

        return z;
    }

    /// <summary>z with 1 − Φ(z) = q; exact for small q, where 1 − q would round.</summary>
    public static double TailQuantile(double q) => -Quantile(q);

    private static double HalfErfc(double x) => 0.5 * ScaledErfc(x) * ExpOfHalfSquare(x); // x ≥ 0: ½·erfc(x/√2)

    private static double ScaledErfc(double x)
    {
        var z = x * 0.70710678118654752440;
        var t = 2 / (2 + z);
        var c = Scaled;
        var twice = 2 * (2 * t - 1);
        double b1 = 0, b2 = 0;
        for (var k = c.Length - 1; k > 0; k--) // Clenshaw's recurrence
            (b1, b2) = (twice * b1 - b2 + c[k], b1);
        return t * (0.5 * twice * b1 - b2 + c[0]);
    }

    private static double ExpOfHalfSquare(double x) // e^(−x²/2) with x² split, so that its rounding does not grow with x
    {
        if (Math.Abs(x) > 40)
            return 0;
        var head = Math.Round(x * 16) / 16;
        return Math.Exp(-0.5 * head * head) * Math.Exp(-0.5 * (x - head) * (x + head));
    }
}
