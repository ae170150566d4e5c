using System.Collections.Immutable;

namespace Ramwright.Diagnosis.Networks;

/// <summary>A discrete variable and its states, in the order of its table.</summary>
public sealed record NetworkVariable(string Name, ImmutableArray<string> States)
{
    /// <summary>The place of a state by name, or -1.</summary>
    public int StateIndex(string state) => States.IndexOf(state);
}

/// <summary>The probabilities of one variable given its parents.</summary>
/// <param name="Parents">Variables by their place in the network, the first slowest.</param>
/// <param name="Rows">One row per combination of the parents' states, the last parent fastest; in each row the variable's own states. Each row sums to 1.</param>
public sealed record NetworkTable(ImmutableArray<int> Parents, ImmutableArray<double> Rows);

/// <summary>A general discrete Bayesian network: a variable for each place, and for each a table. No variable is its own ancestor.</summary>
public sealed record BayesNetwork(ImmutableArray<NetworkVariable> Variables, ImmutableArray<NetworkTable> Tables)
{
    /// <summary>The place of a variable by name, or -1.</summary>
    public int IndexOf(string name)
    {
        for (var i = 0; i < Variables.Length; i++)
        {
            if (string.Equals(Variables[i].Name, name, StringComparison.Ordinal))
                return i;
        }

        return -1;
    }

    /// <summary>How many states a variable has.</summary>
    public int Count(int variable) => Variables[variable].States.Length;
}
