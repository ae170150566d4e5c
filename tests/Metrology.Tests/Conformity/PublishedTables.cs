using Ramwright.Metrology.Conformity;
using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Tests.Conformity;

public sealed class PublishedTables
{
    // JCGM 106:2012, 7.3.3, Table 1 (from memory): z for a conformance probability with one limit
    [Theory]
    [InlineData(0.80, 0.84)]
    [InlineData(0.90, 1.28)]
    [InlineData(0.95, 1.64)]
    [InlineData(0.99, 2.33)]
    [InlineData(0.999, 3.09)]
    public void Conformance_probability_of_JCGM_106(double probability, double z)
    {
        var exact = Normal.Quantile(probability);
        Assert.Equal(z, exact, 0.0051); // 1.6449 is printed 1.64
        Assert.Equal(probability, ConformityRisk.Conformance(10 - 2 * exact, 2, ToleranceLimits.AtMost(10)), 1e-14);
        Assert.Equal(probability, ConformityRisk.Conformance(10 + 2 * exact, 2, ToleranceLimits.AtLeast(10)), 1e-14);
    }

    // JCGM 106:2012, 9.5.4: precision ball bearings, runout at most 2 µm, gamma with mean 1 µm, u 0.25 µm
    [Fact]
    public void Ball_bearings_of_JCGM_106()
    {
        var limits = ToleranceLimits.AtMost(2);
        var prior = new Prior.Gamma(4, 0.25);
        var simple = ConformityRisk.Global(limits, limits, 0.25, prior);
        Assert.Equal(0.042, 1 - simple.Conforming, 0.0005);
        Assert.Equal(0.008, simple.FalseAccept, 0.0005);
        Assert.Equal(0.04238011199168396, 1 - simple.Conforming, 1e-12);
        Assert.Equal(0.008019111884287174, simple.FalseAccept, 1e-12);
        Assert.Equal(0.017444569229783605, simple.FalseReject, 1e-12);
        var held = Assert.IsType<HeldRisk.Band>(HeldRisk.Global(limits, 0.25, prior, 0.001));
        Assert.Equal(1.67, held.Accepted.High, 0.005);
        Assert.Equal(1.6718287715559588, held.Accepted.High, 1e-9);
        var guarded = ConformityRisk.Global(limits, held.Accepted, 0.25, prior);
        Assert.Equal(0.001, guarded.FalseAccept, 1e-12);
        Assert.Equal(0.07549387610249778, guarded.FalseReject, 1e-9);
    }

    // D. Deaver, NCSL 1993: limits ± L process deviations, accepted ± k·L; 'TUR' there is process over measurement deviation. Row 2 prints 0.0025 for 0.002445
    [Fact]
    public void Consumer_and_producer_risk_of_Deaver() => Assert.All(PublishedCsv.Rows("pfa-pfr-deaver.csv"), row =>
    {
        var limit = row.Number("specification_limit_in_process_sd");
        var k = row.Number("guard_band_factor_k");
        var risk = ConformityRisk.Global(ToleranceLimits.Between(-limit, limit), ToleranceLimits.Between(-k * limit, k * limit), 1 / row.Number("tur_process_sd_over_measurement_sd"), new Prior.Normal(0, 1));
        Assert.Equal(row.Number("pfa_recomputed"), risk.FalseAccept, 6e-9);
        Assert.Equal(row.Number("pfr_recomputed"), risk.FalseReject, 6e-9);
        Assert.Equal(row.Number("published_pfa"), risk.FalseAccept, row["published_pfa"] == "0.0025" ? 0.0001 : PublishedCsv.HalfLastDigit(row["published_pfa"]));
        if (row.Has("published_pfr"))
            Assert.Equal(row.Number("published_pfr"), risk.FalseReject, PublishedCsv.HalfLastDigit(row["published_pfr"]));
    });

    // NCSL International RP-19 (draft): ± 1, no guard band, measurement deviation a quarter of the process's; the source's last two digits are its own noise
    [Fact]
    public void Risk_with_and_without_condition_of_RP_19() => Assert.All(PublishedCsv.Rows("pfa-unconditional-conditional-rp19.csv"), row =>
    {
        var process = 1 / Normal.Quantile(0.5 * (1 + row.Number("in_tolerance_probability")));
        var limits = ToleranceLimits.Between(-1, 1);
        var risk = ConformityRisk.Global(limits, limits, process / row.Number("process_sd_over_measurement_sd"), new Prior.Normal(0, process));
        Assert.Equal(row.Number("in_tolerance_probability"), risk.Conforming, 1e-12);
        Assert.Equal(row.Number("pfa_percent_recomputed"), 100 * risk.FalseAccept, 6e-9);
        Assert.Equal(row.Number("conditional_pfa_percent_recomputed"), 100 * risk.FalseAcceptOfAccepted, 6e-9);
        Assert.Equal(row.Number("published_pfa_percent"), 100 * risk.FalseAccept, 5e-7);
        Assert.Equal(row.Number("published_conditional_pfa_percent"), 100 * risk.FalseAcceptOfAccepted, 6e-7);
    });

    // ANSI/NCSL Z540.3 Handbook (2009), method 6, after M. Dobbert, NCSLI 2008: false accept at the process for which it is largest
    [Fact]
    public void Worst_false_accept_by_test_uncertainty_ratio() => Assert.All(PublishedCsv.Rows("guard-band-method-6-multiplier.csv"), row =>
    {
        var u = 0.5 / row.Number("tur");
        var process = 1 / Normal.Quantile(0.5 * (1 + row.Number("itp_of_worst_case_pfa_percent") / 100));
        var limits = ToleranceLimits.Between(-1, 1);
        var risk = ConformityRisk.Global(limits, limits, u, new Prior.Normal(0, process));
        Assert.Equal(row.Number("worst_case_pfa_without_guard_band_percent"), 100 * risk.FalseAccept, 6e-6);
    });

    // ILAC-G8:09/2019, Table 1 (from memory): specific risk of a reading just at the acceptance limit, w = r·U
    [Theory]
    [InlineData(3, 1e-6)]
    [InlineData(1.5, 0.0016)]
    [InlineData(1, 0.025)]
    [InlineData(0.83, 0.05)]
    [InlineData(0, 0.50)]
    public void Specific_risk_by_guard_band_of_ILAC_G8(double ratio, double most)
    {
        var limits = ToleranceLimits.AtMost(10);
        AcceptanceRule rule = ratio == 0 ? new AcceptanceRule.Simple() : ratio == 1 ? new AcceptanceRule.ByU() : new AcceptanceRule.ByPartOfU(ratio);
        var accepted = rule.Accepted(limits, 0.5)!.Value;
        var risk = ConformityRisk.SpecificFalseAccept(accepted.High, 0.5, limits);
        Assert.InRange(risk, 0.8 * Normal.Tail(2 * ratio), most);
        Assert.Equal(Normal.Tail(2 * ratio), risk, 1e-14);
    }
}
