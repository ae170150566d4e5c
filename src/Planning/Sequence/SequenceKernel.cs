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
    private readonly Changes changes;
    private readonly StateTable table;
    private readonly ulong[] next;
    private readonly PriorityQueue<(int State, long Cost), Rank> open = new(Rank.Order);
    private int pushed;

    private SequenceKernel(SequenceProblem problem)
    {
        (this.problem, bound, changes) = (problem, new EntryBound(problem), new Changes(problem));
        (table, next) = (new StateTable(problem.Words), new ulong[problem.Words]);
    }

    /// <summary>The least cost of changes, below which no order can lie; quick.</summary>
    public static long LeastCost(SequenceProblem problem)
    {
        var done = new ulong[problem.Words];
        problem.Run(done, problem.ToolInHand, problem.PostureNow);
        return new EntryBound(problem).Of(done, problem.ToolInHand, problem.PostureNow);
    }

    /// <param name="cutoff">Only orders cheaper than this are of interest.</param>
    /// <param name="stateLimit">At most so many states are looked at.</param>
    public static SequenceResult Solve(SequenceProblem problem, long cutoff = long.MaxValue, int stateLimit = int.MaxValue)
    {
        var quick = SequenceBeam.Solve(problem, width: 4);
        if (quick.IsProven && quick.Cost < cutoff)
            return quick;
        var best = quick.Cost < cutoff ? quick : new SequenceResult(null, cutoff, 0, quick.States);
        var result = new SequenceKernel(problem).Search(best, stateLimit);
        if (result.IsProven)
            return result;
        var wide = SequenceBeam.Solve(problem, width: 200);
        return wide.Cost < result.Cost
            ? result with { Order = wide.Order, Cost = wide.Cost, LowerBound = Math.Min(result.LowerBound, wide.Cost) }
            : result;
    }

    /// <summary>The steps in the order in which a search came to a state.</summary>
    public static int[] OrderTo(SequenceProblem problem, StateTable table, int state)
    {
        var (order, done) = (new List<int>(problem.Count), new ulong[problem.Words]);
        foreach (var at in table.PathTo(state))
            problem.Run(done, table[at].Tool, table[at].Posture, order);
        return [.. order];
    }

    private SequenceResult Search(SequenceResult best, int stateLimit)
    {
        problem.Run(next, problem.ToolInHand, problem.PostureNow);
        Push(new StateTable.State(problem.ToolInHand, problem.PostureNow, 0, -1), best.Cost);
        var looked = 0;
        while (open.TryDequeue(out var at, out var rank))
        {
            var (state, (tool, posture, cost, _)) = (at.State, table[at.State]);
            if (cost < at.Cost)
                continue;
            if (SequenceProblem.CountOf(table.Done(state)) == problem.Count)
                return new SequenceResult(OrderTo(problem, table, state), cost, cost, looked);
            if (++looked > stateLimit)
                return best with { LowerBound = Math.Min(rank.Total, best.Cost), States = looked };
            foreach (var (t, p) in changes.From(table.Done(state), tool, posture))
            {
                table.Done(state).CopyTo(next);
                problem.Run(next, t, p);
                Push(new StateTable.State(t, p, cost + problem.ChangeCost(tool, posture, t, p), state), best.Cost);
            }
        }

        return best with { LowerBound = best.Cost, States = looked };
    }

    /// <summary>Puts the state with the steps of <see cref="next"/> in the queue, unless it cannot beat the cutoff or is known as cheaply.</summary>
    private void Push(StateTable.State state, long cutoff)
    {
        var number = table.Improve(next, state);
        if (number < 0)
            return;
        var rest = bound.Of(next, state.Tool, state.Posture);
        if (state.Cost + rest < cutoff)
            open.Enqueue((number, state.Cost), new Rank(state.Cost + rest, rest, pushed++));
    }
}
