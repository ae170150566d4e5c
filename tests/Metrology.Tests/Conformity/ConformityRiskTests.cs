using CsCheck;
using Ramwright.Metrology.Conformity;
using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Tests.Conformity;

public sealed class ConformityRiskTests
{
    private static readonly ToleranceLimits Window = ToleranceLimits.Between(679, 721);

    // Oracle: the trapezoidal rule over the whole plane of true value and reading, 1e-6 fine enough to see any slip
    [Fact]
    public void Global_risks_are_those_of_summing_the_plane() => Gen.Select(Gen.Double[-1, 1], Gen.Double[0.3, 2], Gen.Double[0.1, 1.5], Gen.Double[0, 0.9]).ForAll((mean, sd, u, band) =>
    {
        var limits = ToleranceLimits.Between(-1.5, 1.2);
        var accepted = limits.Inward(band)!.Value;
        var risk = ConformityRisk.Global(limits, accepted, u, new Prior.Normal(mean, sd));
        double falseAccept = 0, falseReject = 0, all = 0;
        const int N = 20_000;
        var h = 18 * sd / N;
        for (var i = 0; i <= N; i++)
        {
            var x = mean - 9 * sd + i * h;
            var weight = h * Normal.Density((x - mean) / sd) / sd;
            var accept = Normal.Cdf((accepted.High - x) / u) - Normal.Cdf((accepted.Low - x) / u);
            all += weight * accept;
            if (x < limits.Low || x > limits.High)
                falseAccept += weight * accept;
            else
                falseReject += weight * (1 - accept);
        }

        var step = h / sd; // what the jump at a limit costs the plain rule
        return Math.Abs(risk.FalseAccept - falseAccept) < step && Math.Abs(risk.FalseReject - falseReject) < step && Math.Abs(risk.Accepted - all) < 1e-9;
    }, iter: 60);

    // Four ends and the four shares: rows and columns add up exactly, whatever the sizes
    [Fact]
    public void Shares_add_up() => Gen.Select(Gen.Double[-3, 3], Gen.Double[-4, 2], Gen.Double[-3, 2]).ForAll((mean, logSd, logU) =>
    {
        var (sd, u) = (Math.Pow(10, logSd), Math.Pow(10, logU));
        if (u < 1e-6 * sd)
            return true;
        var limits = ToleranceLimits.Between(-1, 1);
        var risk = ConformityRisk.Global(limits, limits, u, new Prior.Normal(mean, sd));
        var total = Math.Sqrt(sd * sd + u * u); // readings are normal too
        var accepted = Normal.Cdf((1 - mean) / total) - Normal.Cdf((-1 - mean) / total);
        var conforming = Normal.Cdf((1 - mean) / sd) - Normal.Cdf((-1 - mean) / sd);
        return Math.Abs(risk.Accepted - accepted) < 1e-11 && Math.Abs(risk.Conforming - conforming) < 1e-11
            && Math.Abs(risk.Accepted - risk.FalseAccept + risk.FalseReject - risk.Conforming) < 1e-11;
    }, iter: 300);

    [Fact]
    public void A_prior_pulls_the_reading_towards_what_past_tools_were()
    {
        var prior = new Prior.Normal(700, 4);
        var alone = ConformityRisk.Conformance(722, 3, Window);
        var known = ConformityRisk.Conformance(722, 3, Window, prior);
        Assert.True(known > alone);
        // By hand: posterior mean 700 + 22·16/25 = 714.08, deviation √(9·16/25) = 2.4
        Assert.Equal(Normal.Cdf((721 - 714.08) / 2.4) - Normal.Cdf((679 - 714.08) / 2.4), known, 1e-13);
        Assert.Equal(alone, ConformityRisk.Conformance(722, 3, Window, new Prior.Normal(700, 1e7)), 1e-6);
    }

    // A gamma of large shape is nearly normal: two code paths, one answer
    [Fact]
    public void A_posterior_by_integration_agrees_with_the_closed_form()
    {
        var gamma = new Prior.Gamma(1_000, 0.01);
        var normal = new Prior.Normal(gamma.Mean, gamma.StandardDeviation);
        var limits = ToleranceLimits.AtMost(10.4);
        Assert.Equal(ConformityRisk.Conformance(10.3, 0.2, limits, normal), ConformityRisk.Conformance(10.3, 0.2, limits, gamma), 0.01);
        Assert.Equal(1, ConformityRisk.Conformance(10.3, 0.2, ToleranceLimits.AtMost(1e3), gamma), 1e-12);
    }

    [Fact]
    public void A_wider_band_accepts_less_and_rejects_more()
    {
        var prior = new Prior.Normal(703, 6);
        var risks = Enumerable.Range(0, 10).Select(w => ConformityRisk.Global(Window, Window.Inward(w)!.Value, 2, prior)).ToArray();
        for (var i = 1; i < risks.Length; i++)
            Assert.True(risks[i].FalseAccept < risks[i - 1].FalseAccept && risks[i].FalseReject > risks[i - 1].FalseReject);
    }

    [Fact]
    public void A_held_risk_is_reached_and_not_passed()
    {
        var prior = new Prior.Normal(703, 6);
        var held = Assert.IsType<HeldRisk.Band>(HeldRisk.Global(Window, 3, prior, 0.0001));
        Assert.True(held.Width > 0);
        Assert.Equal(0.0001, ConformityRisk.Global(Window, held.Accepted, 3, prior).FalseAccept, 1e-12);
        Assert.Equal(0, Assert.IsType<HeldRisk.Band>(HeldRisk.Global(Window, 3, prior, 0.05)).Width);
        var specific = Assert.IsType<HeldRisk.Band>(HeldRisk.Specific(ToleranceLimits.AtMost(721), 3, 0.05));
        Assert.Equal(3 * 1.6448536269514722, specific.Width, 1e-9);
    }

    [Fact]
    public void A_window_narrower_than_the_uncertainty_holds_no_specific_risk()
    {
        var coarse = Assert.IsType<HeldRisk.TooCoarse>(HeldRisk.Specific(Window, 21, 0.05));
        Assert.Equal(2 * Normal.Tail(1), coarse.Least, 1e-12);
        Assert.Null(new AcceptanceRule.ByU().Accepted(Window, 11));
    }

    [Fact]
    public void Past_tools_give_a_prior_or_the_reason_why_not()
    {
        double[] readings = [690, 694, 697, 699, 700, 701, 703, 704, 708, 712]; // invented
        var known = Assert.IsType<PastTools.Known>(PastTools.Of(readings, 3));
        Assert.Equal(700.8, known.Prior.Mean, 1e-12);
        Assert.Equal(Math.Sqrt(373.6 / 9 - 9), known.Prior.StandardDeviation, 1e-12);
        Assert.Equal(new PastTools.TooFew(9), PastTools.Of(readings.AsSpan(1), 3));
        Assert.IsType<PastTools.Hidden>(PastTools.Of(readings, 7));
    }

    [Fact]
    public void What_no_caller_may_give_throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ToleranceLimits.Between(2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ToleranceLimits.AtLeast(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => ConformityRisk.Conformance(1, 0, Window));
        Assert.Throws<ArgumentOutOfRangeException>(() => HeldRisk.Specific(Window, 1, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Prior.Normal(0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Prior.Gamma(0.5, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new AcceptanceRule.ByPartOfU(-0.1));
    }
}
