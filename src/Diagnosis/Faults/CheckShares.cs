using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Faults;

/// <summary>The outcomes of a check by rank, and how often each comes in a sound tool and with each fault alone.</summary>
/// <remarks>
/// The outcome most usual in a sound tool ranks lowest; of the others the one that stands first in the model is the strongest. A fault that names only some outcomes
/// leaves the rest of its share to the others in the proportion of a sound tool.
/// </remarks>
internal sealed class CheckShares
{
    private readonly ImmutableArray<CheckOutcome> ranked;
    private readonly double[] sound;
    private readonly ImmutableArray<(int Fault, double[] UpTo)> faults;

    public CheckShares(Check check, Func<FaultId, int> place)
    {
        var usual = check.Outcomes.MaxBy(o => o.WhenSound)!;
        ranked = [usual, .. check.Outcomes.Where(o => !ReferenceEquals(o, usual)).Reverse()];
        var shares = ranked.Select(o => o.WhenSound).ToArray();
        sound = UpTo(shares);
        faults = [.. check.Outcomes.SelectMany(o => o.WhenFault.Select(c => c.Fault)).Distinct().Select(f => (place(f), UpTo(SharesWith(f, shares))))];
    }

    public void Put(NoisyOr problem, string outcome)
    {
        var k = Enumerable.Range(0, ranked.Length).First(r => string.Equals(ranked[r].Id, outcome, StringComparison.Ordinal));
        OrderedOutcome.Put(problem, (k == 0 ? 0 : sound[k - 1], sound[k]), faults.Select(f => (f.Fault, k == 0 ? 0 : f.UpTo[k - 1], f.UpTo[k])));
    }

    private double[] SharesWith(FaultId fault, double[] shares)
    {
        var stated = ranked.Select(o => o.WhenFault.FirstOrDefault(c => c.Fault == fault)?.Probability).ToArray();
        var rest = Math.Max(0, 1 - stated.Sum(s => s ?? 0));
        var open = stated.Select((s, k) => s is null ? shares[k] : 0).Sum();
        return [.. stated.Select((s, k) => s ?? (open > 0 ? rest * shares[k] / open : 0))];
    }

    /// <summary>Running sums, scaled so that the last is 1.</summary>
    private static double[] UpTo(double[] shares)
    {
        var sums = new double[shares.Length];
        var sum = 0.0;
        for (var k = 0; k < sums.Length; k++)
            sums[k] = sum += shares[k];
        return sum > 0 ? [.. sums.Select(s => s / sum)] : [.. sums.Select((_, k) => k == sums.Length - 1 ? 1.0 : 0)];
    }
}
