using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;
using static Ramwright.Planning.Tests.Models;

namespace Ramwright.Planning.Tests.Strip;

public sealed class WhatAPlanSays
{
    private static StripJob Job(ServiceModel model, string targets) => new() { Model = model, Rates = Models.Rates, Targets = Ids(targets) };

    private static StripPlan Plan(StripJob job) => Assert.IsType<StripAnswer.Planned>(StripPlanner.Plan(job)).Plan;

    private static StripPlan Plan(ServiceModel model, string targets) => Plan(Job(model, targets));

    [Fact]
    public void Why_each_part_comes_off()
    {
        var plan = Plan(Of(Part("cover", Way(1)), Part("ring", Way(1, "cover")), Part("seal", Way(1, "cover ring"))), "seal");
        Assert.Equal([Id("ring")], Assert.IsType<StepReason.InTheWayOf>(plan.Steps[0].Why).Nodes);
        Assert.Equal([Id("seal")], Assert.IsType<StepReason.InTheWayOf>(plan.Steps[1].Why).Nodes);
        Assert.IsType<StepReason.Target>(plan.Steps[2].Why);
    }

    [Fact]
    public void What_is_renewed_each_part_once_and_why()
    {
        var model = Of(
            Part("cap", Way(1) with { Destroys = Ids("wiper"), Disturbs = Ids("seal frame") }),
            Part("ram", Way(1, "cap") with { Disturbs = Ids("seal") }),
            Part("seal", Way(1, "ram")) with { Renew = RenewalRule.WhenDisturbed, Count = 2, Price = new Money(3m, "EUR") },
            Part("wiper", Way(1, "cap")) with { Renew = RenewalRule.Never, Price = new Money(5m, "EUR") },
            Part("filter", Way(1)) with { Renew = RenewalRule.Always, Price = new Money(4m, "EUR") },
            Part("frame"));
        var plan = Plan(model, "seal filter");
        Assert.Equal(
            "filter 1 Rule, seal 2 Disturbed cap, wiper 1 Destroyed cap",
            string.Join(", ", plan.Renewals.OrderBy(r => r.Part.Value, StringComparer.Ordinal).Select(r => $"{r.Part} {r.Count} {r.Cause} {r.By}".TrimEnd())));
        Assert.Equal(15m, plan.CostParts.Renewals.Amount);
    }

    [Fact]
    public void A_gentle_way_is_worth_its_minutes_when_the_quick_one_spoils_a_dear_part()
    {
        var model = Of(
            Part("cap", Way(2) with { Destroys = Ids("wiper") }, Way(9)),
            Part("wiper", Way(1, "cap")) with { Price = new Money(30m, "EUR") });
        Assert.Equal(1, Plan(model, "cap").Steps[0].Way);
        Assert.Equal(0, Plan(Job(model, "cap") with { RenewalsOwed = [.. Ids("wiper")] }).Steps[0].Way);
    }

    [Fact]
    public void Inspections_tools_states_and_oil_on_the_way()
    {
        var look = new Inspection { Id = new InspectionId("scores"), Look = "look along the rod", Reuse = "no score" };
        var model = Of(
            [State("oil-drained", 4) with { Loses = Volume.FromMillilitres(95) }, State("never-mind", 1)],
            Part("cap", Way(1, "oil-drained", tool: "hook")),
            Part("ram", Way(1, "cap", tool: "cup")) with { Inspections = [look] },
            Part("seal", Way(1, "ram", tool: "hook")));
        var plan = Plan(model, "seal");
        Assert.Equal([new PassedInspection(Id("ram"), new InspectionId("scores"), 2)], plan.Inspections);
        Assert.Equal([new ToolId("hook"), new ToolId("cup")], plan.Tools);
        Assert.Equal([Id("oil-drained")], plan.States);
        Assert.Equal(95, plan.OilLost.Millilitres, tolerance: 1e-9);
        Assert.Equal(TimeSpan.FromMinutes(8.5), plan.LikelyTime); // 7 min of steps, three times a tool at half a minute
    }

    [Fact]
    public void Cautions_stand_at_the_step_they_guard()
    {
        var caution = new Caution(CautionLevel.Warning, "stored-spring-energy", "1,450 N behind the cap");
        var plan = Plan(Of(Part("cap", Way(1) with { Cautions = [caution] }), Part("ram", Way(1, "cap"))), "ram");
        Assert.Equal([caution], plan.Steps[0].Cautions);
        Assert.Empty(plan.Steps[1].Cautions);
    }

    [Theory]
    [InlineData(HoldKind.Thread, ThreadHand.Right, "Unscrew the cap nut")]
    [InlineData(HoldKind.Thread, ThreadHand.Left, "Unscrew the cap nut: left-hand thread, turn clockwise")]
    [InlineData(HoldKind.PressFit, null, "Press out the cap nut")]
    [InlineData(HoldKind.Snap, null, "Prise out the cap nut")]
    [InlineData(HoldKind.None, null, "Lift off the cap nut")]
    public void Says_in_words_how_a_part_comes_off(HoldKind kind, ThreadHand? hand, string words)
    {
        var model = Of(Part("cap-nut", Way(1) with { HeldBy = new Holding(kind, hand) }));
        Assert.Equal(words, Plan(model, "cap-nut").Steps[0].Operation);
    }

    [Theory]
    [InlineData(1, "Lift off the clip")]
    [InlineData(2, "Lift off the clip (both)")]
    [InlineData(8, "Lift off the clip (all 8)")]
    public void A_group_comes_off_whole(int count, string words) =>
        Assert.Equal(words, Plan(Of(Part("clip", Way(1)) with { Count = count }), "clip").Steps[0].Operation);

    [Fact]
    public void Takes_the_models_own_words_with_a_capital() =>
        Assert.Equal("Shake it out", Plan(Of(Part("ball", Way(1) with { Operation = "shake it out" })), "ball").Steps[0].Operation);

    [Fact]
    public void Isolation_comes_first_even_where_a_model_forgets_to_ask_for_it()
    {
        var model = Of([State("battery-removed", 0.3, isolates: true)], Part("clip", Way(0.1)), Part("cover", Way(1, "clip")));
        Assert.Equal(Id("battery-removed"), Plan(model, "cover").Steps[0].Node);
    }

    [Fact]
    public void What_must_come_off_to_isolate_does_not_wait_for_it()
    {
        var model = Of([State("battery-removed", 0.3, "clip", isolates: true)], Part("clip", Way(0.1)), Part("cover", Way(1)));
        Assert.Equal([Id("clip"), Id("battery-removed"), Id("cover")], Plan(model, "cover").Steps.Select(s => s.Node));
    }

    [Fact]
    public void A_target_that_nothing_frees_is_named_with_what_it_lacks()
    {
        var model = Of(Part("frame"), Part("pin", Way(1, "frame")), Part("jaw", Way(1, "pin")));
        var lacking = Assert.Single(Assert.IsType<StripAnswer.NoWay>(StripPlanner.Plan(Job(model, "jaw"))).Targets);
        Assert.Equal((Id("jaw"), Id("frame")), (lacking.Target, Assert.Single(lacking.Lacking)));
    }

    [Fact]
    public void Parts_that_wait_for_each_other_are_named()
    {
        var model = Of(Part("a", Way(1, "b")), Part("b", Way(1, "a")), Part("c", Way(1, "a")));
        var lacking = Assert.Single(Assert.IsType<StripAnswer.NoWay>(StripPlanner.Plan(Job(model, "c"))).Targets);
        Assert.Equal(Ids("a b"), lacking.Lacking);
    }

    [Fact]
    public void Of_two_plans_at_one_price_the_shorter_is_taken()
    {
        var model = Of(Part("x", Way(0)), Part("y", Way(1, "x"), Way(1)));
        Assert.Single(Plan(model, "y").Steps);
    }

    [Fact]
    public void A_bad_inspection_adds_its_parts_and_renews_what_it_says()
    {
        var look = new Inspection { Id = new InspectionId("scores"), Look = "look", Reuse = "none", AddsWhenBad = Ids("bush"), RenewsWhenBad = Ids("ram bush") };
        var model = Of(Part("cap", Way(1)), Part("ram", Way(1, "cap")) with { Inspections = [look] }, Part("bush", Way(2, "ram")));
        var job = Job(model, "ram");
        var after = Replan.AfterInspection(Replan.AfterSteps(job, Plan(job), 2), [], Id("ram"), new InspectionId("scores"));
        Assert.Equal([(Id("ram"), RenewalCause.FailedInspection), (Id("bush"), RenewalCause.FailedInspection)], after.Renewals.Select(r => (r.Part, r.Cause)));
        Assert.Equal([Id("bush")], Plan(after.Job).Steps.Select(s => s.Node));
    }

    [Fact]
    public void Nothing_to_do_is_a_plan_without_steps()
    {
        var plan = Plan(Job(Of(Part("a", Way(1))), "a") with { Done = [.. Ids("a")] });
        Assert.Empty(plan.Steps);
        Assert.Equal((0m, true), (plan.Cost.Amount, plan.ProvenOptimal));
    }
}
