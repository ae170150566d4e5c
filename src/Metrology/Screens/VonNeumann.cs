namespace Ramwright.Metrology.Screens;

/// <summary>What the von Neumann ratio says.</summary>
/// <param name="Ratio">Squared steps from reading to reading over squared distances from the mean; 2 on average when the order means nothing.</param>
/// <param name="PValue">Chance of a ratio as far out on either side with no order, 0 to 1; exact for normal readings.</param>
public sealed record VonNeumannResult(double Ratio, double PValue)
{
    /// <summary>Neighbours resemble each other (a wander or trend) rather than alternate.</summary>
    public bool NeighboursAlike => Ratio < 2;
}

/// <summary>The von Neumann ratio: do neighbours in the order taken resemble each other. It flags; it deletes nothing.</summary>
/// <remarks>
/// J. von Neumann, Ann. Math. Stat. 12 (1941) 367. The ratio stays below c when Σ(μₖ − c)·χ²₁ is negative, μₖ = 4 sin²(πk/2n), k = 1 to n − 1.
/// Its chance is J. P. Imhof's integral (Biometrika 48 (1961) 419). With u = e^t its integrand is analytic and dies away on both sides,
/// so the trapezoidal rule converges exponentially.
/// </remarks>
public static class VonNeumann
{
    /// <summary>The ratio and its chance, or null below four readings, above 1,000 and for equal ones.</summary>
    public static VonNeumannResult? Test(ReadOnlySpan<double> readings)
    {
        if (readings.Length is < 4 or > 1_000 || Ratio(readings) is not { } ratio)
            return null;
        var below = Cdf(ratio, readings.Length);
        return new(ratio, Math.Clamp(2 * Math.Min(below, 1 - below), 0, 1));
    }

    /// <summary>P(ratio ≤ c) for normal readings in no order; absolute error about 1e-12.</summary>
    /// <param name="c">Any number.</param>
    /// <param name="n">Readings, 4 to 1,000.</param>
    public static double Cdf(double c, int n)
    {
        if (n is < 4 or > 1_000)
            throw new ArgumentOutOfRangeException(nameof(n), n, "4 to 1,000 readings are wanted.");
        var weights = new double[n - 1];
        for (var k = 1; k < n; k++)
            weights[k - 1] = 4 * Math.Pow(Math.Sin(Math.PI * k / (2.0 * n)), 2) - c;
        if (weights[0] >= 0)
            return 0;
        return weights[^1] <= 0 ? 1 : Math.Clamp(0.5 - Integral(weights) / Math.PI, 0, 1);
    }

    internal static double? Ratio(ReadOnlySpan<double> readings)
    {
        var moments = Moments.Of(readings);
        if (!(moments.StandardDeviation > 0))
            return null;
        var steps = 0.0;
        for (var i = 1; i < readings.Length; i++)
            steps += (readings[i] - readings[i - 1]) * (readings[i] - readings[i - 1]);
        return steps / (moments.StandardDeviation * moments.StandardDeviation * (readings.Length - 1));
    }

    private static double Integral(double[] weights)
    {
        const double Step = 0.1;
        const double Straight = 1e-6; // for smaller u the integrand is ½·Σweights·u to the last digit, and the rest of the sum a geometric series
        var largest = Math.Max(-weights[0], weights[^1]);
        double sum = 0, fade = 1;
        for (var i = 0; fade > 1e-17; i++)
            sum += Integrand(weights, Math.Exp(i * Step), out fade);
        var u = 1.0;
        while (u * largest > Straight)
            sum += Integrand(weights, u *= Math.Exp(-Step), out _);
        return Step * (sum + 0.5 * weights.Sum() * u / (Math.Exp(Step) - 1));
    }

    /// <summary>sin θ/ρ; 1/ρ is the most it can be there and beyond.</summary>
    private static double Integrand(double[] weights, double u, out double fade)
    {
        var (angle, product, logs) = (0.0, 1.0, 0.0);
        foreach (var w in weights)
        {
            var x = w * u;
            angle += Math.Atan(x);
            product *= 1 + x * x;
            if (product > 1e200)
                (logs, product) = (logs + Math.Log(product), 1);
        }

        fade = Math.Exp(-0.25 * (logs + Math.Log(product)));
        return Math.Sin(0.5 * angle) * fade;
    }
}
