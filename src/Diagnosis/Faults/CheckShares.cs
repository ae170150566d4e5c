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
        faults = [.. check.Outcomes.SelectMany(o => o.WhenFault.Select(c => c.Fault)).Distinct().Select(f => (place(f), Capped(UpTo(SharesWith(f, shares)))))];
    }

    public void Put(NoisyOr problem, string outcome)
    {
        var k = Enumerable.Range(0, ranked.Length).First(r => string.Equals(ranked[r].Id, outcome, StringComparison.Ordinal));
        OrderedOutcome.Put(problem, (k == 0 ? 0 : sound[k - 1], sound[k]), faults.Select(f => (f.Fault, k == 0 ? 0 : f.UpTo[k - 1], f.UpTo[k])));
    }

    /// <summary>The outcome most usual in a sound tool.</summary>
    public string Usual => ranked[0].Id;

    /// <summary>How often an outcome comes with exactly these faults, a probability.</summary>
    public double Share(string outcome, IReadOnlyCollection<int> present)
    {
        var k = Enumerable.Range(0, ranked.Length).First(r => string.Equals(ranked[r].Id, outcome, StringComparison.Ordinal));
        return UpTo(k, present) - (k == 0 ? 0 : UpTo(k - 1, present));
    }

    private double UpTo(int k, IReadOnlyCollection<int> present)
    {
        var product = sound[k];
        foreach (var (_, upTo) in faults.Where(f => present.Contains(f.Fault)))
            product *= upTo[k] / sound[k];
        return product;
    }

    /// <summary>A fault adds to a sound tool: it makes no outcome stronger than the usual one rarer than it is anyway.</summary>
    private double[] Capped(double[] upTo)
    {
        var least = 1.0;
        for (var k = upTo.Length - 1; k >= 0; k--)
        {
            least = Math.Min(least, upTo[k] / sound[k]);
            upTo[k] = least * sound[k];
        }

        return upTo;
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
