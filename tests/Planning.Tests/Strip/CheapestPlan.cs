using CsCheck;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Tests.Strip;

/// <summary>The planner against trying every order and every way, on small models at random.</summary>
public sealed class CheapestPlan
{
    [Fact]
    public void Costs_what_trying_every_order_and_every_way_finds() =>
        RandomJobs.WithNodes(2, 8).ForAll(Compare, iter: 4_000, print: RandomJobs.Print);

    [Fact]
    public void Costs_so_too_where_every_part_has_several_ways_tools_and_postures() =>
        RandomJobs.Choosy(3, 7).ForAll(Compare, iter: 1_500, print: RandomJobs.Print);

    [Fact]
    public void The_random_jobs_are_worth_trying()
    {
        var answers = new List<StripAnswer>();
        RandomJobs.WithNodes(2, 7).ForAll(job => answers.Add(StripPlanner.Plan(job)), iter: 500);
        var plans = answers.OfType<StripAnswer.Planned>().Select(a => a.Plan).ToList();
        Assert.InRange(plans.Count, 200, 499);
        Assert.True(plans.Count(p => p.Steps.Length >= 3) > 80);
        Assert.True(plans.Count(p => p.Renewals.Any(r => r.Cause is RenewalCause.Destroyed)) > 20);
        Assert.True(plans.Count(p => p.Renewals.Any(r => r is { Cause: RenewalCause.Rule, By: not null })) > 20);
        Assert.True(plans.Count(p => p.CostParts.Risk.Amount > 0) > 20);
        Assert.True(plans.Count(p => p.Steps.Any(s => s.Way > 0)) > 60);
    }

    [Fact]
    public void Cost_is_what_the_steps_add_up_to() => RandomJobs.WithNodes(2, 8).ForAll(
        job =>
        {
            if (StripPlanner.Plan(job) is not StripAnswer.Planned { Plan: var plan })
                return;
            var minutes = plan.Steps.Aggregate(TimeSpan.Zero, (sum, s) => sum + s.Time + s.ChangeTime);
            Assert.Equal(job.Rates.CostOf(minutes), plan.CostParts.Labour);
            Assert.Equal(plan.CostParts.Labour + plan.CostParts.Renewals + plan.CostParts.Risk, plan.Cost);
            Assert.Equal(minutes.TotalSeconds, plan.LikelyTime.TotalSeconds, tolerance: 1e-6);
            Assert.Equal(plan.Renewals.Length, plan.Renewals.DistinctBy(r => r.Part).Count());
            Assert.DoesNotContain(plan.Renewals, r => job.RenewalsOwed.Contains(r.Part));
        },
        iter: 500, print: RandomJobs.Print);

    [Fact]
    public void One_more_target_is_never_cheaper() => RandomJobs.WithNodes(3, 9).ForAll(
        job =>
        {
            if (StripPlanner.Plan(job) is not StripAnswer.Planned { Plan: var few })
                return;
            foreach (var part in job.Model.Parts.Select(p => p.Id))
            {
                if (StripPlanner.Plan(job with { Targets = job.Targets.Add(part) }) is StripAnswer.Planned { Plan: var more })
                    Assert.True(more.Cost.Amount >= few.Cost.Amount - 1e-5m);
            }
        },
        iter: 300, print: RandomJobs.Print);

    /// <summary>Stopped at any point and planned again, the rest costs what the first plan had left: it was the best for the rest too.</summary>
    [Fact]
    public void Planning_again_half_way_costs_what_was_left() => RandomJobs.WithNodes(3, 9).ForAll(
        job =>
        {
            if (StripPlanner.Plan(job) is not StripAnswer.Planned { Plan: var whole })
                return;
            for (var done = 0; done <= whole.Steps.Length; done++)
            {
                var now = Replan.AfterSteps(job, whole, done);
                var rest = Assert.IsType<StripAnswer.Planned>(StripPlanner.Plan(now)).Plan;
                Assert.Equal((double)CostFrom(job, whole, done), (double)rest.Cost.Amount, tolerance: 1e-5);
            }
        },
        iter: 300, print: RandomJobs.Print);

    [Fact]
    public void Stopped_early_it_states_an_honest_gap() => Gen.Select(RandomJobs.WithNodes(5, 12, begun: false), Gen.Int[1, 6]).ForAll(
        (job, limit) =>
        {
            if (StripPlanner.Plan(job) is not StripAnswer.Planned { Plan: var best })
                return;
            var early = Assert.IsType<StripAnswer.Planned>(StripPlanner.Plan(job with { StateLimit = limit })).Plan;
            Assert.True(early.Cost.Amount >= best.Cost.Amount - 1e-5m);
            Assert.True(early.Cost.Amount <= best.Cost.Amount + early.Gap.Amount + 1e-5m);
            Assert.Equal(early.ProvenOptimal, early.Gap.Amount == 0m);
        },
        iter: 1_000);

    [Fact]
    public void Same_job_same_plan() => RandomJobs.WithNodes(3, 9).ForAll(
        job =>
        {
            if (StripPlanner.Plan(job) is StripAnswer.Planned { Plan: var first } && StripPlanner.Plan(job) is StripAnswer.Planned { Plan: var second })
                Assert.Equal(first.Steps.Select(s => (s.Node, s.Way)), second.Steps.Select(s => (s.Node, s.Way)));
        },
        iter: 200);

    private static void Compare(StripJob job)
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
    }

    /// <summary>What is left to pay from a step on, straight from the plan's steps and the model's prices.</summary>
    private static decimal CostFrom(StripJob job, StripPlan plan, int step)
    {
        decimal Price(NodeId id) => job.Model.FindPart(id) is { Price: { } price } part ? part.Count * price.Amount : 0m;
        return plan.Steps.Skip(step).Sum(s =>
            job.Rates.CostOf(s.Time + s.ChangeTime).Amount
            + s.Renewals.Sum(r => Price(r.Part))
            + (s.Way is { } way && job.Model.FindPart(s.Node)!.WaysOff[way].Risk is { } risk ? (decimal)risk.Chance * risk.Damages.Sum(Price) : 0m));
    }
}
