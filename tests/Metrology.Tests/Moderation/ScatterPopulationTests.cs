using CsCheck;
using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Moderation;

namespace Ramwright.Metrology.Tests.Moderation;

public sealed class ScatterPopulationTests
{
    // G. K. Smyth, Stat. Appl. Genet. Mol. Biol. 3 (2004) art. 3: moderated variance (ν₀s₀² + νs²)/(ν₀ + ν). With 2,000 earlier series spread as a
    // population of ν₀ = 10, s₀ = 5 spreads them, little doubt of ν₀ and s₀ is left, and our mean over what is left must come close to it.
    [Theory]
    [InlineData(2.5)]
    [InlineData(5)]
    [InlineData(9)]
    public void With_very_many_series_the_moderated_scatter_is_Smyths(double own)
    {
        var population = new ScatterPopulation(Spread(2_000, alike: 10, typical: 5, df: 11));
        Assert.Equal(5, population.TypicalDeviation, 0.05);
        Assert.InRange(population.AlikeDegrees, 8, 13);
        Assert.Equal(Math.Sqrt((10 * 25 + 11 * own * own) / 21), population.Moderate(new(own, 11)), 0.03 * own);
    }

    [Fact]
    public void Tools_that_scatter_alike_pull_harder()
    {
        var alike = new ScatterPopulation(Spread(20, alike: 200, typical: 5, df: 11));
        var unlike = new ScatterPopulation(Spread(20, alike: 3, typical: 5, df: 11));
        Assert.True(alike.AlikeDegrees > 50 && unlike.AlikeDegrees < 10);
        Assert.InRange(alike.Moderate(new(8, 11)), 5, 6.2);
        Assert.InRange(unlike.Moderate(new(8, 11)), 6.8, 8);
    }

    [Fact]
    public void The_unit_of_the_readings_does_not_matter() => Gen.Select(Gen.Double[0.01, 100], Gen.Int[1, 30]).ForAll((unit, alike) =>
    {
        var series = Spread(12, alike, typical: 1, df: 11);
        var scaled = new ScatterPopulation([.. series.Select(s => new SeriesScatter(unit * s.Deviation, 11))]);
        var plain = new ScatterPopulation(series);
        Assert.Equal(plain.Moderate(new(1.3, 11)), scaled.Moderate(new(1.3 * unit, 11)) / unit, 1e-4);
        Assert.Equal(new NextSeries(plain, 12).Factor(0.95, 0.95), new NextSeries(scaled, 12).Factor(0.95, 0.95), 1e-3);
    }, iter: 40);

    [Fact]
    public void A_tool_a_thousand_times_away_still_gets_a_number()
    {
        var population = new ScatterPopulation(Spread(8, alike: 60, typical: 5, df: 11));
        Assert.InRange(population.Moderate(new(5_000, 11)), 5, 5_000);
        Assert.InRange(population.Moderate(new(0.005, 11)), 0.005, 5);
    }

    [Fact]
    public void Seven_series_or_equal_readings_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new ScatterPopulation(Spread(7, 10, 5, 11)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SeriesScatter(0, 11));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SeriesScatter(double.NaN, 11));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SeriesScatter(5, 0));
    }

    /// <summary>Earlier series at the quantiles of s² = s₀²·F(ν, ν₀), so that they spread just as the population says.</summary>
    internal static SeriesScatter[] Spread(int count, double alike, double typical, int df) =>
        [.. Enumerable.Range(0, count).Select(i => new SeriesScatter(typical * Math.Sqrt(QuantileOfF((i + 0.5) / count, df, alike)), df))];

    private static double QuantileOfF(double p, double df, double other)
    {
        double low = -20, high = 20; // in ln x
        for (var step = 0; step < 60; step++)
        {
            var x = Math.Exp(0.5 * (low + high));
            var share = BetaFunction.Regularised(0.5 * df, 0.5 * other, df * x / (df * x + other), other / (df * x + other));
            (low, high) = share < p ? (0.5 * (low + high), high) : (low, 0.5 * (low + high));
        }

        return Math.Exp(0.5 * (low + high));
    }
}
