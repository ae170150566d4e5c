using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Ramwright.Planning.Sequence;

/// <summary>How often each tool and each posture must be taken up at the least: a lower bound on the cost of changes.</summary>
/// <remarks>
/// For one tool t look only at 't' against 'any other tool' and let every other change be free. In that relaxed work doing all that is
/// possible before switching is optimal, so the phase in which a step falls is the longest alternating chain that leads to it: even phases
/// are for the others, odd ones for t, and each odd phase that is entered costs one taking-up. Every real order, read as 't / not t', is one
/// of the relaxed orders, and each real cost belongs to exactly one tool or posture; so the sum over all is a lower bound.
/// <para>All tools and postures are counted side by side, one byte each, 32 to a block. A count that reaches 255 stays there: the bound is
/// then only lower.</para>
/// </remarks>
internal sealed class EntryBound
{
    private static readonly int Lanes = Vector256<byte>.Count;

    private readonly SequenceProblem problem;
    private readonly int blocks;
    private readonly Vector256<byte>[][] kind;
    private readonly Vector256<byte>[][] matters;
    private readonly Vector256<byte>[] phase;
    private readonly Vector256<byte>[] start;
    private readonly Vector256<byte>[] last;

    public EntryBound(SequenceProblem problem)
    {
        this.problem = problem;
        var postures = problem.ToolCost.Length;
        var kinds = postures + problem.PostureCost.Length;
        blocks = (kinds + Lanes - 1) / Lanes;
        (kind, matters) = (new Vector256<byte>[blocks][], new Vector256<byte>[blocks][]);
        (phase, start, last) = (new Vector256<byte>[problem.Count], new Vector256<byte>[blocks], new Vector256<byte>[blocks]);
        for (var block = 0; block < blocks; block++)
        {
            (kind[block], matters[block]) = (new Vector256<byte>[problem.Count], new Vector256<byte>[problem.Count]);
            Mark(block, problem.Tool, 0, postures);
            Mark(block, problem.Posture, postures, kinds);
        }
    }

    /// <summary>The least cost of the changes still to come.</summary>
    public long Of(ReadOnlySpan<ulong> done, int tool, int posture)
    {
        Array.Clear(start);
        var postures = problem.ToolCost.Length;
        var first = MemoryMarshal.AsBytes(start.AsSpan());
        if (tool != SequenceProblem.None)
            first[tool] = 1;
        if (posture != SequenceProblem.None)
            first[postures + posture] = 1;
        for (var block = 0; block < blocks; block++)
            last[block] = LastPhase(done, start[block], kind[block], matters[block]);

        var final = MemoryMarshal.AsBytes(last.AsSpan());
        var bound = 0L;
        for (var t = 0; t < postures; t++)
            bound += problem.ToolCost[t] * (((final[t] + 1) >> 1) - first[t]);
        for (var p = 0; p < problem.PostureCost.Length; p++)
            bound += problem.PostureCost[p] * (((final[postures + p] + 1) >> 1) - first[postures + p]);
        return bound;
    }

    /// <summary>The highest phase that any step left falls in. The inner loop of every search, so it is compiled at once for what it will be.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private Vector256<byte> LastPhase(ReadOnlySpan<ulong> done, Vector256<byte> from, Vector256<byte>[] kinds, Vector256<byte>[] matter)
    {
        var highest = from;
        var phases = phase;
        var before = problem.Before;
        for (var step = 0; step < before.Length; step++)
        {
            var at = from;
            if ((done[step >> 6] >> (step & 63) & 1) == 0)
            {
                foreach (var earlier in before[step])
                    at = Vector256.Max(at, phases[earlier]);
                at = Vector256.AddSaturate(at, (at ^ kinds[step]) & matter[step]);
                highest = Vector256.Max(highest, at);
            }

            phases[step] = at;
        }

        return highest;
    }

    /// <summary>A step with a tool speaks for that tool and against all others; one without does neither.</summary>
    private void Mark(int block, int[] chosen, int from, int to)
    {
        var own = MemoryMarshal.AsBytes(kind[block].AsSpan());
        var all = MemoryMarshal.AsBytes(matters[block].AsSpan());
        var (first, end) = (Math.Max(0, from - block * Lanes), Math.Min(Lanes, to - block * Lanes));
        if (first >= end)
            return;
        for (var step = 0; step < chosen.Length; step++)
        {
            if (chosen[step] == SequenceProblem.None)
                continue;
            all[(step * Lanes + first)..(step * Lanes + end)].Fill(1);
            if (from + chosen[step] - block * Lanes is >= 0 and var lane && lane < Lanes)
                own[step * Lanes + lane] = 1;
        }
    }
}
