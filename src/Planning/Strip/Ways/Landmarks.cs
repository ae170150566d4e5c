using Ramwright.Planning.Sequence;

namespace Ramwright.Planning.Strip.Ways;

/// <summary>What every plan must do, once some ways are decided: for each node the nodes that no plan to it can leave out.</summary>
/// <remarks>
/// LM(n) = {n} ∪ ⋂ over the ways w of n of ⋃ over m in needs(w) of LM(m), the greatest solution. A way whose needs themselves need n is of
/// no use and does not count.
/// </remarks>
internal sealed class Landmarks
{
    private readonly WayGraph graph;
    private readonly int[] decided;
    private readonly NodeSet[] of;
    private readonly NodeSet reached;
    private readonly NodeSet[][] before;
    private readonly int[][] usable;

    private Landmarks(WayGraph graph, int[] decided)
    {
        (this.graph, this.decided) = (graph, decided);
        (of, before, usable) = (new NodeSet[graph.Count], new NodeSet[graph.Count][], new int[graph.Count][]);
        (Needed, reached) = (NodeSet.Empty(graph.Count), NodeSet.Empty(graph.Count));
        Cheapest = new long[graph.Count];
    }

    /// <summary>All that is needed for all targets.</summary>
    public NodeSet Needed { get; }

    /// <summary>Cost of the cheapest usable way of each node, 0 where there is none.</summary>
    public long[] Cheapest { get; }

    /// <param name="decided">For each node the way it is done, or -1 where that is open.</param>
    /// <returns>Null when the decisions leave a target without a way.</returns>
    public static Landmarks? Of(WayGraph graph, int[] decided)
    {
        var landmarks = new Landmarks(graph, decided);
        if (landmarks.ReachOrder() is not { } order)
            return null;
        landmarks.Settle(order);
        landmarks.FindUsable();
        foreach (var target in graph.Targets)
            landmarks.Needed.UnionWith(landmarks.of[target]);
        return landmarks;
    }

    /// <summary>The landmarks of one node, itself included.</summary>
    public NodeSet this[int node] => of[node];

    /// <summary>The ways of a node that are still open and of use, by number.</summary>
    public int[] Usable(int node) => usable[node];

    /// <summary>All that any plan that uses this usable way must have done before.</summary>
    public NodeSet Before(int node, int way) => before[node][way];

    private bool IsOpen(int node, int way) => (decided[node] < 0 || decided[node] == way) && graph.Ways[node][way].Needs.IsSubsetOf(reached);

    private List<int>? ReachOrder()
    {
        var order = new List<int>(graph.Count);
        for (var grew = true; grew;)
        {
            grew = false;
            for (var node = 0; node < graph.Count; node++)
            {
                if (reached[node] || !CanStart(node))
                    continue;
                reached.Add(node);
                order.Add(node);
                grew = true;
            }
        }

        return graph.Targets.IsSubsetOf(reached) ? order : null;
    }

    private bool CanStart(int node)
    {
        for (var way = 0; way < graph.Ways[node].Length; way++)
        {
            if (IsOpen(node, way))
                return true;
        }

        return false;
    }

    private void Settle(List<int> order)
    {
        foreach (var node in order)
            of[node] = reached.Copy();
        var (meet, needed) = (NodeSet.Empty(graph.Count), NodeSet.Empty(graph.Count));
        for (var changed = true; changed;)
        {
            changed = false;
            foreach (var node in order)
            {
                Meet(node, meet, needed);
                if (meet.Equals(of[node]))
                    continue;
                meet.CopyTo(of[node]);
                changed = true;
            }
        }
    }

    /// <summary>Into <paramref name="meet"/>; the other set is scratch.</summary>
    private void Meet(int node, NodeSet meet, NodeSet needed)
    {
        reached.CopyTo(meet);
        for (var way = 0; way < graph.Ways[node].Length; way++)
        {
            if (!IsOpen(node, way))
                continue;
            Gather(graph.Ways[node][way], needed);
            meet.IntersectWith(needed);
        }

        meet.Add(node);
    }

    private void Gather(GraphWay way, NodeSet needed)
    {
        needed.Clear();
        foreach (var need in way.Needs)
            needed.UnionWith(of[need]);
    }

    private void FindUsable()
    {
        var found = new List<int>();
        for (var node = 0; node < graph.Count; node++)
        {
            found.Clear();
            before[node] = new NodeSet[graph.Ways[node].Length];
            for (var way = 0; reached[node] && way < graph.Ways[node].Length; way++)
            {
                if (!IsOpen(node, way))
                    continue;
                Gather(graph.Ways[node][way], before[node][way] = NodeSet.Empty(graph.Count));
                if (before[node][way][node])
                    continue;
                Cheapest[node] = found.Count == 0 ? graph.Ways[node][way].Cost : Math.Min(Cheapest[node], graph.Ways[node][way].Cost);
                found.Add(way);
            }

            usable[node] = [.. found];
        }
    }
}
