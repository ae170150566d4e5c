namespace Ramwright.Metrology.Distributions;

/// <summary>The regularised incomplete beta function.</summary>
public static class BetaFunction
{
    /// <summary>I_x(a, b): the share below <paramref name="x"/> of a beta variable; a, b &gt; 0, x 0 to 1.</summary>
    /// <param name="complement">1 − x, given apart because it may hold digits that 1 − x has lost.</param>
    /// <remarks>Continued fraction DLMF 8.17.22 by Lentz's method, with the symmetry 8.17.4 where it converges faster.</remarks>
    public static double Regularised(double a, double b, double x, double complement)
    {
        if (x <= 0)
            return 0;
        if (complement <= 0)
            return 1;
        var logX = x > 0.5 ? GammaFunction.LogOnePlus(-complement) : Math.Log(x);
        var logComplement = x > 0.5 ? Math.Log(complement) : GammaFunction.LogOnePlus(-x);
        var (large, small) = a > b ? (a, b) : (b, a);
        var front = Math.Exp(a * logX + b * logComplement + GammaFunction.LogRise(large, small) - GammaFunction.Log(small));
        return x < (a + 1) / (a + b + 2)
            ? front * Fraction(a, b, x) / a
            : 1 - front * Fraction(b, a, complement) / b;
    }

    private static double Fraction(double a, double b, double x)
    {
        const double Tiny = 1e-300;
        static double Safe(double v) => Math.Abs(v) < Tiny ? Tiny : v;
        double c = 1, d = 1 / Safe(1 - (a + b) * x / (a + 1)), h = d;
        for (var m = 1; m < 100_000; m++)
        {
            var even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
            d = 1 / Safe(1 + even * d);
            c = Safe(1 + even / c);
            h *= c * d;
            var odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
            d = 1 / Safe(1 + odd * d);
            c = Safe(1 + odd / c);
            var factor = c * d;
            h *= factor;
            if (Math.Abs(factor - 1) < 2e-16)
                break;
        }

        return h;
    }
}
