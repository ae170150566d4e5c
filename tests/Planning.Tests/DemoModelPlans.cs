using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Rebuild;
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

    /// <summary>Where a part has several ways off, what else comes off anyway decides, as it would at the bench.</summary>
    [Theory]
    [InlineData("corrie-85", "wiper", "wiper", 0)] // hooked out past the rod
    [InlineData("corrie-85", "wiper cap-nut", "wiper", 1)] // the cap nut is off: driven out from behind, no risk to the rod
    [InlineData("corrie-85", "motor-brushes", "motor-brushes", 0)]
    [InlineData("corrie-85", "motor-brushes motor", "motor-brushes", 1)]
    [InlineData("corrie-85", "relief-seat", "relief-seat", 0)] // pulled through the spring bore
    [InlineData("corrie-85", "relief-seat relief-body", "relief-seat", 1)] // driven out from the front
    [InlineData("corrie-85", "ram-rod", "ram-rod", 0)] // rings off before the joint is heated: the hot way costs a guide ring
    [InlineData("corrie-85", "relief-cap", "relief-cap", 0)] // cold
    [InlineData("corrie-85", "return-spring-outer", "cap-nut", 0)] // hook wrench and spring compressor
    [InlineData("corrie-85", "return-spring-outer eccentric-bearing", "cap-nut", 1)] // the press is in use for the bearing
    [InlineData("corrie-120", "hose", "hose", 0)] // drawn, not cut
    [InlineData("corrie-120", "wiper", "wiper", 0)]
    [InlineData("corrie-120", "wiper gland-nut", "wiper", 1)]
    [InlineData("skerry-52", "wiper", "wiper", 0)]
    [InlineData("skerry-52", "wiper gland-nut", "wiper", 1)]
    [InlineData("skerry-52", "relief-seat", "relief-seat", 0)]
    public void Takes_the_way_that_fits_the_rest_of_the_work(string id, string targets, string part, int way)
    {
        var plan = DemoModels.Plan(DemoModels.Read(id), [.. Models.Ids(targets)]);
        Assert.Equal(way, plan.Steps.Single(s => s.Node.Value == part).Way);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Names_the_tools_of_the_ways_used_in_the_order_of_use_and_charges_each_taking_up(string id)
    {
        var model = DemoModels.Read(id);
        var plan = DemoModels.Plan(model, DemoModels.Removable(id));
        var tools = plan.Steps.Select(s => s.Way is { } way ? model.FindPart(s.Node)!.WaysOff[way].Tool : model.FindState(s.Node)!.Reach!.Tool).OfType<ToolId>().ToList();
        Assert.Equal(tools.Distinct(), plan.Tools);
        Assert.All(plan.Tools, tool => Assert.NotNull(model.FindTool(tool)));
        var (inHand, posture) = ((ToolId?)null, (PostureId?)null);
        foreach (var step in plan.Steps)
        {
            var tool = step.Tool is { } t && t != inHand ? model.FindTool(t)!.Change : null;
            var turn = step.Posture is { } p && p != posture ? model.Postures.Single(x => x.Id == p).Change : null;
            Assert.Equal((tool ?? TimeSpan.Zero) + (turn ?? TimeSpan.Zero), step.ChangeTime);
            (inHand, posture) = (step.Tool ?? inHand, step.Posture ?? posture);
        }
    }
}
