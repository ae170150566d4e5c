using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Moderation;
using Ramwright.Metrology.Tolerance;

namespace Ramwright.Metrology.Tests.Moderation;

public sealed class NextSeriesTests
{
    // Oracle: where all tools are alike and that is known, σ = 1 and the factor solves E Φ(√n(z − k·max(1, s))) = spent, here by a plain sum over s.
    // 3,000 series that scatter as equal tools do leave next to no doubt.
    [Theory]
    [InlineData(8)]
    [InlineData(12)]
    [InlineData(15)]
    public void With_very_many_equal_tools_the_factor_is_that_of_a_known_scatter(int runs)
    {
        var factor = new NextSeries(new(ScatterPopulationTests.Spread(3_000, alike: 1e5, typical: 1, df: 11)), runs).Factor(0.95, 0.95);
        var grid = new ScatterGrid(runs - 1, 20);
        double Accepted(double k)
        {
            var sum = 0.0;
            for (var i = 0; i < grid.Ratios.Length; i++)
                sum += grid.Weights[i] * Normal.Cdf(Math.Sqrt(runs) * (Normal.Quantile(0.95) - k * Math.Max(1, grid.Ratios[i])));
            return sum;
        }

        Assert.InRange(Accepted(factor), 0.8 * NextSeries.Spent(3_000) * 0.05, NextSeries.Spent(3_000) * 0.05); // a little is kept for the doubt of ν₀
    }

    [Theory]
    [InlineData(3)]
    [InlineData(20)]
    [InlineData(1_000)]
    public void The_factor_lies_between_a_known_scatter_and_little_more_than_ones_own(double alike)
    {
        var next = new NextSeries(new(ScatterPopulationTests.Spread(8, alike, 5, 11)), 12);
        var factor = next.Factor(0.95, 0.95);
        Assert.InRange(factor, ToleranceFactor.OneSided(12, 0.95, 0.95, df: 1e6) - 0.05, ToleranceFactor.OneSided(12, 0.95, 0.96) + 0.05);
    }

    [Fact]
    public void More_series_that_scatter_alike_ask_for_less() =>
        Assert.True(Factor(60) < Factor(20) && Factor(20) < Factor(8));

    [Theory]
    [InlineData(0.95, 0.95)]
    [InlineData(0.90, 0.99)]
    [InlineData(0.99, 0.90)]
    public void The_share_shown_reaches_the_coverage_when_the_distance_reaches_the_factor(double coverage, double confidence)
    {
        var next = new NextSeries(new(ScatterPopulationTests.Spread(8, 20, 5, 11)), 12);
        var factor = next.Factor(coverage, confidence);
        Assert.Equal(coverage, next.ShareAtLeast(factor, confidence), 1e-9);
        Assert.True(next.ShareAtLeast(factor - 0.1, confidence) < coverage && coverage < next.ShareAtLeast(factor + 0.1, confidence));
    }

    [Fact]
    public void Endless_distances_give_certain_shares()
    {
        var next = new NextSeries(new(ScatterPopulationTests.Spread(8, 20, 5, 11)), 12);
        Assert.Equal(1, next.ShareAtLeast(double.PositiveInfinity, 0.95));
        Assert.Equal(0, next.ShareAtLeast(double.NegativeInfinity, 0.95));
    }

    private static double Factor(int series) => new NextSeries(new(ScatterPopulationTests.Spread(series, 1_000, 5, 11)), 12).Factor(0.95, 0.95);
}
