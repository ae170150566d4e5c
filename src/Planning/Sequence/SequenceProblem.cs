using System.Diagnostics;

namespace Ramwright.Planning.Sequence;

/// <summary>
/// Steps that must all be done, each after some others, each with a tool and a posture or without. What is sought is the order with the
/// least cost of changes: taking up tool t costs <see cref="ToolCost"/>[t] whenever another was in hand, and so for postures. A step without
/// a tool leaves the tool in hand where it is.
/// </summary>
/// <remarks>Steps are numbered so that each comes after all it waits for.</remarks>
internal sealed class SequenceProblem
{
    public const int None = -1;

    public SequenceProblem(int[][] before, int[] tool, int[] posture, long[] toolCost, long[] postureCost, int toolInHand, int postureNow)
    {
        Debug.Assert(before.Select((b, i) => b.All(p => p < i)).All(ok => ok), "Steps are numbered after what they wait for.");
        Debug.Assert(tool.Length == before.Length && posture.Length == before.Length, "One tool and one posture per step.");
        (Tool, Posture, ToolCost, PostureCost, ToolInHand, PostureNow) = (tool, posture, toolCost, postureCost, toolInHand, postureNow);
        (Before, BeforeSets) = Directly(before);
    }

    public int Count => Before.Length;

    /// <summary>For each step those that must come right before it; what follows from others is left out.</summary>
    public int[][] Before { get; }

    /// <summary>The same as sets.</summary>
    public NodeSet[] BeforeSets { get; }

    /// <summary>For each step its tool, or <see cref="None"/>.</summary>
    public int[] Tool { get; }

    public int[] Posture { get; }

    public long[] ToolCost { get; }

    public long[] PostureCost { get; }

    public int ToolInHand { get; }

    public int PostureNow { get; }

    private static (int[][] Lists, NodeSet[] Sets) Directly(int[][] before)
    {
        var (all, sets, lists) = (new NodeSet[before.Length], new NodeSet[before.Length], new int[before.Length][]);
        var direct = new List<int>();
        for (var step = 0; step < before.Length; step++)
        {
            direct.Clear();
            (all[step], sets[step]) = (NodeSet.Empty(before.Length), NodeSet.Empty(before.Length));
            foreach (var earlier in before[step].OrderDescending())
            {
                if (all[step][earlier])
                    continue;
                all[step].UnionWith(all[earlier]);
                all[step].Add(earlier);
                sets[step].Add(earlier);
                direct.Add(earlier);
            }

            lists[step] = [.. direct];
        }

        return (lists, sets);
    }

    public bool IsFree(int step, int tool, int posture) =>
        (Tool[step] == None || Tool[step] == tool) && (Posture[step] == None || Posture[step] == posture);

    /// <summary>Does every step that needs no change, to the last: what is done afterwards.</summary>
    /// <remarks>Steps are numbered after what they wait for, so one pass finds them all.</remarks>
    public NodeSet Run(NodeSet done, int tool, int posture, List<int>? order = null)
    {
        var after = done.Copy();
        for (var step = 0; step < Count; step++)
        {
            if (after[step] || !IsFree(step, tool, posture) || !BeforeSets[step].IsSubsetOf(after))
                continue;
            after.Add(step);
            order?.Add(step);
        }

        return after;
    }

    public long ChangeCost(int fromTool, int fromPosture, int toTool, int toPosture) =>
        (toTool == fromTool ? 0 : ToolCost[toTool]) + (toPosture == fromPosture ? 0 : PostureCost[toPosture]);
}

/// <summary>The best order found, its cost of changes, and a cost below which no order can lie.</summary>
/// <param name="Order">Null where no order beats the cutoff.</param>
internal sealed record SequenceResult(int[]? Order, long Cost, long LowerBound, int States)
{
    public bool IsProven => LowerBound >= Cost;
}
