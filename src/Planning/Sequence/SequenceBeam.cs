namespace Ramwright.Planning.Sequence;

/// <summary>A good order quickly: of each generation of changes only the most promising are followed.</summary>
internal static class SequenceBeam
{
    private sealed record Partial(NodeSet Done, int Tool, int Posture, long Cost, long Total, Partial? Parent);

    /// <param name="width">How many are followed side by side; 1 or more.</param>
    public static SequenceResult Solve(SequenceProblem problem, int width)
    {
        var bound = new EntryBound(problem);
        var start = problem.Run(NodeSet.Empty(problem.Count), problem.ToolInHand, problem.PostureNow);
        var least = bound.Of(start, problem.ToolInHand, problem.PostureNow);
        List<Partial> front = [new Partial(start, problem.ToolInHand, problem.PostureNow, 0, least, null)];
        Partial? best = null;
        var states = 0;
        while (front.Count > 0)
        {
            var next = new Dictionary<(NodeSet, int, int), Partial>();
            foreach (var partial in front)
            {
                states++;
                if (partial.Done.Count == problem.Count)
                    best = best is null || partial.Cost < best.Cost ? partial : best;
                else
                    Spread(problem, bound, partial, next);
            }

            front = [.. next.Values.Where(p => best is null || p.Total < best.Cost)
                .OrderBy(p => p.Total).ThenByDescending(p => p.Done.Count).Take(width)];
        }

        return new SequenceResult(OrderOf(problem, best!), best!.Cost, least, states);
    }

    private static void Spread(SequenceProblem problem, EntryBound bound, Partial partial, Dictionary<(NodeSet, int, int), Partial> next)
    {
        foreach (var (tool, posture) in Changes.From(problem, partial.Done, partial.Tool, partial.Posture))
        {
            var cost = partial.Cost + problem.ChangeCost(partial.Tool, partial.Posture, tool, posture);
            var done = problem.Run(partial.Done, tool, posture);
            if (next.TryGetValue((done, tool, posture), out var known) && known.Cost <= cost)
                continue;
            next[(done, tool, posture)] = new Partial(done, tool, posture, cost, cost + bound.Of(done, tool, posture), partial);
        }
    }

    private static int[] OrderOf(SequenceProblem problem, Partial best)
    {
        var path = new Stack<Partial>();
        for (var at = best; at is not null; at = at.Parent)
            path.Push(at);
        var (order, done) = (new List<int>(), NodeSet.Empty(problem.Count));
        foreach (var partial in path)
            done = problem.Run(done, partial.Tool, partial.Posture, order);
        return [.. order];
    }
}
