using Ramwright.Planning.Sequence;

namespace Ramwright.Planning.Strip.Ways;

/// <summary>The least that any plan can cost once some ways are decided.</summary>
/// <remarks>
/// Every landmark is done by some usable way. Its cost is counted; a renewal that all its usable ways bring, or that the landmarks lay open, is counted once over the whole;
/// a renewal or a further node that only some ways bring is shared evenly among the landmarks that could bring it, so that it is never
/// counted more than once in all. Changes are bounded over the landmarks alone (<see cref="EntryBound"/>): leaving out steps or the tool of a
/// step never adds a change.
/// </remarks>
internal sealed class WayBound
{
    private readonly WayGraph graph;
    private readonly Landmarks landmarks;
    private readonly int[][] usable;
    private readonly NodeSet renewed;
    private readonly int[] renewalSharers;
    private readonly int[] nodeSharers;

    public WayBound(WayGraph graph, Landmarks landmarks)
    {
        (this.graph, this.landmarks) = (graph, landmarks);
        usable = new int[graph.Count][];
        renewed = NodeSet.Empty(graph.Renewable.Length);
        renewalSharers = new int[graph.Renewable.Length];
        nodeSharers = new int[graph.Count];
        foreach (var node in landmarks.Needed)
        {
            usable[node] = landmarks.Usable(node);
            if (usable[node].Length > 0)
                renewed.UnionWith(Common(node));
        }

        foreach (var (renewal, needs) in graph.LaidOpen)
        {
            if (needs.IsSubsetOf(landmarks.Needed))
                renewed.Add(renewal);
        }

        foreach (var node in landmarks.Needed)
            CountSharers(node);
    }

    /// <summary>Landmarks whose way is still open.</summary>
    public IEnumerable<int> Open()
    {
        foreach (var node in landmarks.Needed)
        {
            if (usable[node].Length > 1)
                yield return node;
        }
    }

    public int[] Usable(int node) => usable[node];

    /// <summary>Whether every landmark has a way at all.</summary>
    public bool IsPossible()
    {
        foreach (var node in landmarks.Needed)
        {
            if (usable[node].Length == 0)
                return false;
        }

        return true;
    }

    /// <summary>Minutes, risk and renewals: no changes.</summary>
    public long FixedCost()
    {
        var cost = 0L;
        foreach (var node in landmarks.Needed)
            cost += Cheapest(node).First;
        foreach (var renewal in renewed)
            cost += graph.RenewalCost[renewal];
        return cost;
    }

    /// <summary>How much dearer the second cheapest way of an open node is than the cheapest: where a decision says most.</summary>
    public long Regret(int node) => Cheapest(node) is var (first, second) ? second - first : 0;

    private (long First, long Second) Cheapest(int node)
    {
        var (first, second) = (long.MaxValue, long.MaxValue);
        foreach (var way in usable[node])
        {
            var cost = CostOf(node, way);
            (first, second) = cost < first ? (cost, first) : (first, Math.Min(second, cost));
        }

        return (first, second);
    }

    /// <summary>The landmarks as steps to be put in order, and which node each step is.</summary>
    public (SequenceProblem Problem, int[] Nodes) Sequence()
    {
        var nodes = InOrder();
        var step = new int[graph.Count];
        for (var i = 0; i < nodes.Length; i++)
            step[nodes[i]] = i;
        var problem = new SequenceProblem(
            Array.ConvertAll(nodes, node => BeforeOf(node, step)),
            Array.ConvertAll(nodes, node => Same(node, static way => way.Tool)),
            Array.ConvertAll(nodes, node => Same(node, static way => way.Posture)),
            graph.ToolCost, graph.PostureCost, graph.ToolInHand, graph.PostureNow);
        return (problem, nodes);
    }

    private int[] BeforeOf(int node, int[] step)
    {
        var before = new List<int>();
        foreach (var earlier in usable[node] is [var only] ? graph.Ways[node][only].Needs : landmarks[node])
        {
            if (earlier != node)
                before.Add(step[earlier]);
        }

        return [.. before];
    }

    /// <summary>Each landmark after all that it needs, and otherwise as the model has them.</summary>
    private int[] InOrder()
    {
        var (order, placed) = (new List<int>(), NodeSet.Empty(graph.Count));
        for (var count = landmarks.Needed.Count; order.Count < count;)
        {
            foreach (var node in landmarks.Needed)
            {
                if (placed[node] || !AllBefore(node, placed))
                    continue;
                placed.Add(node);
                order.Add(node);
            }
        }

        return [.. order];
    }

    private bool AllBefore(int node, NodeSet placed)
    {
        foreach (var earlier in landmarks[node])
        {
            if (earlier != node && !placed[earlier])
                return false;
        }

        return true;
    }

    /// <summary>The tool or posture that all usable ways of a node share.</summary>
    private int Same(int node, Func<GraphWay, int> kind)
    {
        var ways = usable[node];
        var first = kind(graph.Ways[node][ways[0]]);
        for (var i = 1; i < ways.Length; i++)
        {
            if (kind(graph.Ways[node][ways[i]]) != first)
                return SequenceProblem.None;
        }

        return first;
    }

    private NodeSet Common(int node)
    {
        var common = graph.Ways[node][usable[node][0]].Renews.Copy();
        foreach (var way in usable[node])
            common.IntersectWith(graph.Ways[node][way].Renews);
        return common;
    }

    private void CountSharers(int node)
    {
        if (usable[node].Length < 2)
            return;
        var (renewals, nodes) = (NodeSet.Empty(graph.Renewable.Length), NodeSet.Empty(graph.Count));
        foreach (var way in usable[node])
        {
            renewals.UnionWith(graph.Ways[node][way].Renews);
            nodes.UnionWith(landmarks.Before(node, way));
        }

        foreach (var renewal in renewals)
            renewalSharers[renewal]++;
        foreach (var further in nodes)
            nodeSharers[further]++;
    }

    /// <summary>A way's own cost and its share of what it alone brings.</summary>
    private long CostOf(int node, int number)
    {
        var way = graph.Ways[node][number];
        var cost = way.Cost;
        foreach (var renewal in way.Renews)
        {
            if (!renewed[renewal])
                cost += graph.RenewalCost[renewal] / Math.Max(1, renewalSharers[renewal]);
        }

        foreach (var further in landmarks.Before(node, number))
        {
            if (!landmarks.Needed[further])
                cost += landmarks.Cheapest[further] / Math.Max(1, nodeSharers[further]);
        }

        return cost;
    }
}
