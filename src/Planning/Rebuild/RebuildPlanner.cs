using System.Collections.Immutable;
using Ramwright.Planning.Sequence;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Rebuild;

/// <summary>Finds the order with the fewest minutes of tool and posture changes in which the tool goes together again.</summary>
/// <remarks>
/// What must come before what is the model's word (<c>fit.after</c>, units, <c>undo.after</c> and <c>undo.before</c>); where it is silent,
/// the removal in reverse: what stood in the way of a part goes back after it. The acts themselves are given, so only their order is chosen.
/// </remarks>
public static class RebuildPlanner
{
    public static RebuildAnswer Plan(RebuildJob job)
    {
        var nodes = new RebuildNodes(job);
        var order = RebuildOrder.Of(job, nodes);
        if (order.Circle is not [])
            return new RebuildAnswer.Circle([.. order.Circle.Select(n => nodes.All[n].Id).Distinct()]);
        var numbered = Numbered(order);
        var result = SequenceKernel.Solve(Problem(job, nodes, order, numbered), stateLimit: job.StateLimit);
        var acts = result.Order!.Select(step => nodes.All[numbered[step]]);
        return new RebuildAnswer.Planned(new RebuildPlanWriter(job).Write(acts, result.IsProven));
    }

    /// <summary>Each act after those it waits for, and otherwise as the model has them.</summary>
    private static int[] Numbered(RebuildOrder order)
    {
        var numbered = new List<int>();
        while (numbered.Count < order.Before.Count)
        {
            for (var node = 0; node < order.Before.Count; node++)
            {
                if (!numbered.Contains(node) && order.Before[node].All(numbered.Contains))
                    numbered.Add(node);
            }
        }

        return [.. numbered];
    }

    private static SequenceProblem Problem(RebuildJob job, RebuildNodes nodes, RebuildOrder order, int[] numbered)
    {
        ImmutableArray<ToolId> tools = [.. nodes.All.Select(n => n.Tool).OfType<ToolId>().Distinct()];
        ImmutableArray<PostureId> postures = [.. nodes.All.Select(n => n.Posture).OfType<PostureId>().Distinct()];
        return new SequenceProblem(
            Array.ConvertAll(numbered, node => order.Before[node].Select(b => Array.IndexOf(numbered, b)).ToArray()),
            Array.ConvertAll(numbered, node => nodes.All[node].Tool is { } tool ? tools.IndexOf(tool) : SequenceProblem.None),
            Array.ConvertAll(numbered, node => nodes.All[node].Posture is { } posture ? postures.IndexOf(posture) : SequenceProblem.None),
            [.. tools.Select(t => job.Rates.ChangeTime(job.Model, t).Ticks)],
            [.. postures.Select(p => job.Rates.ChangeTime(job.Model, p).Ticks)],
            SequenceProblem.None, SequenceProblem.None);
    }
}
