namespace Ramwright.Diagnosis.Actions;

/// <summary>Steps that belong to the same acts, taken together: the search then counts in a few groups instead of many steps.</summary>
internal sealed class StepGroups
{
    private readonly List<UInt128> groups;

    public StepGroups(OpeningCosts costs, IReadOnlyList<UInt128> acts)
    {
        var steps = Enumerable.Range(0, costs.Nodes.Count);
        groups = [.. steps.GroupBy(s => string.Concat(acts.Append(costs.Start).Select(a => (a >> s & 1) == 1 ? '1' : '0')), StringComparer.Ordinal)
            .Select(g => g.Aggregate(UInt128.Zero, (bits, s) => bits | UInt128.One << s))];
        if (groups.Count > 64)
            throw new InvalidOperationException("Acts are bounded so that their steps fall into at most 64 groups.");
        (Opening, Closing) = (Sums(costs.OpeningMoney), Sums(costs.ClosingMoney));
    }

    /// <summary>Cost of each group on the way in, money.</summary>
    public double[] Opening { get; }

    /// <summary>Cost of each group on the way back, money.</summary>
    public double[] Closing { get; }

    /// <summary>The groups of some steps; a group is in or out as a whole.</summary>
    public ulong Of(UInt128 steps)
    {
        var bits = 0UL;
        for (var g = 0; g < groups.Count; g++)
            bits |= (steps & groups[g]) != 0 ? 1UL << g : 0;
        return bits;
    }

    private double[] Sums(double[] costs) => [.. groups.Select(g => costs.Where((_, s) => (g >> s & 1) == 1).Sum())];
}
