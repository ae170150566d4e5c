namespace Ramwright.Diagnosis.Actions;

/// <summary>Unnormalised weights of the cases at a state, and bounds on what is still to pay. All sums are weighted: divide by the state's weight for an expectation.</summary>
internal sealed class ActionBeliefs(ActionProblem problem)
{
    private const int MostInArray = 14;
    private readonly double[]?[] few = new double[]?[problem.Remedies.Length <= MostInArray ? 1 << problem.Remedies.Length : 0];
    private readonly Dictionary<int, double[]> many = [];
    private readonly Dictionary<UInt128, double[]> likely = [];
    private readonly double[] remedyCosts = new double[problem.Remedies.Length];

    /// <summary>By case the probability that all its faults are mended.</summary>
    public double[] Mended(int remedies)
    {
        if (remedies < few.Length)
            return few[remedies] ??= Computed(remedies);
        if (!many.TryGetValue(remedies, out var by))
            many[remedies] = by = Computed(remedies);
        return by;
    }

    private double[] Computed(int remedies) => [.. Enumerable.Range(0, problem.Cases.Length).Select(h => problem.Mended(remedies, h))];

    /// <summary>P(case, what was seen, still failing).</summary>
    public double[] At(ActionState state)
    {
        var weights = (double[])Likely(state.Seen).Clone();
        if (state.Failed)
        {
            var gone = Mended(state.Tried);
            for (var h = 0; h < weights.Length; h++)
                weights[h] *= 1 - gone[h];
        }

        return weights;
    }

    /// <summary>Weight with which the run after the pending remedies fails again.</summary>
    public double Fails(ActionState state) => Fails(Likely(state.Seen), state.Tried | state.Pending);

    /// <summary>The same from what was seen, a probability by case, and remedies.</summary>
    public double Fails(double[] likelihood, int remedies)
    {
        var gone = Mended(remedies);
        var sum = 0.0;
        for (var h = 0; h < gone.Length; h++)
            sum += likelihood[h] * (1 - gone[h]);
        return sum;
    }

    /// <summary>What must still be paid even by one who knew the case: weighted lower bound.</summary>
    /// <remarks>Closing and a run at least, and on top the dearest of the case's faults, each by its cheapest remedy not yet tried; nothing for what a pending one may have mended.</remarks>
    public double Least(ActionState state, double[] weights)
    {
        var close = problem.CloseCost(state.Open) + problem.Test;
        for (var a = 0; a < remedyCosts.Length; a++)
        {
            var opens = problem.Remedies[a].Opens & ~state.Open;
            remedyCosts[a] = (state.Pending >> a & 1) == 1 ? 0
                : (state.Tried >> a & 1) == 1 ? double.PositiveInfinity : problem.Remedies[a].Work + problem.OpenCost(0, opens) + problem.CloseCost(opens);
        }

        var sum = 0.0;
        for (var h = 0; h < weights.Length; h++)
        {
            if (weights[h] > 0)
                sum += weights[h] * Math.Min(problem.GiveUp, close + LeastRemedy(state.Tried, problem.Cases[h]));
        }

        return sum;
    }

    private double LeastRemedy(int tried, int[] faults)
    {
        var most = 0.0;
        foreach (var fault in faults)
        {
            var least = double.PositiveInfinity;
            for (var a = 0; a < remedyCosts.Length; a++)
            {
                if (problem.Remedies[a].Mends[fault] > 0)
                    least = Math.Min(least, (tried >> a & 1) == 1 && faults.Length > 1 ? 0 : remedyCosts[a]); // one of several faults may be gone already
            }

            most = Math.Max(most, least);
        }

        return most;
    }

    /// <summary>By case the probability of it and of what was seen.</summary>
    public double[] Likely(UInt128 seen)
    {
        if (likely.TryGetValue(seen, out var by))
            return by;
        by = (double[])problem.Weights.Clone();
        for (var look = 0; look < problem.Looks.Length; look++)
        {
            var outcome = (int)(seen >> (4 * look) & 15) - 1;
            for (var h = 0; outcome >= 0 && h < by.Length; h++)
                by[h] *= problem.Looks[look].Likelihood[outcome][h];
        }

        return likely[seen] = by;
    }
}
