namespace Ramwright.Planning.Sequence;

/// <summary>The order with the least cost of changes, proven, or the best found and how low the optimum may lie.</summary>
/// <remarks>
/// A* over (steps done, tool in hand, posture). Whatever can be done without a change is done at once: moving such a step to the front of
/// any order changes neither what is in hand there nor adds a change where it stood, because a change costs by what is taken up alone. So a
/// search state is a point of change only, and its children are the changes that let some waiting step go on.
/// </remarks>
internal sealed class SequenceKernel
{
    private readonly SequenceProblem problem;
    private readonly EntryBound bound;
    private readonly List<Node> nodes = [];
    private readonly Dictionary<Key, long> cheapest = [];
    private readonly PriorityQueue<int, Rank> open = new(Rank.Order);

    private SequenceKernel(SequenceProblem problem) => (this.problem, bound) = (problem, new EntryBound(problem));

    private readonly record struct Key(NodeSet Done, int Tool, int Posture);

    private readonly record struct Node(Key At, long Cost, int Parent);

    /// <summary>The least cost of changes, below which no order can lie; quick.</summary>
    public static long LeastCost(SequenceProblem problem)
    {
        var done = problem.Run(NodeSet.Empty(problem.Count), problem.ToolInHand, problem.PostureNow);
        return new EntryBound(problem).Of(done, problem.ToolInHand, problem.PostureNow);
    }

    /// <param name="cutoff">Only orders cheaper than this are of interest.</param>
    /// <param name="stateLimit">At most so many states are looked at.</param>
    public static SequenceResult Solve(SequenceProblem problem, long cutoff = long.MaxValue, int stateLimit = int.MaxValue)
    {
        var quick = SequenceBeam.Solve(problem, width: 4);
        var kernel = new SequenceKernel(problem);
        var best = quick.Cost < cutoff ? quick : new SequenceResult(null, cutoff, 0, quick.States);
        var result = kernel.Search(best, stateLimit);
        if (result.IsProven)
            return result;
        var wide = SequenceBeam.Solve(problem, width: 200);
        return wide.Cost < result.Cost
            ? result with { Order = wide.Order, Cost = wide.Cost, LowerBound = Math.Min(result.LowerBound, wide.Cost) }
            : result;
    }

    private SequenceResult Search(SequenceResult best, int stateLimit)
    {
        var start = problem.Run(NodeSet.Empty(problem.Count), problem.ToolInHand, problem.PostureNow);
        Push(new Key(start, problem.ToolInHand, problem.PostureNow), 0, -1, best.Cost);
        var looked = 0;
        while (open.TryDequeue(out var index, out var rank))
        {
            var node = nodes[index];
            if (cheapest[node.At] < node.Cost)
                continue;
            if (node.At.Done.Count == problem.Count)
                return new SequenceResult(OrderTo(index), node.Cost, node.Cost, looked);
            if (++looked > stateLimit)
                return best with { LowerBound = Math.Min(rank.Total, best.Cost), States = looked };
            foreach (var (tool, posture) in Changes.From(problem, node.At.Done, node.At.Tool, node.At.Posture))
            {
                var cost = node.Cost + problem.ChangeCost(node.At.Tool, node.At.Posture, tool, posture);
                Push(new Key(problem.Run(node.At.Done, tool, posture), tool, posture), cost, index, best.Cost);
            }
        }

        return best with { LowerBound = best.Cost, States = looked };
    }

    private void Push(Key at, long cost, int parent, long cutoff)
    {
        if (cheapest.TryGetValue(at, out var known) && known <= cost)
            return;
        var rest = bound.Of(at.Done, at.Tool, at.Posture);
        if (cost + rest >= cutoff)
            return;
        cheapest[at] = cost;
        open.Enqueue(nodes.Count, new Rank(cost + rest, rest, nodes.Count));
        nodes.Add(new Node(at, cost, parent));
    }

    private int[] OrderTo(int index)
    {
        var path = new Stack<Node>();
        for (; index >= 0; index = nodes[index].Parent)
            path.Push(nodes[index]);
        var (order, done) = (new List<int>(), NodeSet.Empty(problem.Count));
        foreach (var node in path)
            done = problem.Run(done, node.At.Tool, node.At.Posture, order);
        return [.. order];
    }
}
