namespace Ramwright.Planning.Sequence;

/// <summary>A good order quickly: of each generation of changes only the most promising are followed.</summary>
internal sealed class SequenceBeam
{
    private readonly SequenceProblem problem;
    private readonly EntryBound bound;
    private readonly Changes changes;
    private readonly StateTable table;
    private readonly ulong[] next;
    private readonly HashSet<int> chosen = [];
    private int best = -1;

    private SequenceBeam(SequenceProblem problem)
    {
        (this.problem, bound, changes) = (problem, new EntryBound(problem), new Changes(problem));
        (table, next) = (new StateTable(problem.Words), new ulong[problem.Words]);
    }

    /// <param name="width">How many are followed side by side; 1 or more.</param>
    public static SequenceResult Solve(SequenceProblem problem, int width) => new SequenceBeam(problem).Solve(width);

    private SequenceResult Solve(int width)
    {
        problem.Run(next, problem.ToolInHand, problem.PostureNow);
        var least = bound.Of(next, problem.ToolInHand, problem.PostureNow);
        List<int> front = [table.Improve(next, new StateTable.State(problem.ToolInHand, problem.PostureNow, 0, -1))];
        var (states, candidates) = (0, new List<(long Total, int Left, int State)>());
        for (; front.Count > 0; states += front.Count)
        {
            candidates.Clear();
            foreach (var state in front)
            {
                if (SequenceProblem.CountOf(table.Done(state)) == problem.Count)
                    best = best < 0 || table[state].Cost < table[best].Cost ? state : best;
                else
                    Spread(state, candidates);
            }

            Choose(width, candidates, front);
        }

        return new SequenceResult(SequenceKernel.OrderTo(problem, table, best), table[best].Cost, least, states);
    }

    private void Spread(int state, List<(long Total, int Left, int State)> candidates)
    {
        var (tool, posture, cost, _) = table[state];
        foreach (var (t, p) in changes.From(table.Done(state), tool, posture))
        {
            table.Done(state).CopyTo(next);
            problem.Run(next, t, p);
            var after = new StateTable.State(t, p, cost + problem.ChangeCost(tool, posture, t, p), state);
            if (table.Improve(next, after) is >= 0 and var found)
                candidates.Add((after.Cost + bound.Of(next, t, p), problem.Count - SequenceProblem.CountOf(next), found));
        }
    }

    /// <summary>The best of a generation, each state once.</summary>
    private void Choose(int width, List<(long Total, int Left, int State)> candidates, List<int> front)
    {
        candidates.Sort();
        front.Clear();
        chosen.Clear();
        foreach (var candidate in candidates)
        {
            if (front.Count == width || (best >= 0 && candidate.Total >= table[best].Cost))
                break;
            if (chosen.Add(candidate.State))
                front.Add(candidate.State);
        }
    }
}
