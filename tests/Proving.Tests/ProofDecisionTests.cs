using CsCheck;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Tolerance;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Proving.Tests;

public sealed class ProofDecisionTests
{
    private static readonly Gen<ProofSeries> AnySeries =
        from n in Gen.Int[2, 20]
        from missing in Gen.Int[0, 2]
        from mean in Gen.Double[670, 730]
        from sigma in Gen.Double[0.5, 12]
        from systematic in Gen.Double[0, 12]
        from seed in Gen.Int
        from rule in Gen.Int[0, 2].Select(i => (DecisionRule)i)
        select Series.Of(679, 721, systematic, n + missing) with { Peaks = Series.Draw(new(seed), mean, sigma, n), Rule = rule };

    // ISO 16269-6 / Montgomery & Runger, Table XII: one-sided factor 4.411 for n = 6, coverage 0.90, confidence 0.99.
    // Runs a hair farther than the printed factor from the limit conform, a hair nearer do not.
    [Theory]
    [InlineData(4.412, Conformity.Conforms)]
    [InlineData(4.410, Conformity.Undecided)]
    public void The_printed_factor_is_where_a_claim_begins_to_hold(double distance, Conformity expected)
    {
        var series = Series.Of(600, 900, 10, 6, Series.With(610 + 5 * distance, 5, 6)) with { Coverage = 0.90, Confidence = 0.99 };
        var verdict = ProofDecision.Decide(series);
        Assert.Equal(expected, verdict.Conformity);
        Assert.Equal(0.90, verdict.Claims[0].ShareShown, 0.0002);
        Assert.Equal(4.4111, verdict.OneSidedFactor!.Value, 0.00005);
    }

    [Fact]
    public void Conforms_only_when_full_and_inside_by_the_factor() => AnySeries.ForAll(series =>
    {
        var verdict = ProofDecision.Decide(series);
        if (verdict.Conformity != Conformity.Conforms)
            return;
        Assert.Equal(series.PlannedRuns, series.Peaks.Length);
        Assert.All(series.Peaks, peak => Assert.True(series.Limits.Min - series.Systematic.AboveLimit <= peak && peak <= series.Limits.Max + series.Systematic.BelowLimit));
        if (series.Rule == DecisionRule.OneSidedPerLimit)
        {
            var margin = ToleranceFactor.OneSided(verdict.Runs, 0.95, 0.95) * verdict.StandardDeviation!.Value.Pascals;
            Assert.True(verdict.Mean!.Value.Pascals - margin >= verdict.GuardLow.Pascals - 1e-6);
            Assert.True(verdict.Mean!.Value.Pascals + margin <= verdict.GuardHigh.Pascals + 1e-6);
        }
    }, iter: 1_000);

    [Fact]
    public void A_worse_device_never_turns_a_verdict_into_conforms_and_a_better_one_never_out_of_it() =>
        Gen.Select(AnySeries, Gen.Double[0, 10]).ForAll((series, more) =>
        {
            var worse = series with { Systematic = SystematicUncertainty.Symmetric(series.Systematic.BelowLimit + Pressure.FromBar(more)) };
            if (ProofDecision.Decide(worse).Conformity == Conformity.Conforms)
                Assert.Equal(Conformity.Conforms, ProofDecision.Decide(series).Conformity);
            if (ProofDecision.Decide(worse).Conformity == Conformity.DoesNotConform)
                Assert.Equal(Conformity.DoesNotConform, ProofDecision.Decide(series).Conformity);
        }, iter: 500);

    [Fact]
    public void The_verdict_does_not_hang_on_where_zero_is() => Gen.Select(AnySeries, Gen.Double[-300, 300]).ForAll((series, shift) =>
    {
        var by = Pressure.FromBar(shift);
        var moved = series with { Limits = new(series.Limits.Min + by, series.Limits.Max + by), Peaks = [.. series.Peaks.Select(p => p + by)] };
        Assert.Equal(ProofDecision.Decide(series).Conformity, ProofDecision.Decide(moved).Conformity);
    }, iter: 300);

    [Fact]
    public void The_stricter_rule_conforms_less_often() => AnySeries.ForAll(series =>
    {
        if (ProofDecision.Decide(series with { Rule = DecisionRule.TwoSidedInterval }).Conformity == Conformity.Conforms)
            Assert.Equal(Conformity.Conforms, ProofDecision.Decide(series with { Rule = DecisionRule.OneSidedPerLimit }).Conformity);
    }, iter: 300);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(11)]
    public void Fewer_runs_than_planned_are_undecided(int taken)
    {
        var verdict = ProofDecision.Decide(Series.Of(679, 721, 4, 12, Series.With(700, taken == 1 ? 0 : 0.5, 12)[..taken]));
        Assert.Equal(Conformity.Undecided, verdict.Conformity);
        Assert.Equal(new Reason.TooFewRuns(taken, 12), Assert.Single(verdict.Reasons));
    }

    [Fact]
    public void One_run_far_beyond_a_limit_decides_at_once()
    {
        var verdict = ProofDecision.Decide(Series.Of(679, 721, 4, 12, 700, 725.5, 699));
        Assert.Equal(Conformity.DoesNotConform, verdict.Conformity);
        Assert.Equal(new Reason.RunOutside(2, Pressure.FromBar(725.5), LimitSide.Upper, Pressure.FromBar(721), Pressure.FromBar(4)), Assert.Single(verdict.Reasons));
        Assert.Equal(Conformity.Undecided, ProofDecision.Decide(Series.Of(679, 721, 4, 12, 700, 724.5, 699)).Conformity);
    }

    [Fact]
    public void Peak_capture_excuses_a_low_reading_and_never_a_high_one()
    {
        var capture = new SystematicUncertainty(Pressure.FromBar(2), Pressure.FromBar(12), Pressure.FromBar(0));
        Assert.Equal(Conformity.Undecided, ProofDecision.Decide(Series.Of(679, 721, 0, 12, 668) with { Systematic = capture }).Conformity);
        Assert.Equal(Conformity.DoesNotConform, ProofDecision.Decide(Series.Of(679, 721, 0, 12, 724) with { Systematic = capture }).Conformity);
    }

    [Fact]
    public void Equal_readings_show_nothing_unless_the_step_is_stated()
    {
        double[] equal = [.. Enumerable.Repeat(700.0, 12)];
        var verdict = ProofDecision.Decide(Series.Of(679, 721, 4, 12, equal));
        Assert.Equal(Conformity.Undecided, verdict.Conformity);
        Assert.IsType<Reason.EqualReadings>(Assert.Single(verdict.Reasons));
        Assert.All(verdict.Claims, c => Assert.Equal((false, 0.0), (c.Holds, c.ShareShown)));
        Assert.Equal(Conformity.Conforms, ProofDecision.Decide(Series.Of(679, 721, 4, 12, equal) with { Resolution = Pressure.FromBar(1) }).Conformity);
        Assert.Equal(Conformity.Undecided, ProofDecision.Decide(Series.Of(679, 721, 4, 12, equal) with { Resolution = Pressure.FromBar(20) }).Conformity);
    }

    [Fact]
    public void What_is_in_the_way_is_named()
    {
        Reason First(double mean, double s, double systematic) => ProofDecision.Decide(Series.Of(679, 721, systematic, 12, Series.With(mean, s, 12))).Reasons[0];
        Assert.IsType<Reason.CentreOff>(First(692, 4.5, 4));
        Assert.IsType<Reason.ScatterTooLarge>(First(700, 7, 4));
        Assert.IsType<Reason.DeviceTooCoarse>(First(700, 4, 12));
        Assert.IsType<Reason.DeviceTooCoarse>(First(700, 4, 22));
        var noisyReadings = Series.Of(679, 721, 1, 12, Series.With(679, 4, 12)) with { Systematic = new(Pressure.FromBar(1), Pressure.FromBar(1), Pressure.FromBar(15)) };
        Assert.IsType<Reason.ShareTooSmall>(ProofDecision.Decide(noisyReadings).Reasons[0]); // half the runs below, none by more than one reading may be off
    }

    [Theory]
    [InlineData(1)]
    [InlineData(0)]
    public void A_caller_who_breaks_the_contract_is_told(int planned) =>
        Assert.Throws<ArgumentException>(() => ProofDecision.Decide(Series.Of(679, 721, 4, planned)));

    [Fact]
    public void Runs_are_never_added_to_a_series() =>
        Assert.Throws<ArgumentException>(() => ProofDecision.Decide(Series.Of(679, 721, 4, 2, 700, 701, 702)));
}
