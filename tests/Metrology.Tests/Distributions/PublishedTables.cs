using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Tests.Distributions;

public sealed class PublishedTables
{
    // Abramowitz & Stegun, Handbook of Mathematical Functions, Table 26.1 (x = 1, 2, 3) and Table 26.2 (x = 5: -log10 Q = 6.54265); from memory.
    // The longer digits were recomputed from the Taylor series in 160-digit arithmetic.
    [Theory]
    [InlineData(1, 0.841344746068543)]
    [InlineData(2, 0.977249868051821)]
    [InlineData(3, 0.998650101968370)]
    public void Normal_share_matches_every_printed_digit(double x, double printed) => Assert.Equal(printed, Normal.Cdf(x), 5e-16);

    // erfc(z) to 16 digits, from the Taylor series in 160-digit arithmetic; Q(z·√2) = erfc(z)/2
    [Theory]
    [InlineData(0.5, 0.4795001221869534623)]
    [InlineData(2, 0.004677734981047265838)]
    [InlineData(3.5, 7.430983723414127455e-7)]
    [InlineData(5, 1.537459794428034850e-12)]
    public void Normal_tail_keeps_its_digits_far_out(double z, double erfc) => Assert.Equal(1, 2 * Normal.Tail(z * Math.Sqrt(2)) / erfc, 3e-15);

    // Percentage points common to all tables of the normal distribution (ISO 3207 and others), from memory
    [Theory]
    [InlineData(0.95, 1.644853626951472)]
    [InlineData(0.975, 1.959963984540054)]
    [InlineData(0.99, 2.326347874040841)]
    [InlineData(0.9999, 3.719016485455709)]
    public void Normal_quantile_matches_every_printed_digit(double p, double printed) => Assert.Equal(printed, Normal.Quantile(p), 3e-13);

    // Upper 5 % points of Student's t and of chi squared as printed in every textbook (Montgomery & Runger, Tables V and III), from memory
    [Theory]
    [InlineData(1, 6.314, 3.84)]
    [InlineData(5, 2.015, 11.07)]
    [InlineData(11, 1.796, 19.68)]
    [InlineData(30, 1.697, 43.77)]
    public void Student_and_chi_squared_points_match_every_printed_digit(double df, double t, double chiSquared)
    {
        Assert.Equal(t, StudentT.TailQuantile(0.05, df), 0.0005);
        Assert.Equal(chiSquared, ChiSquared.Quantile(0.95, df), 0.005);
    }
}
