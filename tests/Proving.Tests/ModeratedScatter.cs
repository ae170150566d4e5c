using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Proving.Text;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Proving.Tests;

/// <summary>Series judged with the help of earlier ones. All series are made up.</summary>
public sealed class ModeratedScatter
{
    private static readonly double[] Alike = [4.6, 5.3, 4.9, 5.8, 4.4, 5.1, 4.8, 5.5, 5.0, 4.7];

    [Fact]
    public void A_series_short_by_its_own_scatter_conforms_when_the_model_is_known_to_scatter_less()
    {
        var series = Series.Of(679, 721, 5, 12, Series.With(700, 6.1, 12));
        Assert.Equal(Conformity.Undecided, ProofDecision.Decide(series).Conformity);
        var verdict = ProofDecision.Decide(series with { Declared = ModeratedBy(Alike) });
        Assert.Equal((Conformity.Conforms, ScatterSource.Moderated), (verdict.Conformity, verdict.ScatterFrom));
        Assert.Equal(10, verdict.Moderation!.Series);
        Assert.InRange(verdict.Moderation.Typical.Bar, 4.4, 5.6);
    }

    [Fact]
    public void The_larger_of_own_and_moderated_scatter_counts()
    {
        var restless = ProofDecision.Decide(Series.Of(650, 750, 4, 12, Series.With(700, 8, 12)) with { Declared = ModeratedBy(Alike) });
        Assert.Equal(8, restless.ScatterUsed!.Value.Bar, 1e-9);
        Assert.InRange(restless.Moderation!.Moderated!.Value.Bar, 4.5, 8);
        var quiet = ProofDecision.Decide(Series.Of(650, 750, 4, 12, Series.With(700, 2, 12)) with { Declared = ModeratedBy(Alike) });
        Assert.InRange(quiet.ScatterUsed!.Value.Bar, 2.5, 5.5); // a lucky series does not make a quiet tool
        Assert.Equal(quiet.Moderation!.Moderated, quiet.ScatterUsed);
    }

    [Fact]
    public void A_refusal_rests_on_the_tools_own_scatter()
    {
        var series = Series.Of(679, 721, 1, 12, Series.With(681, 6, 12)) with { Systematic = new(Pressure.FromBar(1), Pressure.FromBar(1), Pressure.FromBar(50)) };
        var own = ProofDecision.Decide(series).Reasons.OfType<Reason.ShareTooSmall>().ToArray();
        Assert.Equal(own, ProofDecision.Decide(series with { Declared = ModeratedBy(Alike) }).Reasons.OfType<Reason.ShareTooSmall>());
        Assert.NotEmpty(own);
    }

    [Fact]
    public void A_claim_holds_just_when_the_share_shown_reaches_the_share_asked()
    {
        for (var mean = 690.0; mean <= 710; mean += 0.5)
        {
            var verdict = ProofDecision.Decide(Series.Of(679, 721, 4, 12, Series.With(mean, 5.5, 12)) with { Declared = ModeratedBy(Alike) });
            Assert.All(verdict.Claims, c => Assert.Equal(c.Holds, c.ShareShown >= 0.95));
        }
    }

    [Fact]
    public void Equal_readings_stay_undecided_whatever_the_other_tools_did() =>
        Assert.IsType<Reason.EqualReadings>(Assert.Single(
            ProofDecision.Decide(Series.Of(679, 721, 4, 12, [.. Enumerable.Repeat(700.0, 12)]) with { Declared = ModeratedBy(Alike) }).Reasons));

    [Fact]
    public void The_report_says_whose_scatter_it_was()
    {
        var series = Series.Of(679, 721, 5, 12, Series.With(700, 6.1, 12)) with { Declared = ModeratedBy(Alike) };
        var lines = VerdictText.Lines(ProofDecision.Decide(series), series, UnitSystem.Metric);
        Assert.Contains(lines, l => l.StartsWith("scatter of this tool's own, 6.1 bar: it is larger than moderated by 10 earlier series (typical tool ", StringComparison.Ordinal));
        Assert.StartsWith("The scatter is this tool's own moderated by 10 earlier series of the model", VerdictText.RuleSentence(series, UnitSystem.Metric), StringComparison.Ordinal);
    }

    // Tools of ν₀ = 8 and their 8 earlier series drawn anew 400 times; a tool just bad enough. The bound is 5 % and three standard errors.
    [Fact]
    public void On_the_average_of_the_model_a_tool_just_bad_enough_conforms_in_no_more_than_one_series_of_twenty()
    {
        const int Draws = 400;
        var random = new Random(5);
        var conforms = 0;
        for (var i = 0; i < Draws; i++)
        {
            var earlier = Enumerable.Range(0, 8).Select(_ => Scatter(Sigma(), 12)).ToArray();
            var sigma = Sigma();
            var series = Series.Of(600, 900, 4, 12) with { Declared = ModeratedBy(earlier), Peaks = Series.Draw(random, 604 + sigma * Normal.Quantile(0.95), sigma, 12) };
            conforms += ProofDecision.Decide(series).Claims[0].Holds ? 1 : 0;
        }

        Assert.InRange((double)conforms / Draws, 0.01, 0.05 + 3 * Math.Sqrt(0.05 * 0.95 / Draws));

        double Gauss() => Normal.Quantile(1 - random.NextDouble());
        double Sigma() => 5 / Math.Sqrt(Enumerable.Range(0, 8).Sum(_ => Math.Pow(Gauss(), 2)) / 8);
        double Scatter(double sigma, int n) => sigma * Math.Sqrt(Enumerable.Range(0, n - 1).Sum(_ => Math.Pow(Gauss(), 2)) / (n - 1));
    }

    [Fact]
    public void Seven_earlier_series_are_too_few_and_other_rules_know_no_moderation()
    {
        Assert.Throws<ArgumentException>(() => ModeratedBy(Alike[..7]));
        Assert.Throws<ArgumentException>(() => ProofDecision.Decide(Series.Of(679, 721, 4, 12) with { Declared = ModeratedBy(Alike), Rule = DecisionRule.TwoSidedInterval }));
        Assert.Throws<ArgumentException>(() => ProofDecision.Decide(Series.Of(679, 721, 4, 201) with { Declared = ModeratedBy(Alike) }));
    }

    private static Declared.Moderated ModeratedBy(double[] bar) => new(new(bar.Select(s => new EarlierScatter(Pressure.FromBar(s), 12))));
}
