using Ramwright.Metrology.Text;
using Ramwright.Proving.Text;

namespace Ramwright.Proving.Tests.Text;

public sealed class VerdictTextTests
{
    [Fact]
    public void The_answer_stands_first_and_every_figure_has_its_unit()
    {
        var series = Series.Of(679, 721, 4, 12, Series.With(699.4, 6.2, 12));
        var verdict = ProofDecision.Decide(series);
        Assert.Equal("undecided: the scatter is too large for 12 runs", VerdictText.Headline(verdict, UnitSystem.Metric));
        var lines = VerdictText.Lines(verdict, series, UnitSystem.Metric);
        Assert.Equal("12 runs, mean 699.4 bar, standard deviation 6.2 bar; limits 679..721 bar, 683..717 bar after 4 bar for what the device may be off", lines[0]);
        Assert.Equal("above 683 bar: with 95 % confidence at least 94.3 % of full runs; 95 % is asked", lines[1]);
        Assert.Equal("below 717 bar: with 95 % confidence at least 95.6 % of full runs; 95 % is asked: holds", lines[2]);
        Assert.Equal("the scatter is too large for this number of runs: standard deviation 6.2 bar, at most 5.9 bar would pass", lines[3]);
        Assert.StartsWith("a new series of ", lines[4], StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_series_reads_in_psi()
    {
        var series = Series.Of(679, 721, 4, 12, 700, 726);
        Assert.Contains("run 2 read 10,530 psi, above the upper limit, 10,457 psi, by more than 58 psi, what that reading may be off",
            VerdictText.Lines(ProofDecision.Decide(series), series, UnitSystem.Imperial), StringComparer.Ordinal);
    }

    [Fact]
    public void Every_reason_has_words()
    {
        var bar = Ramwright.Metrology.Quantities.Pressure.FromBar(700);
        Reason[] all =
        [
            new Reason.RunOutside(1, bar, LimitSide.Lower, bar, bar), new Reason.ShareTooSmall(LimitSide.Upper, bar, 0.8), new Reason.BothClaimsHold(), new Reason.NoRun(),
            new Reason.TooFewRuns(1, 12), new Reason.CentreOff(bar, bar), new Reason.ScatterTooLarge(bar, bar), new Reason.DeviceTooCoarse(bar, bar),
            new Reason.LongerSeriesWouldDecide(24, 0.8), new Reason.NoSeriesWouldDecide(100), new Reason.EqualReadings(bar), new Reason.RuleNotMet("two-sided-interval"),
            new Reason.RunInGuard(2, bar, LimitSide.Upper, bar), new Reason.EveryRunInside(), new Reason.IntervalInside(),
            new Reason.ExtensionDue(12, 0.3),
        ];
        Assert.Equal(typeof(Reason).GetNestedTypes().Length, all.Length);
        Assert.All(all, r => Assert.False(string.IsNullOrWhiteSpace(ReasonText.Of(r, UnitSystem.Metric))));
        Assert.Equal(all.Length, all.Select(r => r.Code).Distinct(StringComparer.Ordinal).Count());
    }
}
