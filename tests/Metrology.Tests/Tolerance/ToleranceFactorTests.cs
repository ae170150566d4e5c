using CsCheck;
using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Tolerance;

namespace Ramwright.Metrology.Tests.Tolerance;

public sealed class ToleranceFactorTests
{
    [Fact]
    public void One_sided_factor_solves_its_equation_from_two_readings_to_two_thousand() =>
        Gen.Select(Gen.Int[2, 2_000], Gen.Double[0.5, 0.9999], Gen.Double[0.5, 0.9999]).ForAll((n, coverage, confidence) =>
        {
            var k = ToleranceFactor.OneSided(n, coverage, confidence);
            var delta = Math.Sqrt(n) * Normal.Quantile(coverage);
            Assert.Equal(confidence, NoncentralT.Cdf(k * Math.Sqrt(n), n - 1, delta), 1e-12);
        }, iter: 400);

    // Oracle: means and deviations drawn at random, the content of each interval computed; 40,000 seeded draws, 4 standard errors.
    [Theory]
    [InlineData(2, 0.95, 0.95)]
    [InlineData(12, 0.95, 0.95)]
    [InlineData(40, 0.99, 0.90)]
    public void Two_sided_interval_holds_its_share_as_often_as_it_says(int n, double coverage, double confidence)
    {
        var k = ToleranceFactor.TwoSided(n, coverage, confidence);
        var random = new Random(20_240_601);
        const int Draws = 40_000;
        var held = 0;
        for (var draw = 0; draw < Draws; draw++)
        {
            var mean = Normal.Quantile(1 - random.NextDouble()) / Math.Sqrt(n);
            var s = Math.Sqrt(ChiSquared.Quantile(Math.Clamp(random.NextDouble(), 1e-12, 1 - 1e-12), n - 1) / (n - 1));
            if (Normal.Cdf(mean + k * s) - Normal.Cdf(mean - k * s) >= coverage)
                held++;
        }

        Assert.Equal(confidence, (double)held / Draws, 4 * Math.Sqrt(confidence * (1 - confidence) / Draws));
    }

    [Fact]
    public void Two_sided_factor_is_larger_than_one_sided_and_falls_with_more_readings() =>
        Gen.Select(Gen.Int[2, 300], Gen.Double[0.6, 0.999], Gen.Double[0.6, 0.999]).ForAll((n, coverage, confidence) =>
        {
            var two = ToleranceFactor.TwoSided(n, coverage, confidence);
            Assert.True(two > ToleranceFactor.OneSided(n, coverage, confidence));
            Assert.True(two > ToleranceFactor.TwoSided(n + 1, coverage, confidence));
        }, iter: 200);

    [Theory]
    [InlineData(1, 0.95, 0.95)]
    [InlineData(12, 1, 0.95)]
    [InlineData(12, double.NaN, 0.95)]
    [InlineData(12, 0.95, 0)]
    public void What_no_sample_can_have_is_refused(int n, double coverage, double confidence)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ToleranceFactor.OneSided(n, coverage, confidence));
        Assert.Throws<ArgumentOutOfRangeException>(() => ToleranceFactor.TwoSided(n, coverage, confidence));
    }
}
