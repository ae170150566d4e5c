using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Screens;

/// <summary>What Grubbs' test says of the reading farthest from the mean.</summary>
/// <param name="Index">Which reading, from 0.</param>
/// <param name="Statistic">Its distance from the mean in standard deviations (n − 1).</param>
/// <param name="PValue">Chance of a distance as large in either direction with no outlier, 0 to 1.</param>
/// <param name="IsExact">Whether the value is exact; when not it is an upper bound, never too small.</param>
public sealed record GrubbsResult(int Index, double Statistic, double PValue, bool IsExact);

/// <summary>Grubbs' test for one outlier. It flags; it deletes nothing.</summary>
/// <remarks>
/// F. E. Grubbs, Technometrics 11 (1969) 1; critical values ASTM E178, Table 1. The chance is n (two directions: 2n) times Student's tail at
/// t² = n(n−2)G²/((n−1)² − nG²). That sum counts two outliers at once twice, so it is exact only where two cannot be: beyond
/// G² = (n−1)(n−2)/(2n) in one direction, (n−1)/2 in either.
/// </remarks>
public static class Grubbs
{
    /// <summary>The farthest reading, or null below three readings and for equal ones.</summary>
    public static GrubbsResult? Test(ReadOnlySpan<double> readings)
    {
        var n = readings.Length;
        if (n < 3)
            return null;
        var moments = Moments.Of(readings);
        if (!(moments.StandardDeviation > 0))
            return null;
        var farthest = 0;
        for (var i = 1; i < n; i++)
            if (Math.Abs(readings[i] - moments.Mean) > Math.Abs(readings[farthest] - moments.Mean))
                farthest = i;
        var g = Math.Abs(readings[farthest] - moments.Mean) / moments.StandardDeviation;
        return new(farthest, g, Math.Min(1, 2 * n * Tail(g, n)), g * g > 0.5 * (n - 1));
    }

    /// <summary>The distance that the largest reading passes with chance <paramref name="alpha"/>.</summary>
    /// <param name="n">Readings, 3 or more.</param>
    /// <param name="alpha">Above 0 and below 1.</param>
    public static double CriticalOneSided(int n, double alpha) => Critical(n, Probability.Inside(alpha) / n);

    /// <summary>The distance that the farthest reading passes, in either direction, with chance <paramref name="alpha"/>.</summary>
    /// <inheritdoc cref="CriticalOneSided" path="/param"/>
    public static double CriticalTwoSided(int n, double alpha) => Critical(n, Probability.Inside(alpha) / (2 * n));

    private static double Critical(int n, double tail)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(n, 3);
        var t = StudentT.TailQuantile(tail, n - 2);
        return (n - 1) / Math.Sqrt(n) * Math.Sqrt(t * t / (n - 2 + t * t));
    }

    private static double Tail(double g, int n)
    {
        var rest = (n - 1.0) * (n - 1) - n * g * g; // zero when all others are equal, up to rounding
        return rest <= 0 ? 0 : StudentT.Tail(Math.Sqrt(n * (n - 2) * g * g / rest), n - 2);
    }
}
