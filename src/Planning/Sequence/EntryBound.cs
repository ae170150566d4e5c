using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Ramwright.Planning.Sequence;

/// <summary>How often each tool and each posture must be taken up at the least: a lower bound on the cost of changes.</summary>
/// <remarks>
/// For one tool t look only at 't' against 'any other tool' and let every other change be free. In that relaxed work doing all that is
/// possible before switching is optimal, so the phase in which a step falls is the longest alternating chain that leads to it: even phases
/// are for the others, odd ones for t, and each odd phase that is entered costs one taking-up. Every real order, read as 't / not t', is one
/// of the relaxed orders, and each real cost belongs to exactly one tool or posture; so the sum over all is a lower bound.
/// <para>All tools and postures are counted side by side, one byte each. A count that reaches 255 stays there: the bound is then only lower.</para>
/// </remarks>
internal sealed class EntryBound
{
    private readonly SequenceProblem problem;
    private readonly int blocks;
    private readonly Vector256<byte>[] kind;
    private readonly Vector256<byte>[] matters;
    private readonly Vector256<byte>[] phase;
    private readonly Vector256<byte>[] start;
    private readonly Vector256<byte>[] last;

    public EntryBound(SequenceProblem problem)
    {
        this.problem = problem;
        var kinds = problem.ToolCost.Length + problem.PostureCost.Length;
        blocks = (kinds + Vector256<byte>.Count - 1) / Vector256<byte>.Count;
        (kind, matters, phase) = (Blocks(problem.Count), Blocks(problem.Count), Blocks(problem.Count));
        (start, last) = (Blocks(1), Blocks(1));
        for (var step = 0; step < problem.Count; step++)
        {
            Mark(step, problem.Tool[step], 0, problem.ToolCost.Length);
            Mark(step, problem.Posture[step], problem.ToolCost.Length, problem.PostureCost.Length);
        }
    }

    /// <summary>The least cost of the changes still to come.</summary>
    public long Of(NodeSet done, int tool, int posture)
    {
        Array.Clear(start);
        var inHand = MemoryMarshal.AsBytes(start.AsSpan());
        if (tool != SequenceProblem.None)
            inHand[tool] = 1;
        if (posture != SequenceProblem.None)
            inHand[problem.ToolCost.Length + posture] = 1;
        Array.Copy(start, last, blocks);
        for (var step = 0; step < problem.Count; step++)
        {
            var isDone = done[step];
            for (var block = 0; block < blocks; block++)
                phase[step * blocks + block] = isDone ? start[block] : PhaseOf(step, block);
        }

        var first = MemoryMarshal.AsBytes(start.AsSpan());
        var final = MemoryMarshal.AsBytes(last.AsSpan());
        var bound = 0L;
        for (var t = 0; t < problem.ToolCost.Length; t++)
            bound += problem.ToolCost[t] * ((final[t] + 1) / 2 - first[t]);
        var postures = problem.ToolCost.Length;
        for (var p = 0; p < problem.PostureCost.Length; p++)
            bound += problem.PostureCost[p] * ((final[postures + p] + 1) / 2 - first[postures + p]);
        return bound;
    }

    private Vector256<byte> PhaseOf(int step, int block)
    {
        var at = start[block];
        foreach (var before in problem.Before[step])
            at = Vector256.Max(at, phase[before * blocks + block]);
        var index = step * blocks + block;
        at = Vector256.AddSaturate(at, (at ^ kind[index]) & matters[index]);
        last[block] = Vector256.Max(last[block], at);
        return at;
    }

    /// <summary>A step with a tool speaks for that tool and against all others; one without does neither.</summary>
    private void Mark(int step, int chosen, int from, int count)
    {
        if (chosen == SequenceProblem.None)
            return;
        Set(kind, step, from + chosen);
        for (var lane = from; lane < from + count; lane++)
            Set(matters, step, lane);
    }

    private void Set(Vector256<byte>[] vectors, int step, int lane)
    {
        ref var vector = ref vectors[step * blocks + lane / Vector256<byte>.Count];
        vector = vector.WithElement(lane % Vector256<byte>.Count, (byte)1);
    }

    private Vector256<byte>[] Blocks(int steps) => new Vector256<byte>[steps * blocks];
}
