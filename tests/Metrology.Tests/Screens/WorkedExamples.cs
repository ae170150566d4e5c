using Ramwright.Metrology.Screens;

namespace Ramwright.Metrology.Tests.Screens;

public sealed class WorkedExamples
{
    // NIST/SEMATECH e-Handbook 1.3.5.17.3, data of Rosner (1983): three outliers, though the first two steps do not pass; some prints are cut, not rounded
    [Fact]
    public void Several_outliers_of_Rosner()
    {
        double[] readings =
        [
            -0.25, 0.68, 0.94, 1.15, 1.2, 1.26, 1.26, 1.34, 1.38, 1.43, 1.49, 1.49, 1.55, 1.56, 1.58, 1.65, 1.69, 1.7, 1.76, 1.77, 1.81, 1.91, 1.94, 1.96, 1.99, 2.06, 2.09,
            2.1, 2.14, 2.15, 2.23, 2.24, 2.26, 2.35, 2.37, 2.4, 2.47, 2.54, 2.62, 2.64, 2.9, 2.92, 2.92, 2.93, 3.21, 3.26, 3.3, 3.59, 3.68, 4.3, 4.64, 5.34, 5.42, 6.01,
        ];
        double[] statistics = [3.118, 2.942, 3.179, 2.810, 2.815, 2.848, 2.279, 2.310, 2.101, 2.067];
        double[] critical = [3.158, 3.151, 3.143, 3.136, 3.128, 3.120, 3.111, 3.103, 3.094, 3.085];
        double[] removed = [6.01, 5.42, 5.34, 4.64, -0.25, 4.3, 3.68, 3.59, 0.68, 3.3];
        var steps = GeneralizedEsd.Steps(readings, 10);
        for (var i = 0; i < 10; i++)
        {
            Assert.Equal(statistics[i], steps[i].Statistic, 0.001);
            Assert.Equal(critical[i], Grubbs.CriticalTwoSided(readings.Length - i, 0.05), 0.001);
            Assert.Equal(removed[i], readings[steps[i].Index]);
            Assert.Equal(steps[i].Statistic > critical[i] + 0.001, steps[i].PValue < 0.05);
        }

        Assert.Equal([53, 52, 51], GeneralizedEsd.Outliers(steps, 0.05));
    }

    // Royston's test as R 4.2 and SciPy have it: 20 readings of the SciPy test-suite; Shapiro & Wilk (1965), weights of eleven men, W 0.79 (from memory)
    [Theory]
    [InlineData(new[] { 0.11, 7.87, 4.61, 10.14, 7.95, 3.14, 0.46, 4.43, 0.21, 4.75, 0.71, 1.52, 3.24, 0.93, 0.42, 4.97, 9.53, 4.55, 0.47, 6.66 }, 0.900472879318, 0.0420895752223)]
    [InlineData(new[] { 148.0, 154, 158, 160, 161, 162, 166, 170, 182, 195, 236 }, 0.788814694835, 0.0067038140565)]
    public void Normality_of_Shapiro_and_Wilk(double[] readings, double w, double chance)
    {
        var result = ShapiroWilk.Test(readings)!;
        Assert.Equal(w, result.W, 2e-7);
        Assert.Equal(chance, result.PValue, 2e-7);
    }

    // Three readings have an exact chance: W is smallest, 3/4, when two are equal
    [Fact]
    public void Three_readings_have_an_exact_chance()
    {
        Assert.Equal(0, ShapiroWilk.Test([1, 1, 2])!.PValue, 1e-7);
        Assert.Equal(1, ShapiroWilk.Test([1, 2, 3])!.PValue, 1e-7);
    }

    // NIST/SEMATECH e-Handbook 6.3.2.2; its d2 is rounded to 1.128, which moves the limits by 0.0017
    [Fact]
    public void Individuals_chart_of_NIST()
    {
        var chart = IndividualsChart.Of([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])!;
        Assert.Equal(50.81, chart.Mean, 0.005);
        Assert.Equal(1.8778, chart.MeanMovingRange, 0.00005);
        Assert.Equal(55.8041, chart.Upper, 0.0018);
        Assert.Equal(45.8159, chart.Lower, 0.0018);
        Assert.Equal(55.80241168005054, chart.Upper, 1e-12);
        Assert.Equal(6.1347, chart.UpperRange, 0.001); // 3.267 in Montgomery's Appendix VI (from memory)
        Assert.Empty(chart.Outside);
    }

    // NIST/SEMATECH e-Handbook 6.3.2.4: λ 0.3, target 50, s 2.0539; the page cuts its factor to 0.4201
    [Fact]
    public void Moving_average_of_NIST()
    {
        double[] readings = [52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
        double[] printed = [50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99];
        var ewma = Ewma.Of(readings, 0.3, 50, 2.0539);
        for (var i = 0; i < printed.Length; i++)
            Assert.Equal(printed[i], ewma.Values[i], 0.0051);
        var (lower, upper) = ewma.Limits();
        Assert.Equal(52.5884, upper, 0.0002);
        Assert.Equal(47.4115, lower, 0.0002);
        Assert.All(ewma.Values, v => Assert.InRange(v, lower, upper));
    }

    // Hart, Ann. Math. Stat. 13 (1942) 445 (from memory): lower critical values; the recomputed columns invert the same distribution otherwise
    [Fact]
    public void Critical_values_of_the_von_Neumann_ratio() => Assert.All(PublishedCsv.Rows("von-neumann-ratio-critical-values.csv"), row =>
    {
        foreach (var (level, share) in (ReadOnlySpan<(string, double)>)[("5", 0.05), ("1", 0.01), ("0_1", 0.001)])
        {
            var n = (int)row.Number("n");
            var critical = row.Number($"recomputed_{level}");
            Assert.True(VonNeumann.Cdf(critical - 2e-8, n) < share && share < VonNeumann.Cdf(critical + 2e-8, n), $"{n}, {level} %: {VonNeumann.Cdf(critical, n):R}");
            if (row.Has($"published_{level}_percent"))
                Assert.Equal(row.Number($"published_{level}_percent"), critical, 0.000_11);
        }
    });

    // S. Holm (1979): step down; by hand 0.01·4, then 0.02·3, 0.03·2 raised to 0.06, 0.5
    [Fact]
    public void Holm_steps_down_and_never_back() => Assert.Equal([0.06, 0.04, 0.5, 0.06], Holm.Adjust([0.03, 0.01, 0.5, 0.02]).Select(p => Math.Round(p, 12)));
}
