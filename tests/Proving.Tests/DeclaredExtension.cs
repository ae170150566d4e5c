using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Proving.Tests;

/// <summary>Twelve runs, and twelve more if and only if they leave the series undecided. All series are made up.</summary>
public sealed class DeclaredExtension
{
    private static readonly Declared TwelveMore = new Declared.Extension(12);

    [Fact]
    public void Each_look_asks_more_than_a_plain_series_so_that_both_together_keep_the_confidence()
    {
        var plain = ProofDecision.Decide(Series.Of(679, 721, 4, 12, Series.With(700, 4, 12)));
        var looked = ProofDecision.Decide(Series.Of(679, 721, 4, 12, Series.With(700, 4, 12)) with { Declared = TwelveMore });
        Assert.Equal(Conformity.Conforms, looked.Conformity);
        Assert.InRange(looked.ConfidenceOfEachLook!.Value, 0.95, 0.975);
        Assert.True(looked.OneSidedFactor > plain.OneSidedFactor);
        Assert.Null(plain.ConfidenceOfEachLook);
    }

    [Fact]
    public void A_series_that_would_just_conform_without_an_extension_does_not_with_one()
    {
        var just = Series.Of(679, 721, 4, 12, Series.With(700, 6.2, 12));
        Assert.Equal(Conformity.Conforms, ProofDecision.Decide(just).Conformity);
        var looked = ProofDecision.Decide(just with { Declared = TwelveMore });
        Assert.Equal(Conformity.Undecided, looked.Conformity);
        Assert.Equal(12, Assert.Single(looked.Reasons.OfType<Reason.ExtensionDue>()).MoreRuns);
    }

    [Fact]
    public void The_second_look_is_on_all_runs_and_only_when_they_are_all_there()
    {
        var all = Series.Of(679, 721, 4, 12, [.. Series.With(700, 6.5, 12), .. Series.With(700, 4, 12)]) with { Declared = TwelveMore };
        Assert.Equal(new Reason.TooFewRuns(20, 24), Assert.Single(ProofDecision.Decide(all with { Peaks = all.Peaks[..20] }).Reasons));
        var last = ProofDecision.Decide(all);
        Assert.Equal((Conformity.Conforms, 24, 24), (last.Conformity, last.Runs, last.PlannedRuns));
        var stillRestless = ProofDecision.Decide(all with { Peaks = [.. all.Peaks[..12], .. Series.With(700, 8, 12).Select(Pressure.FromBar)] });
        Assert.Equal(Conformity.Undecided, stillRestless.Conformity);
        Assert.DoesNotContain(stillRestless.Reasons, r => r is Reason.ExtensionDue);
    }

    [Fact]
    public void Runs_after_a_decision_make_nothing_better_and_may_make_it_worse()
    {
        double[] decided = Series.With(700, 3, 12);
        var more = ProofDecision.Decide(Series.Of(679, 721, 4, 12, [.. decided, 701, 699]) with { Declared = TwelveMore });
        Assert.Equal((Conformity.Conforms, 12), (more.Conformity, more.Runs));
        Assert.Contains(more.Flags, f => f.Code == "runs-after-the-decision");
        var worse = ProofDecision.Decide(Series.Of(679, 721, 4, 12, [.. decided, 740]) with { Declared = TwelveMore });
        Assert.Equal(Conformity.DoesNotConform, worse.Conformity);
        var refused = ProofDecision.Decide(Series.Of(679, 721, 4, 12, [.. Series.With(677, 3, 12), .. Series.With(700, 1, 12)]) with { Declared = TwelveMore });
        Assert.Equal(Conformity.DoesNotConform, refused.Conformity);
    }

    // The bound is 1 − γ = 5 % and three standard errors of 2,000 seeded series; a tool just bad enough at the guarded lower limit
    [Fact]
    public void Both_looks_together_accept_a_tool_just_bad_enough_in_no_more_than_one_series_of_twenty()
    {
        const int Draws = 2_000;
        var random = new Random(20_241_120);
        var conforms = 0;
        for (var i = 0; i < Draws; i++)
        {
            var series = Series.Of(600, 900, 4, 12) with { Declared = TwelveMore, Peaks = Series.Draw(random, 604 + Normal.Quantile(0.95), 1, 12) };
            var verdict = ProofDecision.Decide(series);
            if (verdict.Reasons.Any(r => r is Reason.ExtensionDue))
                verdict = ProofDecision.Decide(series with { Peaks = [.. series.Peaks, .. Series.Draw(random, 604 + Normal.Quantile(0.95), 1, 12)] });
            conforms += verdict.Conformity == Conformity.Conforms ? 1 : 0;
        }

        var share = (double)conforms / Draws;
        Assert.InRange(share, 0.03, 0.05 + 3 * Math.Sqrt(0.05 * 0.95 / Draws));
    }

    // Oracle: tools drawn from what the planned runs leave open, the extension drawn from each and judged; 1,000 draws, four standard errors
    [Theory]
    [InlineData(6.6)]
    [InlineData(8.5)]
    public void The_chance_that_it_decides_is_the_share_of_extensions_that_do(double deviation)
    {
        var series = Series.Of(679, 721, 4, 12, Series.With(700, deviation, 12)) with { Declared = TwelveMore, Systematic = new(Pressure.FromBar(4), Pressure.FromBar(4), Pressure.FromBar(200)) };
        var due = Assert.Single(ProofDecision.Decide(series).Reasons.OfType<Reason.ExtensionDue>());
        var random = new Random(11);
        const int Draws = 1_000;
        var decided = 0;
        for (var i = 0; i < Draws; i++)
        {
            var chi = Enumerable.Range(0, 11).Sum(_ => Math.Pow(Normal.Quantile(random.NextDouble() + 1e-12), 2));
            var sigma = deviation / Math.Sqrt(chi / 11);
            var mean = 700 + sigma / Math.Sqrt(12) * Normal.Quantile(random.NextDouble() + 1e-12);
            var verdict = ProofDecision.Decide(series with { Peaks = [.. series.Peaks, .. Series.Draw(random, mean, sigma, 12)] });
            decided += verdict.Conformity != Conformity.Undecided ? 1 : 0;
        }

        Assert.Equal((double)decided / Draws, due.Chance, 4 * Math.Sqrt(0.25 / Draws));
    }

    [Fact]
    public void It_goes_with_claims_per_limit_alone()
    {
        var series = Series.Of(679, 721, 4, 12) with { Declared = TwelveMore };
        Assert.Throws<ArgumentException>(() => ProofDecision.Decide(series with { Rule = DecisionRule.TwoSidedInterval }));
        Assert.Throws<ArgumentException>(() => ProofDecision.Decide(series with { Rule = DecisionRule.EveryRunGuarded }));
        Assert.Throws<ArgumentException>(() => ProofDecision.Decide(series with { Declared = new Declared.Extension(0) }));
    }
}
