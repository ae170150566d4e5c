using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Proving.Tests;

/// <summary>How often the rule is wrong, by seeded simulation of normal tools. The bound is 1 − γ = 5 %, and three standard errors of the simulation.</summary>
public sealed class FalseVerdicts
{
    private const int Series4000 = 4_000;
    private static readonly double Bound = 0.05 + 3 * Math.Sqrt(0.05 * 0.95 / Series4000);

    [Theory]
    [InlineData(12)]
    public void A_tool_just_bad_enough_conforms_in_no_more_than_one_series_of_twenty(int runs)
    {
        // σ = 1 bar; the guarded lower limit, 604 bar, lies where exactly 95 % of runs are above it; the upper limit is far
        var share = ShareOf(Conformity.Conforms, runs, mean: 604 + Normal.Quantile(0.95), sigma: 1, step: 0, systematic: 4);
        Assert.True(share <= Bound, $"{share:P2} of the series conform");
        Assert.True(share > 0.03, $"only {share:P2}: the rule is stricter than it says");
    }

    // Readings rounded to steps of half to five standard deviations, with the tool at three places between two steps
    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void Coarse_steps_do_not_let_more_through(double step)
    {
        for (var phase = 0; phase < 3; phase++)
        {
            var share = ShareOf(Conformity.Conforms, 12, mean: 604 + Normal.Quantile(0.95), sigma: 1, step, systematic: 4, shift: step * phase / 3, series: 400, seed: phase);
            Assert.True(share <= 0.05 + 3 * Math.Sqrt(0.05 * 0.95 / 400), $"{share:P2} of the series conform at phase {phase}");
        }
    }

    [Fact]
    public void A_tool_just_good_enough_is_refused_for_its_shares_in_no_more_than_one_series_of_twenty()
    {
        // the lower limit moved outward, 596 bar, lies where exactly 95 % of runs are above it; a wide allowance for single runs keeps the first rule out
        var share = ShareOf(Conformity.DoesNotConform, 12, mean: 596 + Normal.Quantile(0.95), sigma: 1, step: 0, systematic: 4, random: 50);
        Assert.True(share <= Bound, $"{share:P2} of the series are refused");
        Assert.True(share > 0.03, $"only {share:P2}: the rule is milder than it says");
    }

    private static double ShareOf(Conformity which, int runs, double mean, double sigma, double step, double systematic, double random = 0, double shift = 0, int series = Series4000, int seed = 20_240_917)
    {
        var draws = new Random(seed);
        var by = Pressure.FromBar(shift);
        var count = 0;
        for (var i = 0; i < series; i++)
        {
            var drawn = Series.Of(600, 900, systematic, runs) with
            {
                Peaks = Series.Draw(draws, mean + shift, sigma, runs, step),
                Limits = new(Pressure.FromBar(600) + by, Pressure.FromBar(900) + by),
                Systematic = new(Pressure.FromBar(systematic), Pressure.FromBar(systematic), Pressure.FromBar(random)),
                Resolution = step > 0 ? Pressure.FromBar(step) : null,
            };
            if (ProofDecision.Decide(drawn).Conformity == which)
                count++;
        }

        return (double)count / series;
    }
}
