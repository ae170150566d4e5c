using System.Numerics;
using System.Runtime.CompilerServices;

namespace Ramwright.Planning.Sequence;

/// <summary>Which changes of tool and posture let some waiting step go on.</summary>
internal sealed class Changes(SequenceProblem problem)
{
    private readonly int[] seen = new int[(problem.ToolCost.Length + 1) * (problem.PostureCost.Length + 1)];
    private readonly List<(int Tool, int Posture)> found = [];
    private int asked;

    /// <summary>Each pair once, in the order of the steps; the list is filled anew by the next call. Nothing is changed that the step does
    /// not ask for: a change made early is never cheaper.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public List<(int Tool, int Posture)> From(ReadOnlySpan<ulong> done, int tool, int posture)
    {
        found.Clear();
        asked++;
        for (var word = 0; word < done.Length; word++)
        {
            for (var left = ~done[word] & StepsIn(word); left != 0; left &= left - 1)
            {
                var step = (word << 6) + BitOperations.TrailingZeroCount(left);
                if (!problem.CanStart(step, done))
                    continue;
                var (t, p) = (problem.Tool[step], problem.Posture[step]);
                if (t == SequenceProblem.None)
                    t = tool;
                if (p == SequenceProblem.None)
                    p = posture;
                ref var mark = ref seen[(t + 1) * (problem.PostureCost.Length + 1) + p + 1];
                if (mark != asked)
                    found.Add((t, p));
                mark = asked;
            }
        }

        return found;
    }

    private ulong StepsIn(int word) => problem.Count - (word << 6) is var rest && rest >= 64 ? ~0UL : (1UL << rest) - 1;
}
