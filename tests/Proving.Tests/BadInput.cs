using Ramwright.Metrology.Quantities;

namespace Ramwright.Proving.Tests;

/// <summary>What must never come out as 'conforms'.</summary>
public sealed class BadInput
{
    [Fact]
    public void No_reading_or_one_is_undecided()
    {
        Assert.IsType<Reason.NoRun>(Assert.Single(ProofDecision.Decide(Series.Of(679, 721, 4, 12)).Reasons));
        Assert.Equal(Conformity.Undecided, ProofDecision.Decide(Series.Of(679, 721, 4, 2, 700)).Conformity);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void What_is_no_number_is_no_pressure(double bar) => Assert.Throws<ArgumentOutOfRangeException>(() => Pressure.FromBar(bar));

    [Theory]
    [InlineData(721, 679)]
    [InlineData(700, 700)]
    public void Limits_upside_down_are_no_limits(double low, double high) => Assert.Throws<ArgumentOutOfRangeException>(() => Series.Of(low, high, 4, 12));

    [Theory]
    [InlineData(1, 0.95)]
    [InlineData(0, 0.95)]
    [InlineData(double.NaN, 0.95)]
    [InlineData(0.95, 1)]
    [InlineData(0.95, double.NaN)]
    public void A_share_of_all_or_nothing_is_refused(double coverage, double confidence) =>
        Assert.Throws<ArgumentException>(() => ProofDecision.Decide(Series.Of(679, 721, 4, 12, Series.With(700, 1, 12)) with { Coverage = coverage, Confidence = confidence }));

    [Fact]
    public void A_negative_uncertainty_or_step_is_refused()
    {
        var series = Series.Of(679, 721, 4, 12, Series.With(700, 1, 12));
        Assert.Throws<ArgumentException>(() => ProofDecision.Decide(series with { Systematic = SystematicUncertainty.Symmetric(Pressure.FromBar(-1)) }));
        Assert.Throws<ArgumentException>(() => ProofDecision.Decide(series with { Resolution = Pressure.FromBar(0) }));
    }
}
