using CsCheck;
using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Tests.Strokes;

public sealed class NoEventIsMissed
{
    [Fact]
    public void A_healthy_stroke_takes_at_most_500_steps()
    {
        var stroke = StrokeSimulator.Run(ReferenceTool.Healthy, new StrokePlan());
        Assert.InRange(stroke.Steps, 50, 500);
    }

    [Fact]
    public void Event_times_settle_as_the_tolerance_is_tightened()
    {
        var exact = StrokeSimulator.Run(ReferenceTool.Healthy, new StrokePlan(), 1e-9);
        foreach (var (relative, within) in new[] { (1e-4, 1e-3), (1e-6, 1e-5) })
        {
            var stroke = StrokeSimulator.Run(ReferenceTool.Healthy, new StrokePlan(), relative);
            Assert.Equal(exact.Events.Select(e => e.Kind), stroke.Events.Select(e => e.Kind));
            for (var i = 0; i < exact.Events.Length; i++)
                Assert.Equal(exact.Events[i].Seconds, stroke.Events[i].Seconds, within);
        }
    }

    // What a person would call an event must come out the same, whatever the steps; the finer run is the oracle.
    [Fact]
    public void A_thousand_made_up_tools_show_the_same_events_at_a_hundredth_of_the_tolerance() => MadeUpTools.Like(ReferenceTool.Healthy).ForAll(
        tool =>
        {
            var coarse = StrokeSimulator.Run(tool.Parameters, tool.Plan);
            var fine = StrokeSimulator.Run(tool.Parameters, tool.Plan, 1e-6);
            Assert.NotEqual(StrokeEnd.LimitReached, coarse.End);
            Assert.Equal(fine.End, coarse.End);
            Assert.Equal(MadeUpTools.Named(fine), MadeUpTools.Named(coarse));
        },
        iter: 1_000);

    // The one kind of tool that may end either way: the pressure of the return falls to the closing pressure and turns just there.
    // What the usual tolerance shows is then true of a tool whose relief closes a few thousandths of a bar away.
    [Fact]
    public void A_relief_whose_closing_pressure_is_only_grazed_ends_as_one_beside_it_does()
    {
        var grazing = MadeUpTools.Like(ReferenceTool.Healthy).Generate(PCG.Parse("8kTSmtp1IoF2"), null, out _);
        var coarse = StrokeSimulator.Run(grazing.Parameters, grazing.Plan);
        var fine = StrokeSimulator.Run(grazing.Parameters, grazing.Plan, 1e-6);
        Assert.Equal((StrokeEnd.RamStaysOut, StrokeEnd.Home), (coarse.End, fine.End));

        var beside = StrokeSimulator.Run(grazing.Parameters with { ClosingRatio = grazing.Parameters.ClosingRatio * 1.0005 }, grazing.Plan, 1e-6);
        Assert.Equal(coarse.End, beside.End);
        Assert.Equal(MadeUpTools.Named(coarse), MadeUpTools.Named(beside));
    }
}
