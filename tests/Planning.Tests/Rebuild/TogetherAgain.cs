using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;
using static Ramwright.Planning.Tests.Models;

namespace Ramwright.Planning.Tests.Rebuild;

public sealed class TogetherAgain
{
    /// <summary>An invented ram with its seal, under a cap, behind a plug; oil and battery.</summary>
    private static ServiceModel Tool => Of(
        [
            State("battery-removed", 0.3, isolates: true) with { Undo = new Undo { Text = "put the pack on", Time = TimeSpan.FromMinutes(0.3) } },
            State("oil-drained", 4, "plug") with
            {
                Loses = Volume.FromMillilitres(95),
                Undo = new Undo { Text = "fill to the mark", Kind = UndoKind.Fill, After = Ids("cap"), Before = Ids("plug"), Time = TimeSpan.FromMinutes(5) },
            },
        ],
        Part("plug", Way(0.5, tool: "hex-5") with { HeldBy = new Holding(HoldKind.Thread, ThreadHand.Right) }),
        Part("cap", Way(2.5, "oil-drained", "hook", "up") with { HeldBy = new Holding(HoldKind.Thread, ThreadHand.Left) }) with
        {
            Fit = new Fit { Torque = new TorqueSpec(Torque.FromNewtonMetres(85), 0.05), Lubricant = "thread grease", Bleed = "crack the cap open" },
        },
        Part("ram", Way(1, "cap", posture: "up")) with { Fit = new Fit { Unit = new UnitId("ram-unit") } },
        Part("ram-seal", Way(1, "ram", "pick", "flat")) with
        {
            Renew = RenewalRule.WhenDisturbed,
            Fit = new Fit { Unit = new UnitId("ram-unit"), Orientation = "lip towards the pressure" },
        }) with
    {
        Units = [new MadeUpUnit(new UnitId("ram-unit"), "ram unit") { Time = TimeSpan.FromMinutes(1) }],
    };

    private static RebuildPlan After(ServiceModel model, string target)
    {
        var strip = Assert.IsType<StripAnswer.Planned>(StripPlanner.Plan(new StripJob { Model = model, Rates = Models.Rates, Targets = Ids(target) })).Plan;
        return Assert.IsType<RebuildAnswer.Planned>(RebuildPlanner.Plan(new RebuildJob
        {
            Model = model,
            Rates = Models.Rates,
            Done = [.. strip.Steps.Select(s => s.Node)],
            Renewals = strip.Renewals,
        })).Plan;
    }

    [Fact]
    public void Makes_the_unit_up_before_it_goes_in_and_ends_with_the_battery()
    {
        var plan = After(Tool, "ram-seal");
        Assert.Equal(
            """
            MakeUpUnit Fit the ram
            MakeUpUnit Fit the new ram seal
            FitUnit Fit the ram unit as one
            FitPart Fit and tighten the cap: left-hand thread, turn anticlockwise
            Bleed Crack the cap open
            Fill Fill to the mark
            FitPart Fit and tighten the plug
            UndoState Put the pack on
            """,
            string.Join('\n', plan.Steps.Select(s => $"{s.Kind} {s.Operation}")));
        Assert.Equal(95, plan.OilFilled.Millilitres, tolerance: 1e-9);
        Assert.True(plan.ProvenOptimal);
    }

    [Fact]
    public void Carries_torque_hand_lubricant_orientation_and_what_is_new()
    {
        var steps = After(Tool, "ram-seal").Steps;
        var cap = steps.Single(s => s.Node == Id("cap") && s.Kind is RebuildKind.FitPart);
        Assert.Equal(85, cap.Torque!.Torque.NewtonMetres, tolerance: 1e-9);
        Assert.Equal((ThreadHand.Left, "thread grease"), (cap.Hand, cap.Lubricant));
        var seal = steps.Single(s => s.Node == Id("ram-seal"));
        Assert.Equal("lip towards the pressure", seal.Orientation);
        Assert.Equal([Id("ram-seal")], seal.NewParts);
        Assert.Equal([Id("ram-seal")], steps.Single(s => s.Kind is RebuildKind.FitUnit).NewParts);
    }

    [Fact]
    public void What_was_in_the_way_goes_back_after_what_it_blocked()
    {
        var model = Of(Part("outer", Way(1)), Part("middle", Way(1, "outer")), Part("inner", Way(1, "middle")));
        Assert.Equal([Id("inner"), Id("middle"), Id("outer")], After(model, "inner").Steps.Select(s => s.Node!.Value));
    }

    [Fact]
    public void A_part_spoilt_in_its_place_is_renewed_before_what_spoilt_it_goes_back()
    {
        var model = Of(Part("cap", Way(1) with { Destroys = Ids("wiper") }), Part("wiper", Way(1, "cap")));
        var steps = After(model, "cap").Steps;
        Assert.Equal("Take out the wiper and fit new; Fit the cap", string.Join("; ", steps.Select(s => s.Operation)));
    }

    /// <summary>The ram is on the bench, its seal still on it: the seal is renewed there, not after the ram is back.</summary>
    [Fact]
    public void A_part_spoilt_on_a_unit_that_is_off_is_renewed_on_the_bench_and_its_removal_counted()
    {
        var tool = Tool;
        var model = tool with
        {
            Parts = [.. tool.Parts.Select(p => p.Id == Id("ram") ? p with { WaysOff = [p.WaysOff[0] with { Disturbs = Ids("ram-seal") }] } : p)],
        };
        var steps = After(model, "ram").Steps;
        Assert.Equal(["Fit the ram", "Take out the ram seal and fit new", "Fit the ram unit as one"], steps.Take(3).Select(s => s.Operation));
        Assert.Equal(TimeSpan.FromMinutes(2), steps[1].Time); // a minute to take it out, a minute to fit it
    }

    [Theory]
    [InlineData(null, null, null, 1, 2)]
    [InlineData(4.0, 3.0, 0.5, 4, 0.5)]
    public void Priming_with_its_oil_and_bleeding_take_their_minutes(double? prime, double? fill, double? bleed, double primed, double bled)
    {
        static TimeSpan? Time(double? minutes) => minutes is { } m ? TimeSpan.FromMinutes(m) : null;
        var fit = new Fit
        {
            Time = TimeSpan.FromMinutes(1),
            Prime = "turn it by hand",
            Fill = Volume.FromMillilitres(3),
            Bleed = "crack it open",
            PrimeTime = Time(prime),
            FillTime = Time(fill),
            BleedTime = Time(bleed),
        };
        var plan = After(Of(Part("plug", Way(1)) with { Fit = fit }), "plug");
        Assert.Equal([(RebuildKind.FitPart, 1), (RebuildKind.Prime, primed), (RebuildKind.Bleed, bled)], plan.Steps.Select(s => (s.Kind, s.Time.TotalMinutes)));
        Assert.Equal(1 + primed + bled, plan.LikelyTime.TotalMinutes, tolerance: 1e-9);
        Assert.True(plan.SafeTime > plan.LikelyTime);
        Assert.Equal(3, plan.OilFilled.Millilitres, tolerance: 1e-9);
        var dry = After(Of(Part("plug", Way(1)) with { Fit = fit with { Prime = null, Bleed = null } }), "plug");
        Assert.Equal(1 + (fill ?? 1), dry.LikelyTime.TotalMinutes, tolerance: 1e-9);
    }

    [Fact]
    public void Fits_that_wait_for_each_other_are_named_in_order()
    {
        var model = Of(
            Part("a", Way(1)) with { Fit = new Fit { After = Ids("c") } },
            Part("b", Way(1)) with { Fit = new Fit { After = Ids("a") } },
            Part("c", Way(1)) with { Fit = new Fit { After = Ids("b") } });
        var answer = RebuildPlanner.Plan(new RebuildJob { Model = model, Rates = Models.Rates, Done = [.. Ids("a b c")], Renewals = [] });
        var circle = Assert.IsType<RebuildAnswer.Circle>(answer).Nodes;
        Assert.Equal(3, circle.Length);
        for (var i = 0; i < 3; i++)
            Assert.Contains(circle[i], model.FindPart(circle[(i + 1) % 3])!.Fit!.After);
    }

    [Fact]
    public void Steps_with_one_tool_stand_together_where_they_may()
    {
        var model = Of(
            Part("a", Way(1)) with { Fit = new Fit { Tool = new ToolId("x") } },
            Part("b", Way(1)) with { Fit = new Fit { Tool = new ToolId("y"), After = Ids("a") } },
            Part("c", Way(1)) with { Fit = new Fit { Tool = new ToolId("x") } },
            Part("d", Way(1)) with { Fit = new Fit { Tool = new ToolId("y") } });
        var answer = RebuildPlanner.Plan(new RebuildJob { Model = model, Rates = Models.Rates, Done = [.. Ids("a b c d")], Renewals = [] });
        var plan = Assert.IsType<RebuildAnswer.Planned>(answer).Plan;
        Assert.Equal(TimeSpan.FromMinutes(1), plan.Steps.Aggregate(TimeSpan.Zero, (sum, s) => sum + s.ChangeTime));
    }
}
