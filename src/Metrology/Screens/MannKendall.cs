using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Screens;

/// <summary>How a chance was found.</summary>
public enum CountingMethod { Exact, NormalWithContinuity }

/// <summary>What the Mann–Kendall test says of a trend.</summary>
/// <param name="S">Rising pairs less falling pairs.</param>
/// <param name="PValue">Chance of |S| as large with no trend, 0 to 1.</param>
/// <param name="Method">Exact by counting orders up to 200 readings, ties included; beyond, the normal approximation.</param>
public sealed record MannKendallResult(int S, double PValue, CountingMethod Method);

/// <summary>The Mann–Kendall test for a trend in the order taken. It flags; it deletes nothing.</summary>
/// <remarks>
/// H. B. Mann, Econometrica 13 (1945) 245; R. O. Gilbert, Statistical Methods for Environmental Pollution Monitoring (1987), 16.4.
/// Under no trend all orders of the readings are equally likely. With ties these are the orders of a multiset, whose falling pairs are counted by
/// the q-multinomial coefficient (MacMahon): the answer stays exact.
/// </remarks>
public static class MannKendall
{
    private const int LargestCounted = 200;

    public static MannKendallResult Test(ReadOnlySpan<double> readings)
    {
        var s = 0;
        for (var i = 0; i < readings.Length; i++)
            for (var j = i + 1; j < readings.Length; j++)
                s += readings[j].CompareTo(readings[i]);
        int[] ties = [.. readings.ToArray().GroupBy(x => x).Select(g => g.Count())];
        if (readings.Length > LargestCounted)
            return new(s, Normally(s, readings.Length, ties), CountingMethod.NormalWithContinuity);
        return new(s, s == 0 ? 1 : Math.Min(1, 2 * UpperTail(Math.Abs(s), ties)), CountingMethod.Exact);
    }

    /// <summary>P(S ≥ s) with no trend and no ties.</summary>
    /// <param name="n">Readings, 1 to 200.</param>
    /// <param name="s">Any number.</param>
    public static double UpperTail(int n, int s)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(n);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(n, LargestCounted);
        int[] single = new int[n];
        Array.Fill(single, 1);
        return UpperTail(s, single);
    }

    /// <summary>P(S ≥ s) with no trend, for groups of equal readings of these sizes.</summary>
    private static double UpperTail(int s, int[] ties)
    {
        var falling = FallingPairs(ties); // S = pairs − 2·falling; symmetric
        var pairs = falling.Length - 1;
        var sum = 0.0;
        for (var k = 0; k <= pairs && pairs - 2 * k >= s; k++)
            sum += falling[k];
        return Math.Min(1, sum);
    }

    /// <summary>Chance of each number of falling pairs.</summary>
    private static double[] FallingPairs(int[] ties)
    {
        double[] all = [1];
        var placed = 0;
        foreach (var group in ties)
        {
            all = Convolve(all, Interleavings(placed, group));
            placed += group;
        }

        return all;
    }

    /// <summary>Chance of each number of crossings when b equal readings are dealt among a others: the q-binomial coefficient over its sum.</summary>
    private static double[] Interleavings(int a, int b)
    {
        if (b == 1) // one reading among a others: each place equally likely
            return [.. Enumerable.Repeat(1.0 / (a + 1), a + 1)];
        var rows = new double[b + 1][]; // rows[j]: j of the group placed among the first i readings in all
        rows[0] = [1];
        for (var i = 1; i <= a + b; i++)
            for (var j = Math.Min(i, b); j >= Math.Max(1, i - a); j--)
                rows[j] = Mix(j < i ? rows[j] : null, rows[j - 1], (double)j / i, i - j);
        return rows[b];
    }

    /// <summary>The last of i readings is one of the group (chance p, crossing the others before it) or is not.</summary>
    private static double[] Mix(double[]? other, double[] own, double p, int crossings)
    {
        var mixed = new double[Math.Max(other?.Length ?? 0, own.Length + crossings)];
        for (var k = 0; k < other?.Length; k++)
            mixed[k] += (1 - p) * other[k];
        for (var k = 0; k < own.Length; k++)
            mixed[k + crossings] += p * own[k];
        return mixed;
    }

    private static double[] Convolve(double[] a, double[] b)
    {
        var sum = new double[a.Length + b.Length - 1];
        for (var i = 0; i < a.Length; i++)
            for (var j = 0; j < b.Length; j++)
                sum[i + j] += a[i] * b[j];
        return sum;
    }

    private static double Normally(int s, int n, int[] ties)
    {
        static double Part(double m) => m * (m - 1) * (2 * m + 5);
        var variance = (Part(n) - ties.Sum(t => Part(t))) / 18;
        return variance > 0 && s != 0 ? Math.Min(1, 2 * Normal.Tail((Math.Abs(s) - 1) / Math.Sqrt(variance))) : 1;
    }
}
