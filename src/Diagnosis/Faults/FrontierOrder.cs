using System.Collections.Immutable;

namespace Ramwright.Diagnosis.Faults;

/// <summary>One fault taken in: findings that it is the first to touch come in, those that it is the last to touch go out.</summary>
internal sealed record FrontierStep(int Fault, ImmutableArray<int> Opens, ImmutableArray<(int Finding, double Chance)> Touches, ImmutableArray<int> Closes);

/// <summary>In which order faults are taken in, so that few findings are open at once.</summary>
/// <param name="Cells">Cells of all tables together, two for each open finding multiplied.</param>
internal sealed record FrontierOrder(ImmutableArray<FrontierStep> Steps, double Cells)
{
    /// <summary>Greedy: the fault that leaves the fewest findings open comes next.</summary>
    public static FrontierOrder Of(NoisyOr problem)
    {
        var touches = Enumerable.Range(0, problem.Count).Select(_ => new List<(int Finding, double Chance)>()).ToArray();
        var waiting = new int[problem.Positives.Count];
        for (var d = 0; d < waiting.Length; d++)
        {
            foreach (var (fault, chance) in problem.Positives[d].Causes.Where(c => c.Chance > 0))
            {
                touches[fault].Add((d, chance));
                waiting[d]++;
            }
        }

        var left = Enumerable.Range(0, problem.Count).Where(i => touches[i].Count > 0).ToList();
        var open = new HashSet<int>();
        var steps = ImmutableArray.CreateBuilder<FrontierStep>(left.Count);
        var cells = 0.0;
        while (left.Count > 0)
        {
            var next = left.MinBy(i => (touches[i].Count(t => !open.Contains(t.Finding)) - touches[i].Count(t => waiting[t.Finding] == 1), touches[i].Count, i));
            left.Remove(next);
            ImmutableArray<int> opens = [.. touches[next].Select(t => t.Finding).Where(open.Add)];
            cells += Math.Pow(2, open.Count);
            ImmutableArray<int> closes = [.. touches[next].Select(t => t.Finding).Where(d => --waiting[d] == 0)];
            open.ExceptWith(closes);
            steps.Add(new(next, opens, [.. touches[next]], closes));
        }

        return new(steps.MoveToImmutable(), cells);
    }
}
