using Ramwright.Planning.Sequence;

namespace Ramwright.Planning.Strip.Ways;

/// <summary>The cheapest plan found: which node by which way, in order.</summary>
/// <param name="Cost">Scaled.</param>
/// <param name="LowerBound">Scaled; no plan costs less. Equal to the cost when proven.</param>
internal sealed record WayPlan((int Node, int Way)[] Order, long Cost, long LowerBound, int States);

/// <summary>Chooses the ways by branch and bound, best bound first; where all ways that matter are chosen, puts the steps in order exactly.</summary>
internal sealed class WaySearch
{
    private readonly WayGraph graph;
    private readonly int limit;
    private readonly PriorityQueue<Branch, Rank> open = new(Rank.Order);
    private int states;
    private int found;
    private (int Node, int Way)[] best = [];
    private long bestCost = long.MaxValue;

    private WaySearch(WayGraph graph, int limit) => (this.graph, this.limit) = (graph, limit);

    private sealed record Branch(int[] Decided, WayBound Bound, long FixedCost, long LowerBound, int OpenWays);

    /// <param name="limit">Search states to look at, 1 or more.</param>
    public static WayPlan Solve(WayGraph graph, int limit) => new WaySearch(graph, limit).Solve();

    private WayPlan Solve()
    {
        var decided = new int[graph.Count];
        Array.Fill(decided, -1);
        var root = Bounded(decided, 0) ?? throw new InvalidOperationException("Every target can be reached, so some way is open.");
        Dive(root);
        Push(root);
        while (open.TryDequeue(out var branch, out var rank))
        {
            if (branch.LowerBound >= bestCost)
                return new WayPlan(best, bestCost, bestCost, states);
            if (++states > limit)
                return new WayPlan(best, bestCost, branch.LowerBound, states);
            if (branch.OpenWays > 0)
            {
                foreach (var child in Children(branch))
                    Push(child);
            }
            else if (Order(branch) is { IsProven: false } unproven)
            {
                var lower = Math.Min(branch.FixedCost + unproven.LowerBound, open.TryPeek(out _, out var next) ? next.Total : long.MaxValue);
                return new WayPlan(best, bestCost, Math.Min(lower, bestCost), states);
            }
        }

        return new WayPlan(best, bestCost, bestCost, states);
    }

    /// <summary>A first plan quickly: at each choice the child with the lowest bound.</summary>
    private void Dive(Branch branch)
    {
        while (branch.OpenWays > 0)
        {
            states++;
            branch = Children(branch).MinBy(b => b.LowerBound) ?? throw new InvalidOperationException("A usable way can be decided for.");
        }

        var (problem, nodes) = branch.Bound.Sequence();
        Keep(branch, nodes, SequenceBeam.Solve(problem, width: 16));
    }

    private SequenceResult Order(Branch branch)
    {
        var (problem, nodes) = branch.Bound.Sequence();
        var result = SequenceKernel.Solve(problem, bestCost - branch.FixedCost, Math.Max(1, limit - states));
        states += result.States;
        Keep(branch, nodes, result);
        return result;
    }

    private void Keep(Branch branch, int[] nodes, SequenceResult result)
    {
        if (result.Order is not { } order || branch.FixedCost + result.Cost >= bestCost)
            return;
        bestCost = branch.FixedCost + result.Cost;
        best = Array.ConvertAll(order, step => (nodes[step], branch.Bound.Usable(nodes[step])[0]));
    }

    private IEnumerable<Branch> Children(Branch branch)
    {
        var node = branch.Bound.Open().MaxBy(branch.Bound.Regret);
        foreach (var way in branch.Bound.Usable(node))
        {
            var decided = (int[])branch.Decided.Clone();
            decided[node] = way;
            if (Bounded(decided, branch.LowerBound) is { } child)
                yield return child;
        }
    }

    private Branch? Bounded(int[] decided, long floor)
    {
        if (Landmarks.Of(graph, decided) is not { } landmarks)
            return null;
        var bound = new WayBound(graph, landmarks);
        if (!bound.IsPossible())
            return null;
        var (problem, _) = bound.Sequence();
        var cost = bound.FixedCost();
        return new Branch(decided, bound, cost, Math.Max(floor, cost + SequenceKernel.LeastCost(problem)), bound.Open().Count());
    }

    private void Push(Branch branch)
    {
        if (branch.LowerBound < bestCost)
            open.Enqueue(branch, new Rank(branch.LowerBound, branch.OpenWays, found++));
    }
}
