using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Screens;

/// <summary>What the Shapiro–Wilk test says.</summary>
/// <param name="W">1 for readings spaced as normal ones are on average; the statistic.</param>
/// <param name="PValue">Chance of a W as small from normal readings, 0 to 1; Royston's approximation.</param>
public sealed record ShapiroWilkResult(double W, double PValue);

/// <summary>The Shapiro–Wilk test: are the readings spread as normal ones. It flags; it deletes nothing.</summary>
/// <remarks>
/// S. S. Shapiro &amp; M. B. Wilk, Biometrika 52 (1965) 591; weights and chances by P. Royston, Applied Statistics 44 (1995) 547 (algorithm AS R94),
/// whose coefficients stand here from memory and are held by two published results.
/// </remarks>
public static class ShapiroWilk
{
    private static ReadOnlySpan<double> Last => [0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056];
    private static ReadOnlySpan<double> NextToLast => [0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633];

    /// <summary>The statistic and its chance, or null below three readings, above 5,000 and for equal ones.</summary>
    public static ShapiroWilkResult? Test(ReadOnlySpan<double> readings) =>
        readings.Length is < 3 or > 5_000 || Statistic(readings, Weights(readings.Length)) is not { } w ? null : new(w, PValue(w, readings.Length));

    /// <summary>W of the readings in any order, null for equal ones.</summary>
    internal static double? Statistic(ReadOnlySpan<double> readings, ReadOnlySpan<double> weights)
    {
        var sorted = readings.ToArray();
        Array.Sort(sorted);
        var moments = Moments.Of(sorted);
        if (!(moments.StandardDeviation > 0))
            return null;
        var sum = 0.0;
        for (var i = 0; i < sorted.Length; i++)
            sum += weights[i] * (sorted[i] - moments.Mean);
        return Math.Min(1, sum * sum / (moments.StandardDeviation * moments.StandardDeviation * (sorted.Length - 1)));
    }

    /// <summary>Weights of the readings in rising order.</summary>
    internal static double[] Weights(int n)
    {
        if (n == 3)
            return [-Math.Sqrt(0.5), 0, Math.Sqrt(0.5)];
        var scores = new double[n];
        var squares = 0.0;
        for (var i = 0; i < n; i++)
        {
            scores[i] = Normal.Quantile((i + 1 - 0.375) / (n + 0.25));
            squares += scores[i] * scores[i];
        }

        var root = 1 / Math.Sqrt(n);
        var weights = new double[n];
        var ends = n > 5 ? 2 : 1;
        double known = 1, rest = squares;
        for (var i = 0; i < ends; i++)
        {
            var weight = scores[n - 1 - i] / Math.Sqrt(squares) + Polynomial(i == 0 ? Last : NextToLast, root);
            (weights[n - 1 - i], weights[i]) = (weight, -weight);
            known -= 2 * weight * weight;
            rest -= 2 * scores[i] * scores[i];
        }

        for (var i = ends; i < n - ends; i++)
            weights[i] = scores[i] / Math.Sqrt(rest / known);
        return weights;
    }

    private static double PValue(double w, int n)
    {
        if (n == 3)
            return Math.Clamp(6 / Math.PI * (Math.Asin(Math.Sqrt(w)) - Math.Asin(Math.Sqrt(0.75))), 0, 1);
        var y = Math.Log(1 - w);
        var log = Math.Log(n);
        if (n > 11)
            return Normal.Tail((y - Polynomial([-1.5861, -0.31082, -0.083751, 0.0038915], log)) / Math.Exp(Polynomial([-0.4803, -0.082676, 0.0030302], log)));
        var gamma = -2.273 + 0.459 * n;
        if (y >= gamma)
            return 0;
        return Normal.Tail((-Math.Log(gamma - y) - Polynomial([0.544, -0.39978, 0.025054, -6.714e-4], n)) / Math.Exp(Polynomial([1.3822, -0.77857, 0.062767, -0.0020322], n)));
    }

    private static double Polynomial(ReadOnlySpan<double> c, double x)
    {
        var sum = 0.0;
        for (var i = c.Length - 1; i >= 0; i--)
            sum = sum * x + c[i];
        return sum;
    }
}
