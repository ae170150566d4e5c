using System.Collections.Immutable;

namespace Ramwright.Diagnosis.Networks;

/// <summary>What is known of a variable: one of its states, both by place.</summary>
public readonly record struct Known(int Variable, int State);

/// <summary>The answer to a question to a network.</summary>
public abstract record NetworkAnswer
{
    private NetworkAnswer() { }

    /// <param name="Probabilities">Of the states asked for, in their order; they sum to 1.</param>
    /// <param name="LogEvidence">Natural logarithm of the probability of all that is known.</param>
    /// <param name="LargestCells">Cells of the largest table that was needed.</param>
    public sealed record Posterior(ImmutableArray<double> Probabilities, double LogEvidence, double LargestCells) : NetworkAnswer;

    /// <summary>What is known has probability zero: by this network it cannot happen together.</summary>
    public sealed record Contradictory : NetworkAnswer;

    /// <summary>The network is too densely linked to be exact within the limit.</summary>
    /// <param name="Cells">Cells that the tables would take.</param>
    public sealed record TooWide(double Cells, double Limit) : NetworkAnswer;
}

/// <summary>Exact posteriors in a general network by variable elimination.</summary>
/// <remarks>
/// P(x, e) = Σ over all other variables of the product of the tables, known states put in; each sum is drawn inside as far as it goes
/// (R. Dechter, Bucket elimination, Artificial Intelligence 113 (1999) 41-85). Variables that are neither asked for nor known, and have no such
/// descendant, sum to 1 and are left out first. Tables are scaled as they are made, so that nothing underflows.
/// </remarks>
public static class NetworkPosterior
{
    /// <summary>Cells of all tables together, above which the network is called too wide: half a second of work, 256 MiB.</summary>
    public const double UsualLimit = 3.2e7;

    /// <param name="of">The variable asked for, by place.</param>
    /// <param name="known">Known states, each variable at most once; the variable asked for may be among them.</param>
    /// <param name="cellLimit">Cells of all tables together, 1 or more.</param>
    /// <exception cref="ArgumentException">A variable known twice, or a place outside the network: a bug in the caller.</exception>
    public static NetworkAnswer Of(BayesNetwork network, int of, IReadOnlyCollection<Known> known, double cellLimit = UsualLimit)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(known);
        ArgumentOutOfRangeException.ThrowIfNegative(of);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(of, network.Variables.Length);
        var states = States(network, known);
        var askedFor = states[of];
        states[of] = -1; // a variable that is asked for and known keeps its table; the other states get nothing at the end
        var factors = Relevant(network, of, states).Select(v => Factor.Of(network, v, states)).ToList();
        var order = EliminationOrder.Best(factors.Select(f => f.Scope), of, network);
        if (order.TotalCells > cellLimit)
            return new NetworkAnswer.TooWide(order.TotalCells, cellLimit);

        var log = 0.0;
        foreach (var variable in order.Variables)
        {
            var with = factors.Where(f => f.Scope.Contains(variable)).ToList();
            factors.RemoveAll(with.Contains);
            factors.Add(Factor.SumOut(with, variable, network, out var logScale));
            log += logScale;
        }

        var product = Factor.Product(factors, network.Count(of));
        for (var s = 0; s < product.Length; s++)
            product[s] = askedFor >= 0 && s != askedFor ? 0 : product[s];
        var sum = product.Sum();
        return sum > 0 && double.IsFinite(log)
            ? new NetworkAnswer.Posterior([.. product.Select(p => p / sum)], log + Math.Log(sum), order.LargestCells)
            : new NetworkAnswer.Contradictory();
    }

    private static int[] States(BayesNetwork network, IReadOnlyCollection<Known> known)
    {
        var states = Enumerable.Repeat(-1, network.Variables.Length).ToArray();
        foreach (var (variable, state) in known)
        {
            if (variable < 0 || variable >= states.Length || state < 0 || state >= network.Count(variable) || states[variable] >= 0)
                throw new ArgumentException("Each known variable is one of the network, in one of its states, and known once.", nameof(known));
            states[variable] = state;
        }

        return states;
    }

    /// <summary>The variable asked for, what is known, and all ancestors of these; the rest sums to 1.</summary>
    private static IEnumerable<int> Relevant(BayesNetwork network, int of, int[] states)
    {
        var kept = new bool[network.Variables.Length];
        var open = new Stack<int>(Enumerable.Range(0, kept.Length).Where(v => v == of || states[v] >= 0));
        while (open.TryPop(out var v))
        {
            if (kept[v])
                continue;
            kept[v] = true;
            foreach (var parent in network.Tables[v].Parents)
                open.Push(parent);
        }

        return Enumerable.Range(0, kept.Length).Where(v => kept[v]);
    }
}
