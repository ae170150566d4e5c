namespace Ramwright.Metrology.Distributions;

/// <summary>ln Γ and the regularised incomplete gamma functions.</summary>
public static class GammaFunction
{
    private const double HalfLogTwoPi = 0.91893853320467274178;

    /// <summary>ln Γ(a) for a &gt; 0; absolute error about 1e-15, relative beyond a = 3.</summary>
    /// <remarks>Stirling's series, DLMF 5.11.1, after moving a to 10 or more by Γ(a+1) = a·Γ(a).</remarks>
    public static double Log(double a)
    {
        if (!(a > 0))
            throw new ArgumentOutOfRangeException(nameof(a), a, "ln Γ is taken of a positive number.");
        var product = 1.0;
        while (a < 10)
            product *= a++;
        return (a - 0.5) * Math.Log(a) - a + HalfLogTwoPi + StirlingRest(a) - Math.Log(product);
    }

    /// <summary>P(a, x): the share below <paramref name="x"/> of a gamma variable of shape <paramref name="a"/>.</summary>
    public static double Lower(double a, double x) => x < a + 1 ? Series(a, x) : 1 - Fraction(a, x);

    /// <summary>Q(a, x) = 1 − P(a, x), without cancellation.</summary>
    public static double Upper(double a, double x) => x < a + 1 ? 1 - Series(a, x) : Fraction(a, x);

    /// <summary>x^a·e^(−x)/Γ(a), without overflow or loss of digits at large a.</summary>
    /// <remarks>Written by deviance as C. Loader, "Fast and accurate computation of binomial probabilities" (2000), does for a whole number.</remarks>
    internal static double Term(double a, double x)
    {
        if (x <= 0)
            return 0;
        if (a < 10)
            return Math.Exp(a * Math.Log(x) - x - Log(a));
        return Math.Sqrt(a) * Math.Exp(a * LogMinusLinear((x - a) / a) - StirlingRest(a) - HalfLogTwoPi);
    }

    /// <summary>ln Γ(a + b) − ln Γ(a), without the loss of digits that the difference of two large logarithms brings.</summary>
    internal static double LogRise(double a, double b) => a < 10 || b < 0
        ? Log(a + b) - Log(a)
        : (a - 0.5) * LogOnePlus(b / a) + b * Math.Log(a + b) - b + StirlingRest(a + b) - StirlingRest(a);

    /// <summary>ln(1 + d), exact for small d.</summary>
    internal static double LogOnePlus(double d) => LogMinusLinear(d) + d;

    /// <summary>ln Γ(a) − [(a − ½)·ln a − a + ½·ln 2π] for a ≥ 10.</summary>
    private static double StirlingRest(double a)
    {
        var q = 1 / (a * a);
        return (1.0 / 12 - q * (1.0 / 360 - q * (1.0 / 1260 - q * (1.0 / 1680 - q * (1.0 / 1188 - q * (691.0 / 360360 - q / 156)))))) / a;
    }

    private static double LogMinusLinear(double d) // ln(1+d) − d
    {
        if (Math.Abs(d) > 0.1)
            return Math.Log(1 + d) - d;
        double sum = 0, power = -d * d;
        for (var k = 2; k < 40 && Math.Abs(power) > 1e-18 * Math.Abs(sum) * k; k++, power *= -d)
            sum += power / k;
        return sum;
    }

    private static double Series(double a, double x) // DLMF 8.11.4, for x < a + 1
    {
        if (x <= 0)
            return 0;
        double term = 1 / a, sum = term;
        for (var k = 1; k < 100_000 && term > 1e-17 * sum; k++)
            sum += term *= x / (a + k);
        return Math.Min(1, sum * Term(a, x));
    }

    private static double Fraction(double a, double x) // DLMF 8.9.2 by Lentz's method, for x ≥ a + 1
    {
        if (double.IsPositiveInfinity(x))
            return 0;
        const double Tiny = 1e-300;
        var b = x + 1 - a;
        double c = 1 / Tiny, d = 1 / b, h = d;
        for (var k = 1; k < 100_000; k++)
        {
            var an = -k * (k - a);
            b += 2;
            d = an * d + b;
            d = 1 / (Math.Abs(d) < Tiny ? Tiny : d);
            c = b + an / c;
            c = Math.Abs(c) < Tiny ? Tiny : c;
            var factor = c * d;
            h *= factor;
            if (Math.Abs(factor - 1) < 2e-16)
                break;
        }

        return h * Term(a, x);
    }
}
