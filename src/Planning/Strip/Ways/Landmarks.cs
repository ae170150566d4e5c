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

    private Landmarks(WayGraph graph, int[] decided)
    {
        (this.graph, this.decided) = (graph, decided);
        of = new NodeSet[graph.Count];
        (Needed, reached) = (NodeSet.Empty(graph.Count), NodeSet.Empty(graph.Count));
    }

    /// <summary>All that is needed for all targets.</summary>
    public NodeSet Needed { get; }

    /// <param name="decided">For each node the way it is done, or -1 where that is open.</param>
    /// <returns>Null when the decisions leave a target without a way.</returns>
    public static Landmarks? Of(WayGraph graph, int[] decided)
    {
        var landmarks = new Landmarks(graph, decided);
        if (landmarks.ReachOrder() is not { } order)
            return null;
        landmarks.Settle(order);
        foreach (var target in graph.Targets)
            landmarks.Needed.UnionWith(landmarks.of[target]);
        return landmarks;
    }

    /// <summary>The landmarks of one node, itself included.</summary>
    public NodeSet this[int node] => of[node];

    /// <summary>The ways of a node that are still open and of use, by number.</summary>
    public List<int> Usable(int node)
    {
        var usable = new List<int>();
        for (var way = 0; way < graph.Ways[node].Length; way++)
        {
            if (IsOpen(node, way) && !Before(graph.Ways[node][way])[node] && graph.Ways[node][way].Needs.IsSubsetOf(reached))
                usable.Add(way);
        }

        return usable;
    }

    /// <summary>All that any plan that uses this way must have done before.</summary>
    public NodeSet Before(GraphWay way)
    {
        var before = NodeSet.Empty(graph.Count);
        foreach (var need in way.Needs)
        {
            if (reached[need])
                before.UnionWith(of[need]);
        }

        return before;
    }

    private bool IsOpen(int node, int way) => decided[node] < 0 || decided[node] == way;

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
            if (IsOpen(node, way) && graph.Ways[node][way].Needs.IsSubsetOf(reached))
                return true;
        }

        return false;
    }

    private void Settle(List<int> order)
    {
        foreach (var node in order)
            of[node] = reached;
        for (var changed = true; changed;)
        {
            changed = false;
            foreach (var node in order)
            {
                var now = Meet(node);
                changed |= !now.Equals(of[node]);
                of[node] = now;
            }
        }
    }

    private NodeSet Meet(int node)
    {
        var meet = reached.Copy();
        for (var way = 0; way < graph.Ways[node].Length; way++)
        {
            var candidate = graph.Ways[node][way];
            if (IsOpen(node, way) && candidate.Needs.IsSubsetOf(reached))
                meet.IntersectWith(Before(candidate));
        }

        meet.Add(node);
        return meet;
    }
}
