using Ramwright.Metrology.Tolerance;

namespace Ramwright.Metrology.Tests.Tolerance;

public sealed class PublishedTables
{
    // Montgomery & Runger, Applied Statistics and Probability for Engineers, 7th ed. (2018), Table XII
    [Fact]
    public void One_sided_factors_match_every_printed_digit_and_the_exact_value()
    {
        var rows = PublishedCsv.Rows("tolerance-factors-one-sided.csv");
        Assert.Equal(60, rows.Count);
        Assert.All(rows, row =>
        {
            var k = ToleranceFactor.OneSided((int)row.Number("n"), row.Number("coverage"), row.Number("confidence"));
            Assert.Equal(row.Number("published"), k, PublishedCsv.HalfLastDigit(row["published"]));
            Assert.Equal(row.Number("exact_recomputed"), k, 1e-10);
        });
    }

    // Meeker, Hahn & Escobar, Statistical Intervals, 2nd ed. (Wiley 2017), Table J.5b; ISO 16269-6:2014 Annex F, which rounds up
    [Fact]
    public void Two_sided_factors_match_every_printed_digit_and_the_exact_value()
    {
        var rows = PublishedCsv.Rows("tolerance-factors-two-sided.csv");
        Assert.All(rows, row =>
        {
            var k = ToleranceFactor.TwoSided((int)row.Number("n"), row.Number("coverage"), row.Number("confidence"));
            if (row.Has("published_meeker_hahn_escobar"))
                Assert.Equal(row.Number("published_meeker_hahn_escobar"), k, PublishedCsv.HalfLastDigit(row["published_meeker_hahn_escobar"]));
            if (row.Has("published_iso_16269_6_rounded_up"))
                Assert.Equal(row.Number("published_iso_16269_6_rounded_up"), Math.Ceiling(k * 1e4) / 1e4, 1e-9);
            Assert.Equal(row.Number("exact_recomputed"), k, 2e-10);
        });
        Assert.True(rows.Count > 50, $"{rows.Count} rows");
    }

    // ISO 16269-6:2014 Annex F, Tables F.1 to F.9: standard deviation pooled over m samples, printed rounded up
    [Fact]
    public void Two_sided_factors_with_a_pooled_standard_deviation_match_every_printed_digit()
    {
        var rows = PublishedCsv.Rows("tolerance-factors-two-sided-pooled-iso-16269-6.csv");
        Assert.All(rows, row =>
        {
            var n = (int)row.Number("n_per_sample");
            var k = ToleranceFactor.TwoSided(n, row.Number("coverage"), row.Number("confidence"), row.Number("m_samples_pooled") * (n - 1));
            Assert.Equal(row.Number("published_k5_rounded_up"), Math.Ceiling(k * 1e4) / 1e4, 1e-9);
            Assert.Equal(row.Number("exact_recomputed"), k, 6e-9);
        });
        Assert.True(rows.Count > 100, $"{rows.Count} rows");
    }

    // NIST/SEMATECH e-Handbook 7.2.6.3: one-sided factors by noncentral t, 1.8740 for n = 43 and 4.4111 for n = 6
    [Theory]
    [InlineData(43, 1.8740)]
    [InlineData(6, 4.4111)]
    public void One_sided_factors_match_the_worked_example(int n, double printed) =>
        Assert.Equal(printed, ToleranceFactor.OneSided(n, 0.90, 0.99), 0.00005);
}
