using CsCheck;
using Ramwright.Metrology.Screens;

namespace Ramwright.Metrology.Tests.Screens;

public sealed class MannKendallTests
{
    [Fact]
    public void With_ties_it_counts_what_trying_every_order_counts() => Gen.Int[0, 3].Array[2, 7].ForAll(readings =>
    {
        double[] series = [.. readings.Select(x => (double)x)];
        var s = Math.Abs(S(series));
        int all = 0, asFar = 0;
        foreach (var order in Orders(series, 0))
        {
            all++;
            if (Math.Abs(S(order)) >= s)
                asFar++;
        }

        Assert.Equal((double)asFar / all, MannKendall.Test(series).PValue, 1e-12);
    }, iter: 60);

    [Fact]
    public void Equal_readings_have_no_trend() => Assert.Equal(1, MannKendall.Test([7, 7, 7, 7, 7]).PValue);

    [Fact]
    public void A_steady_climb_of_twelve_is_flagged_far_beyond_chance()
    {
        var result = MannKendall.Test([.. Enumerable.Range(0, 12).Select(i => (double)i)]);
        Assert.Equal(66, result.S);
        Assert.Equal(2 / 479_001_600.0, result.PValue, 1e-18); // 2/12!
    }

    [Fact]
    public void The_approximation_beyond_the_counted_length_joins_the_exact_value()
    {
        double[] Wave(int n) => [.. Enumerable.Range(0, n).Select(i => Math.Sin(1.7 * i) + 0.002 * i)];
        var exact = MannKendall.Test(Wave(200));
        var normal = MannKendall.Test(Wave(201));
        Assert.Equal(CountingMethod.Exact, exact.Method);
        Assert.Equal(CountingMethod.NormalWithContinuity, normal.Method);
        Assert.Equal(exact.PValue, normal.PValue, 0.02);
    }

    private static int S(double[] x)
    {
        var s = 0;
        for (var i = 0; i < x.Length; i++)
            for (var j = i + 1; j < x.Length; j++)
                s += Math.Sign(x[j] - x[i]);
        return s;
    }

    private static IEnumerable<double[]> Orders(double[] x, int from)
    {
        if (from == x.Length)
            yield return x;
        for (var i = from; i < x.Length; i++)
        {
            (x[from], x[i]) = (x[i], x[from]);
            foreach (var order in Orders(x, from + 1))
                yield return order;
            (x[from], x[i]) = (x[i], x[from]);
        }
    }
}
