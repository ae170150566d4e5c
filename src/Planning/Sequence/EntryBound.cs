namespace Ramwright.Planning.Sequence;

/// <summary>How often each tool and each posture must be taken up at the least: a lower bound on the cost of changes.</summary>
/// <remarks>
/// For one tool t look only at 't' against 'any other tool' and let every other change be free. In that relaxed work doing all that is
/// possible before switching is optimal, so the phase in which a step falls is the longest alternating chain that leads to it: even phases
/// are for the others, odd ones for t, and each odd phase that is entered costs one taking-up. Every real order, read as 't / not t', is one
/// of the relaxed orders, and each real cost belongs to exactly one tool or posture; so the sum over all is a lower bound.
/// </remarks>
internal sealed class EntryBound(SequenceProblem problem)
{
    private readonly int[] phase = new int[problem.Count];

    /// <summary>The least cost of the changes still to come.</summary>
    public long Of(NodeSet done, int tool, int posture)
    {
        var bound = 0L;
        for (var t = 0; t < problem.ToolCost.Length; t++)
            bound += problem.ToolCost[t] * Entries(done, problem.Tool, t, t == tool);
        for (var p = 0; p < problem.PostureCost.Length; p++)
            bound += problem.PostureCost[p] * Entries(done, problem.Posture, p, p == posture);
        return bound;
    }

    private int Entries(NodeSet done, int[] kinds, int kind, bool inHand)
    {
        var start = inHand ? 1 : 0;
        var last = start;
        for (var step = 0; step < kinds.Length; step++)
        {
            if (done[step])
            {
                phase[step] = start;
                continue;
            }

            var at = start;
            foreach (var before in problem.Before[step])
                at = Math.Max(at, phase[before]);
            if (kinds[step] != SequenceProblem.None && (at & 1) != (kinds[step] == kind ? 1 : 0))
                at++;
            phase[step] = at;
            last = Math.Max(last, at);
        }

        return (last + 1) / 2 - start;
    }
}
