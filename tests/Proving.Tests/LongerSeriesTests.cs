using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Proving.Tests;

public sealed class LongerSeriesTests
{
    // Oracle: tools drawn from what the series leaves open, a new series drawn from each and judged; 3,000 draws, four standard errors
    [Fact]
    public void The_chance_of_a_longer_series_is_the_share_of_new_series_that_decide()
    {
        var series = Series.Of(679, 721, 4, 12, Series.With(699.4, 6.2, 12));
        var longer = Assert.Single(ProofDecision.Decide(series).Reasons.OfType<Reason.LongerSeriesWouldDecide>());
        var random = new Random(7);
        const int Draws = 3_000;
        var decided = 0;
        for (var i = 0; i < Draws; i++)
        {
            var chi = Enumerable.Range(0, 11).Sum(_ => Math.Pow(Normal.Quantile(random.NextDouble() + 1e-12), 2));
            var sigma = 6.2 / Math.Sqrt(chi / 11);
            var mean = 699.4 + sigma / Math.Sqrt(12) * Normal.Quantile(random.NextDouble() + 1e-12);
            var next = series with
            {
                PlannedRuns = longer.Runs,
                Peaks = Series.Draw(random, mean, sigma, longer.Runs),
                Systematic = series.Systematic with { RandomExpanded = Pressure.FromBar(100) }, // the first rule is left out of the chance
            };
            if (ProofDecision.Decide(next).Conformity != Conformity.Undecided)
                decided++;
        }

        Assert.Equal(longer.Chance, (double)decided / Draws, 4 * Math.Sqrt(0.2 * 0.8 / Draws));
        Assert.InRange(longer.Chance, 0.5, 1);
    }
}
