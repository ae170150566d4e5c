using Ramwright.Metrology.Screens;

namespace Ramwright.Metrology.Tests.Screens;

public sealed class PublishedTables
{
    // ASTM E178, Table 1 (Grubbs & Beck 1972), from memory: the print is from older tables and differs by one unit in places; the recomputed columns do not
    [Theory]
    [InlineData("5", 0.05)]
    [InlineData("2_5", 0.025)]
    [InlineData("1", 0.01)]
    public void Grubbs_critical_values_agree_with_the_table_and_the_exact_value(string column, double alpha) =>
        Assert.All(PublishedCsv.Rows("grubbs-critical-values-astm-e178.csv"), row =>
        {
            var critical = Grubbs.CriticalOneSided((int)row.Number("n"), alpha);
            Assert.Equal(row.Number($"published_upper_{column}_percent"), critical, 0.001);
            Assert.Equal(row.Number($"recomputed_{column}"), critical, 6e-7);
        });

    // NIST/SEMATECH e-Handbook 1.3.5.17.1, data of Tietjen & Moore (1972): G 2.4687 (truncated), critical 2.032 one-sided, 2.1266 two-sided
    [Fact]
    public void Grubbs_test_agrees_with_the_worked_example()
    {
        var result = Grubbs.Test([199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]);
        Assert.NotNull(result);
        Assert.Equal(7, result.Index);
        Assert.Equal(2.46876461121245, result.Statistic, 1e-12);
        Assert.True(result.IsExact);
        Assert.True(result.PValue < 1e-6);
        Assert.Equal(2.032, Grubbs.CriticalOneSided(8, 0.05), 0.0005);
        Assert.Equal(2.1266, Grubbs.CriticalTwoSided(8, 0.05), 0.00005);
    }

    // Gilbert (1987), Table A18 (Kendall, Rank Correlation Methods, Table 1), from memory; the exact column counts permutations
    [Fact]
    public void Mann_Kendall_chances_match_every_printed_digit() => Assert.All(PublishedCsv.Rows("mann-kendall-exact-upper-tail.csv"), row =>
    {
        var p = MannKendall.UpperTail((int)row.Number("n"), (int)row.Number("S"));
        if (row.Has("published_P_S_or_more"))
            Assert.Equal(row.Number("published_P_S_or_more"), p, 1.001 * PublishedCsv.HalfLastDigit(row["published_P_S_or_more"]));
        Assert.Equal(1, p / row.Number("exact_recomputed"), 1e-11);
    });
}
