using CsCheck;
using Ramwright.Planning.Strip;

namespace Ramwright.Planning.Tests.Strip;

public sealed class CheapestPlan
{
    [Fact]
    public void Costs_what_trying_every_order_and_every_way_finds() => RandomJobs.WithNodes(2, 7).Sample(
        job =>
        {
            var least = BruteForce.LeastCost(job);
            if (StripPlanner.Plan(job) is not StripAnswer.Planned { Plan: var plan })
                Assert.Null(least);
            else
            {
                Assert.NotNull(least);
                Assert.True(plan.ProvenOptimal);
                Assert.Equal(0m, plan.Gap.Amount);
                Assert.Equal((double)least.Value, (double)plan.Cost.Amount, tolerance: 1e-5);
            }
        },
        iter: 3_000, print: RandomJobs.Print);
}
