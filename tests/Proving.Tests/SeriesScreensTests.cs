using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Proving.Tests;

/// <summary>What a series is flagged for; invented peaks in bar. The screens themselves are tested against published examples in Metrology.</summary>
public sealed class SeriesScreensTests
{
    private static readonly double[] Quiet = [701.2, 698.4, 703.0, 699.7, 700.6, 697.9, 702.1, 700.9, 699.1, 701.7, 698.8, 700.4];

    private static ImmutableArray<Flag> Flags(IEnumerable<double> bar, double? resolution = null) =>
        ProofDecision.Decide(Series.Of(500, 900, 0, 12, [.. bar]) with { Resolution = resolution is { } r ? Pressure.FromBar(r) : null }).Flags;

    [Fact]
    public void A_quiet_series_has_none() => Assert.Empty(Flags(Quiet));

    [Fact]
    public void A_run_apart_is_named_once_by_its_number()
    {
        var flags = Flags(Quiet.Select((x, i) => i == 4 ? 730 : x));
        Assert.Equal(("grubbs", 5), (flags[0].Code, flags[0].Run!.Value));
        Assert.DoesNotContain(flags, f => f.Code is "several-apart" or "jump");
        Assert.Contains("it counts unless a cause is recorded", flags[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_runs_that_hide_each_other_are_named_together() =>
        Assert.Contains("runs 3, 10 lie apart", Assert.Single(Flags(Quiet.Select((x, i) => i is 2 or 9 ? 715 + 0.1 * i : x)), f => f.Code == "several-apart").Text, StringComparison.Ordinal);

    [Fact]
    public void A_climb_is_a_trend_with_its_direction() =>
        Assert.StartsWith("the runs climb in the order taken", Assert.Single(Flags(Quiet.Select((x, i) => x + 2 * i)), f => f.Code == "trend").Text, StringComparison.Ordinal);

    [Fact]
    public void One_step_of_a_coarse_gauge_is_no_flag() => Assert.Empty(Flags([700, 700, 700, 705, 700, 700, 700, 700], resolution: 5));

    [Fact]
    public void Three_runs_are_too_few_to_look_at() => Assert.Empty(Flags([700, 700.1, 750]));
}
