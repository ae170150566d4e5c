using CsCheck;
using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Tests.Distributions;

public sealed class NoncentralTTests
{
    [Fact]
    public void Without_noncentrality_it_is_Students_t() => Gen.Select(Gen.Double[0.5, 1_000], Gen.Double[-8, 8]).ForAll((df, t) =>
        Assert.Equal(StudentT.Cdf(t, df), NoncentralT.Cdf(t, df, 0), 4e-14), iter: 500);

    [Fact]
    public void At_zero_it_is_the_normal_share_of_the_noncentrality() => Gen.Select(Gen.Double[0.5, 1_000], Gen.Double[-5, 5]).ForAll((df, delta) =>
        Assert.Equal(Normal.Cdf(-delta), NoncentralT.Cdf(0, df, delta), 1e-15), iter: 500);

    // The oracle integrates Φ(t·w − δ) over the density of w = χ/√ν by Simpson's rule on 200,000 strips: too slow to ship.
    [Theory]
    [InlineData(37.1, 1, 2.326)]
    [InlineData(9.3, 4, 3.7)]
    [InlineData(6.1, 11, 5.7)]
    [InlineData(-1.2, 7, 0.8)]
    [InlineData(0.4, 2, -1.3)]
    [InlineData(56.0, 999, 52.0)]
    public void It_agrees_with_a_brute_integration(double t, double df, double delta)
    {
        const int Strips = 200_000;
        var top = 1 + 12 / Math.Sqrt(df);
        double sum = 0, norm = 0;
        for (var i = 0; i <= Strips; i++)
        {
            var w = top * i / Strips;
            var density = w > 0 ? Math.Exp((df - 1) * Math.Log(w) - df * (w * w - 1) / 2) : df == 1 ? Math.Exp(0.5) : 0;
            var weight = (i is 0 or Strips ? 1 : i % 2 == 1 ? 4 : 2) * density;
            sum += weight * Normal.Cdf(t * w - delta);
            norm += weight;
        }

        Assert.Equal(sum / norm, NoncentralT.Cdf(t, df, delta), 1e-10);
    }

    [Fact]
    public void Quantile_and_noncentrality_undo_the_share() =>
        Gen.Select(Gen.Double[1, 2_000], Gen.Double[-10, 40], Gen.Double[0.001, 0.999]).ForAll((df, delta, p) =>
        {
            var t = NoncentralT.Quantile(p, df, delta);
            Assert.Equal(p, NoncentralT.Cdf(t, df, delta), 1e-12);
            Assert.Equal(delta, NoncentralT.NoncentralityFor(p, t, df, 60), 1e-7);
        }, iter: 500);
}
