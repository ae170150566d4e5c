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
    public void A_thousand_made_up_tools_show_the_same_events_at_a_hundredth_of_the_tolerance()
    {
        var other = 0; // a ram that spring and friction hold in balance may end either way: a few in a thousand
        MadeUpTools.Any.Sample(
        tool =>
        {
            var plan = tool.Pause ? new StrokePlan { PausePascals = 0.6 * tool.Parameters.ReliefPascals, PauseSeconds = 1 } : new StrokePlan();
            var coarse = StrokeSimulator.Run(tool.Parameters, plan);
            var fine = StrokeSimulator.Run(tool.Parameters, plan, 1e-6);
            Assert.NotEqual(StrokeEnd.LimitReached, coarse.End);
            if (fine.End != coarse.End || !Named(fine).SequenceEqual(Named(coarse)))
                other++;
        },
        iter: 1_000, seed: "0000KFkY6Mb4", threads: 1);
        Assert.InRange(other, 0, 5);
    }

    /// <summary>Events in their order; a ram that moves out and home again by a hair at the end of the return counts once.</summary>
    private static IEnumerable<StrokeEventKind> Named(Stroke stroke) => stroke.Events
        .Where(e => e.Kind is not StrokeEventKind.RamMoves and not StrokeEventKind.MotorStalled and not StrokeEventKind.DiesParted)
        .Select(e => e.Kind).Distinct();
}
