using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Tests;

/// <summary>The models of the demo shop, planned apart and together again.</summary>
public sealed class DemoModelPlans
{
    public static TheoryData<string> Ids => ["corrie-85", "corrie-120", "skerry-52"];

    [Theory]
    [MemberData(nameof(Ids))]
    public void Each_part_has_a_proven_plan_that_makes_the_tool_safe_first_and_a_way_back(string id)
    {
        var model = DemoModels.Read(id);
        foreach (var part in model.Parts.Where(p => !p.WaysOff.IsEmpty))
        {
            var plan = DemoModels.Plan(model, part.Id);
            Assert.True(plan.ProvenOptimal, part.Id.Value);
            Assert.Equal("battery-removed", plan.Steps[0].Node.Value);
            Assert.InRange(plan.LikelyTime.TotalMinutes, 0.5, 60);
            Assert.True(plan.SafeTime > plan.LikelyTime);
            Assert.NotEmpty(DemoModels.Rebuild(model, plan).Steps);
        }
    }

    [Theory]
    [InlineData("corrie-85", "seal-ram", "hook-wrench-62", "backup-ram wiper seal-fill-plug")]
    public void Resealing_the_ram_counts_the_shims_takes_the_right_tool_and_renews_what_it_disturbs(string id, string target, string tool, string renewed)
    {
        var plan = DemoModels.Plan(DemoModels.Read(id), new NodeId(target));
        Assert.Contains(plan.Steps, s => s.Node.Value == "stop-shims");
        Assert.Contains(new ToolId(tool), plan.Tools);
        Assert.Contains(plan.Renewals, r => r.Part.Value == target);
        Assert.All(Models.Ids(renewed), part => Assert.Contains(plan.Renewals, r => r.Part == part));
        Assert.True(plan.Steps.Single(s => s.Node.Value == "ram").Time > TimeSpan.Zero);
        Assert.Contains(plan.Steps.SelectMany(s => s.Cautions), c => c.Hazard == "stored-spring-energy");
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_full_reseal_is_proven_and_goes_together_with_as_much_oil_as_came_out(string id)
    {
        var model = DemoModels.Read(id);
        var plan = DemoModels.Plan(model, [.. model.Parts.Where(p => p.Renew == RenewalRule.WhenDisturbed && p.Material is not null).Select(p => p.Id)]);
        Assert.True(plan.ProvenOptimal);
        Assert.InRange(plan.LikelyTime.TotalMinutes, 30, 90);
        var back = DemoModels.Rebuild(model, plan);
        Assert.True(back.OilFilled >= plan.OilLost && back.OilFilled.Millilitres <= plan.OilLost.Millilitres + 10);
        Assert.Contains(back.Steps, s => s.Kind == RebuildKind.Bleed);
        var fitted = back.Steps.Select(s => s.Node).ToList();
        Assert.True(fitted.IndexOf(new NodeId("fill-plug")) > fitted.IndexOf(new NodeId("oil-drained")));
        Assert.Equal("battery-removed", back.Steps[^1].Node?.Value);
    }

    [Fact]
    public void The_press_takes_the_cap_nut_once_it_is_in_use()
    {
        var model = DemoModels.Read("corrie-85");
        Assert.Equal(0, WayOf(DemoModels.Plan(model, new NodeId("return-spring-outer")), "cap-nut"));
        Assert.Equal(1, WayOf(DemoModels.Plan(model, new NodeId("return-spring-outer"), new NodeId("eccentric-bearing")), "cap-nut"));
    }

    private static int? WayOf(StripPlan plan, string part) => plan.Steps.Single(s => s.Node.Value == part).Way;
}
