using System.Diagnostics;
using System.Numerics;
using System.Runtime.CompilerServices;

namespace Ramwright.Planning.Sequence;

/// <summary>
/// Steps that must all be done, each after some others, each with a tool and a posture or without. What is sought is the order with the
/// least cost of changes: taking up tool t costs <see cref="ToolCost"/>[t] whenever another was in hand, and so for postures. A step without
/// a tool leaves the tool in hand where it is.
/// </summary>
/// <remarks>Steps are numbered so that each comes after all it waits for. A set of steps is a row of <see cref="Words"/> words, a bit a step.</remarks>
internal sealed class SequenceProblem
{
    public const int None = -1;

    private readonly ulong[] beforeBits;
    private readonly ulong[] toolBits;
    private readonly ulong[] postureBits;

    public SequenceProblem(int[][] before, int[] tool, int[] posture, long[] toolCost, long[] postureCost, int toolInHand, int postureNow)
    {
        Debug.Assert(before.Select((b, i) => b.All(p => p < i)).All(ok => ok), "Steps are numbered after what they wait for.");
        Debug.Assert(tool.Length == before.Length && posture.Length == before.Length, "One tool and one posture per step.");
        (Tool, Posture, ToolCost, PostureCost, ToolInHand, PostureNow) = (tool, posture, toolCost, postureCost, toolInHand, postureNow);
        Words = Math.Max(1, (before.Length + 63) / 64);
        beforeBits = new ulong[before.Length * Words];
        Before = Directly(before);
        (toolBits, postureBits) = (DoneWith(tool, toolCost.Length), DoneWith(posture, postureCost.Length));
    }

    public int Count => Before.Length;

    /// <summary>Length of a set of steps.</summary>
    public int Words { get; }

    /// <summary>For each step those that must come right before it, the latest first; what follows from others is left out.</summary>
    public int[][] Before { get; }

    /// <summary>For each step its tool, or <see cref="None"/>.</summary>
    public int[] Tool { get; }

    public int[] Posture { get; }

    public long[] ToolCost { get; }

    public long[] PostureCost { get; }

    public int ToolInHand { get; }

    public int PostureNow { get; }

    /// <summary>Whether all that a step waits for is done.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool CanStart(int step, ReadOnlySpan<ulong> done)
    {
        var before = beforeBits.AsSpan(step * Words, Words);
        for (var word = 0; word < before.Length; word++)
        {
            if ((before[word] & ~done[word]) != 0)
                return false;
        }

        return true;
    }

    /// <summary>Does every step that needs no change, to the last, and says which in <paramref name="order"/>.</summary>
    /// <remarks>Steps are numbered after what they wait for, so one pass finds them all.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Run(Span<ulong> done, int tool, int posture, List<int>? order = null)
    {
        var byTool = toolBits.AsSpan((tool + 1) * Words, Words);
        var byPosture = postureBits.AsSpan((posture + 1) * Words, Words);
        for (var word = 0; word < done.Length; word++)
        {
            for (var free = byTool[word] & byPosture[word] & ~done[word]; free != 0; free &= free - 1)
            {
                var step = (word << 6) + BitOperations.TrailingZeroCount(free);
                if (!CanStart(step, done))
                    continue;
                done[word] |= free & (0 - free);
                order?.Add(step);
            }
        }
    }

    /// <summary>How many steps a set holds.</summary>
    public static int CountOf(ReadOnlySpan<ulong> steps)
    {
        var count = 0;
        foreach (var word in steps)
            count += BitOperations.PopCount(word);
        return count;
    }

    public long ChangeCost(int fromTool, int fromPosture, int toTool, int toPosture) =>
        (toTool == fromTool ? 0 : ToolCost[toTool]) + (toPosture == fromPosture ? 0 : PostureCost[toPosture]);

    /// <summary>For nothing in hand and for each thing in hand, one after the other: the steps that can be done with it.</summary>
    private ulong[] DoneWith(int[] chosen, int kinds)
    {
        var bits = new ulong[(kinds + 1) * Words];
        for (var step = 0; step < chosen.Length; step++)
        {
            for (var inHand = None; inHand < kinds; inHand++)
            {
                if (chosen[step] == None || chosen[step] == inHand)
                    bits[(inHand + 1) * Words + (step >> 6)] |= 1UL << (step & 63);
            }
        }

        return bits;
    }

    private int[][] Directly(int[][] before)
    {
        var (all, lists) = (new ulong[beforeBits.Length], new int[before.Length][]);
        var direct = new List<int>();
        for (var step = 0; step < before.Length; step++)
        {
            direct.Clear();
            var mine = all.AsSpan(step * Words, Words);
            var own = beforeBits.AsSpan(step * Words, Words);
            Array.Sort(before[step], static (a, b) => b.CompareTo(a));
            foreach (var earlier in before[step])
            {
                if ((mine[earlier >> 6] >> (earlier & 63) & 1) != 0)
                    continue;
                for (var word = 0; word < Words; word++)
                    mine[word] |= all[earlier * Words + word];
                mine[earlier >> 6] |= 1UL << (earlier & 63);
                own[earlier >> 6] |= 1UL << (earlier & 63);
                direct.Add(earlier);
            }

            lists[step] = [.. direct];
        }

        return lists;
    }
}

/// <summary>The best order found, its cost of changes, and a cost below which no order can lie.</summary>
/// <param name="Order">Null where no order beats the cutoff.</param>
internal sealed record SequenceResult(int[]? Order, long Cost, long LowerBound, int States)
{
    public bool IsProven => LowerBound >= Cost;
}
