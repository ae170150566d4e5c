using System.Runtime.Intrinsics;
using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Metrology.Uncertainty.MonteCarlo;

namespace Ramwright.Metrology.Tests.Uncertainty.MonteCarlo;

public sealed class DrawsTests
{
    // First outputs of xoshiro256++ from the state 1, 2, 3, 4, as published with the public-domain C code's ports; from memory
    [Fact]
    public void The_stream_is_xoshiro256_plus_plus()
    {
        var stream = new RandomStream(1, 2, 3, 4);
        foreach (var expected in (ulong[])[41943041, 58720359, 3588806011781223, 3591011842654386, 9228616714210784205])
            Assert.Equal(Vector256.Create(expected), stream.Bits());
    }

    public static TheoryData<Spread, double, Func<double, double>> Spreads => new()
    {
        { new Spread.Rectangular(2), double.PositiveInfinity, x => (x + 2) / 4 },
        { new Spread.Triangular(2), double.PositiveInfinity, x => x < 0 ? (x + 2) * (x + 2) / 8 : 1 - (2 - x) * (2 - x) / 8 },
        { new Spread.UShaped(2), double.PositiveInfinity, x => 0.5 + Math.Asin(x / 2) / Math.PI },
        { new Spread.Normal(2), double.PositiveInfinity, x => Normal.Cdf(x / 2) },
        { new Spread.Expanded(4, 2), double.PositiveInfinity, x => Normal.Cdf(x / 2) },
        { new Spread.Normal(2), 3, x => StudentT.Cdf(x / 2, 3) },
        { new Spread.Normal(2), 0.5, x => StudentT.Cdf(x / 2, 0.5) },
        { new Spread.Normal(2), 5e5, x => StudentT.Cdf(x / 2, 5e5) },
    };

    // Kolmogorov's distance of 40,000 draws from the distribution function: 1.95/√n is passed with chance 0.001; seeded, so that it does not change
    [Theory]
    [MemberData(nameof(Spreads))]
    public void Draws_follow_their_distribution(Spread spread, double df, Func<double, double> share)
    {
        var draws = new double[40_000];
        Draws.Add(new Component("c", spread, Effect.Random, df), new RandomStream(3, 0), draws);
        Array.Sort(draws);
        var farthest = draws.Select((x, i) => Math.Max(Math.Abs(share(x) - (double)i / draws.Length), Math.Abs(share(x) - (i + 1.0) / draws.Length))).Max();
        Assert.True(farthest < 1.95 / Math.Sqrt(draws.Length), $"{farthest:0.00000}");
    }

    [Fact]
    public void Blocks_do_not_repeat_each_other()
    {
        var first = new double[80_000];
        var second = new double[80_000];
        var component = new Component("c", new Spread.Normal(1), Effect.Random);
        Draws.Add(component, new RandomStream(3, 0), first);
        Draws.Add(component, new RandomStream(3, 1), second);
        Assert.Equal(0, first.Zip(second, (a, b) => a * b).Average(), 4 / Math.Sqrt(first.Length));
    }

    // Oracle: full sorting. JCGM 101:2008, 7.7
    [Theory]
    [InlineData(20, 0.95)]
    [InlineData(999, 0.9)]
    [InlineData(10_000, 0.95)]
    [InlineData(10_000, 0.3)]
    [InlineData(10_000, 0.9999)]
    public void Interval_ends_are_those_of_the_sorted_results(int count, double coverage)
    {
        var results = new double[count + 8 - count % 8];
        Draws.Add(new Component("c", new Spread.Triangular(1), Effect.Random), new RandomStream(5, 0), results);
        results = [.. results.Take(count).Select(x => Math.Round(x, 3))]; // with equal ones
        var sorted = results.Order().ToArray();
        var inside = Math.Clamp((int)(coverage * count + 0.5), 1, count - 1);
        var r = Math.Max(1, (count - inside + 1) / 2);
        Assert.Equal((sorted[r - 1], sorted[r - 1 + inside]), OrderedEnds.Interval([.. results], coverage, IntervalKind.Symmetric));
        var shortest = Enumerable.Range(0, count - inside).Min(i => sorted[i + inside] - sorted[i]);
        var (low, high) = OrderedEnds.Interval([.. results], coverage, IntervalKind.Shortest);
        Assert.Equal(shortest, high - low, 1e-12);
    }

    // JCGM 101:2008, 7.9.2 (clause from memory), with its rule for 0.5 last digit
    [Theory]
    [InlineData(0.000_35, 1, 0.000_05)]
    [InlineData(0.000_35, 2, 0.000_005)]
    [InlineData(32, 2, 0.5)]
    [InlineData(0.0999, 1, 0.05)]
    [InlineData(0, 2, 0)]
    public void Half_the_last_digit(double standard, int digits, double tolerance) => Assert.Equal(tolerance, NumericalTolerance.Of(standard, digits), 1e-15);
}
