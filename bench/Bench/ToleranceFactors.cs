using System.Diagnostics;
using System.Globalization;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using Ramwright.Metrology.Tolerance;

namespace Ramwright.Bench;

/// <summary>Time for one exact tolerance factor, beside the same equation built on MathNet.Numerics and halving, in the same run.</summary>
internal static class ToleranceFactors
{
    private const double Share = 0.95;

    public static void Run()
    {
        Console.WriteLine("factor      n     ours, µs     peer, µs    ratio   largest difference");
        int[] sizes = [5, 12, 50, 200];
        foreach (var n in sizes)
        {
            Row("one-sided", n, () => ToleranceFactor.OneSided(n, Share, Share), () => PeerOneSided(n));
            Row("two-sided", n, () => ToleranceFactor.TwoSided(n, Share, Share), () => PeerTwoSided(n));
        }
    }

    private static void Row(string name, int n, Func<double> ours, Func<double> peer)
    {
        double us = Microseconds(ours), them = Microseconds(peer);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name} {n,4} {us,12:0.0} {them,12:0.0} {them / us,8:0.0} {Math.Abs(ours() - peer()),12:0.0e+0}"));
    }

    /// <summary>The fastest of 15 timed blocks, after warming up: what other work on the machine adds is left out.</summary>
    private static double Microseconds(Func<double> work)
    {
        var warm = Stopwatch.StartNew();
        var calls = 0;
        while (warm.ElapsedMilliseconds < 150 || calls < 3)
        {
            work();
            calls++;
        }

        var block = Math.Max(1, calls / 15);
        var times = new double[15];
        for (var i = 0; i < times.Length; i++)
        {
            var watch = Stopwatch.StartNew();
            for (var call = 0; call < block; call++)
                work();
            times[i] = watch.Elapsed.TotalMicroseconds / block;
        }

        return times.Min();
    }

    private static double PeerOneSided(int n)
    {
        var delta = Math.Sqrt(n) * Normal.InvCDF(0, 1, Share);
        var chi = new Chi(n - 1);
        var root = Math.Sqrt(n - 1);
        var (low, high) = Reach(n);
        return Halve(k => GaussLegendreRule.Integrate(w => Normal.CDF(0, 1, k * Math.Sqrt(n) * w - delta) * chi.Density(w * root) * root, low, high, 128) - Share);
    }

    private static double PeerTwoSided(int n)
    {
        return Halve(k => 2 * GaussLegendreRule.Integrate(u =>
        {
            var x = u / Math.Sqrt(n);
            var radius = Halve(r => Normal.CDF(0, 1, x + r) - Normal.CDF(0, 1, x - r) - Share);
            return Normal.PDF(0, 1, u) * (1 - ChiSquared.CDF(n - 1, (n - 1) * radius * radius / (k * k)));
        }, 0, 8.5, 48) - Share);
    }

    private static (double Low, double High) Reach(int n) => (Math.Max(0, 1 - 9 / Math.Sqrt(2.0 * (n - 1))), 1 + 9 / Math.Sqrt(2.0 * (n - 1)));

    private static double Halve(Func<double, double> rising)
    {
        double low = 0, high = 30;
        for (var step = 0; step < 42; step++)
        {
            var middle = 0.5 * (low + high);
            if (rising(middle) < 0)
                low = middle;
            else
                high = middle;
        }

        return 0.5 * (low + high);
    }
}
