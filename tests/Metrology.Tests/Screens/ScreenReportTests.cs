using System.Collections.Immutable;
using CsCheck;
using Ramwright.Metrology.Screens;
using Ramwright.Metrology.Text;
using Ramwright.Metrology.Uncertainty.MonteCarlo;

namespace Ramwright.Metrology.Tests.Screens;

public sealed class ScreenReportTests
{
    // Invented peaks in bar
    private static readonly double[] Quiet = [701.2, 698.4, 703.0, 699.7, 700.6, 697.9, 702.1, 700.9, 699.1, 701.7, 698.8, 700.4];

    private static double[] Normals(int count, ulong block)
    {
        var readings = new double[count + (8 - count % 8) % 8];
        Draws.AddNormal(1, new RandomStream(99, block), readings);
        return readings[..count];
    }

    // With nothing to see, at most 5 % of series are flagged; 2,000 series, so three standard errors are 1.5 %
    [Theory]
    [InlineData(8)]
    [InlineData(12)]
    [InlineData(24)]
    public void Of_series_with_nothing_to_see_at_most_one_in_twenty_is_flagged(int n)
    {
        var flagged = Enumerable.Range(0, 2_000).Count(i => ScreenReport.Of(Normals(n, (ulong)i)).Flags.Any());
        Assert.InRange(flagged / 2_000.0, 0.01, 0.05 + 0.015);
    }

    [Fact]
    public void A_quiet_series_has_seven_findings_and_no_flag()
    {
        var report = ScreenReport.Of(Quiet);
        Assert.Equal(Enum.GetValues<Screen>(), report.Findings.Select(f => f.Screen));
        Assert.Empty(report.Flags);
    }

    [Fact]
    public void A_reading_apart_is_flagged_by_its_number()
    {
        double[] readings = [.. Quiet];
        readings[4] = 730;
        var apart = Assert.Single(ScreenReport.Of(readings).Flags, f => f.Screen == Screen.Apart);
        Assert.Equal([4], apart.Readings);
        Assert.True(apart.Rises);
        Assert.StartsWith("run 5 lies apart from the others (Grubbs, less than 0.1 % by chance)", ScreenText.Explain(apart, "run"), StringComparison.Ordinal);
    }

    // Two equal outliers on one side hide each other from Grubbs
    [Fact]
    public void Two_that_hide_each_other_are_found_together()
    {
        double[] readings = [.. Quiet];
        (readings[2], readings[9]) = (715, 715.4);
        var flags = ScreenReport.Of(readings).Flags.ToList();
        Assert.DoesNotContain(flags, f => f.Screen == Screen.Apart);
        Assert.Equal([2, 9], Assert.Single(flags, f => f.Screen == Screen.SeveralApart).Readings);
    }

    [Fact]
    public void A_climb_is_a_trend_and_neighbours_are_alike()
    {
        var flags = ScreenReport.Of([.. Quiet.Select((x, i) => x + 3 * i)]).Flags.ToList();
        Assert.True(Assert.Single(flags, f => f.Screen == Screen.Trend).Rises);
        Assert.True(Assert.Single(flags, f => f.Screen == Screen.Neighbours).Rises);
        Assert.Contains("the readings climb", ScreenText.Explain(flags.First(f => f.Screen == Screen.Trend)), StringComparison.Ordinal);
    }

    [Fact]
    public void Turns_up_and_down_are_seen()
    {
        var flag = Assert.Single(ScreenReport.Of([.. Quiet.Select((x, i) => x + (i % 2 == 0 ? 6 : -6))]).Flags, f => f.Screen == Screen.Neighbours);
        Assert.False(flag.Rises);
        Assert.Contains("up and down by turns", ScreenText.Explain(flag), StringComparison.Ordinal);
    }

    [Fact]
    public void A_level_that_moves_is_a_drift() =>
        Assert.Contains(ScreenReport.Of([.. Quiet.Concat(Quiet).Select((x, i) => x + (i < 14 ? 0 : -6))]).Flags, f => f.Screen == Screen.Drift && !f.Rises);

    // Exponential scatter: one series of twelve rarely shows it, ten earlier ones together do
    [Fact]
    public void A_form_that_one_series_hides_is_seen_in_several()
    {
        ImmutableArray<double> Skew(int series) => [.. Normals(24, (ulong)(7_000 + series)).Chunk(2).Select(pair => pair[0] * pair[0] + pair[1] * pair[1])];
        var pooled = PooledNormality.Test([.. Enumerable.Range(0, 11).Select(Skew)])!;
        Assert.True(pooled.PValue < 0.001);
        Assert.Contains(ScreenReport.Of(Skew(0).AsSpan(), [.. Enumerable.Range(1, 10).Select(Skew)]).Flags, f => f.Screen == Screen.NotNormal);
    }

    // Under normal scatter the pooled chance is uniform: Kolmogorov's distance of 150 chances, 1.63/√150 is passed with chance 0.01
    [Fact]
    public void The_pooled_chance_is_uniform_when_there_is_nothing_to_see()
    {
        var chances = Enumerable.Range(0, 150).Select(i => PooledNormality.Test([[.. Normals(8, (ulong)(30_000 + i))], [.. Normals(5, (ulong)(40_000 + i))], [.. Normals(12, (ulong)(50_000 + i))]])!.PValue).Order().ToArray();
        Assert.True(chances.Select((p, i) => Math.Abs(p - (i + 0.5) / chances.Length)).Max() < 1.63 / Math.Sqrt(chances.Length));
    }

    [Fact]
    public void Too_few_too_many_and_equal_readings_are_not_looked_through()
    {
        Assert.Empty(ScreenReport.Of([1, 2, 3]).Findings);
        Assert.Empty(ScreenReport.Of(new double[1_001]).Findings);
        Assert.Empty(ScreenReport.Of([5, 5, 5, 5, 5]).Findings);
        Assert.NotEmpty(ScreenReport.Of(Normals(1_000, 5)).Findings);
    }

    [Fact]
    public void One_step_of_a_coarse_gauge_is_no_outlier()
    {
        double[] coarse = [700, 700, 700, 700, 705, 700, 700, 700, 700, 700, 700, 700];
        Assert.Contains(ScreenReport.Of(coarse).Flags, f => f.Screen == Screen.Apart);
        Assert.Empty(ScreenReport.Of(coarse, resolution: 5).Findings);
        Assert.NotEmpty(ScreenReport.Of(coarse, resolution: 2.5).Findings);
    }

    [Fact]
    public void Neither_unit_nor_zero_counts() => Gen.Select(Gen.Double[-1e3, 1e3], Gen.Double[0.01, 100]).ForAll((shift, scale) =>
        ScreenReport.Of(Quiet).Findings.Zip(ScreenReport.Of([.. Quiet.Select(x => shift + scale * x)]).Findings, (a, b) => a.Screen == b.Screen && Math.Abs(a.PValue - b.PValue) < 1e-6).All(same => same), iter: 50);
}
