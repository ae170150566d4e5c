using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Tests.Strokes;

public sealed class OilWithAirTests
{
    private const double PascalsPerPsi = 6894.757;

    // Lee, engineering data on bulk modulus: B = 300,000 psi, 3,000 psi squeeze the volume by 1.0 %.
    [Fact]
    public void Three_thousand_psi_squeeze_oil_by_one_percent() =>
        Assert.Equal(0.010, new OilWithAir(300_000 * PascalsPerPsi, 0, 0, 1.4).Squeeze(3_000 * PascalsPerPsi).Share, 0.0005);

    [Fact]
    public void Without_air_the_modulus_grows_by_its_slope() => Assert.Equal(1.6e9 + 10 * 700e5, new OilWithAir(1.6e9, 10, 0, 1.4).ModulusPascals(700e5), 1);

    // By hand at 9 bar absolute, α₀ = 4 %, n = 1: gas 0.04/8.8823 = 0.0045033, α = 0.0046692, 1/K = 0.99533/(1.6e9 + 8e6) + 0.0046692/9.0e5.
    [Fact]
    public void Four_percent_air_make_oil_soft_at_nine_bar() =>
        Assert.Equal(1 / (0.9953308 / 1.60798675e9 + 0.0046692 / 9e5), new OilWithAir(1.6e9, 10, 0.04, 1).ModulusPascals(9e5 - OilWithAir.AtmospherePascals), 2e4);

    [Theory]
    [InlineData(0)]
    [InlineData(0.004)]
    [InlineData(0.04)]
    public void Squeeze_and_modulus_belong_together(double air)
    {
        // −dV/(V·dp) from the squeeze is 1/K but for the oil's own shrinking, which the share α leaves out: below 4 % at 700 bar.
        var oil = new OilWithAir(1.6e9, 10, air, 1.4);
        foreach (var bar in new[] { 1.0, 10, 100, 400, 700 })
        {
            var (share, perPascal) = oil.Squeeze(bar * 1e5);
            Assert.InRange(perPascal / (1 - share) * oil.ModulusPascals(bar * 1e5), 0.96, 1.04);
            var step = 0.001 * bar * 1e5;
            Assert.Equal((oil.Squeeze(bar * 1e5 + step).Share - oil.Squeeze(bar * 1e5 - step).Share) / (2 * step), perPascal, 1e-4 * perPascal);
        }
    }
}
