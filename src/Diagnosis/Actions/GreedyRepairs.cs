namespace Ramwright.Diagnosis.Actions;

/// <summary>The usual rule: repair by repair, the greatest chance of success for its cost first (p/ΔC), a run after each, given up where going on would cost more.</summary>
internal static class GreedyRepairs
{
    /// <summary>What is left of the weight when the rule goes no further: the rest counts as given up.</summary>
    private const double Negligible = 1e-4;

    /// <summary>The rule's expected cost from a state, weighted, and its first act.</summary>
    public static (double Cost, Act First) From(ActionProblem problem, ActionBeliefs beliefs, ActionState state, double weight)
    {
        var chain = new List<(double Weight, double Step)>();
        var (first, enough) = (default(Act?), Negligible * weight);
        if (state.Pending != 0 || !state.Failed && (state.Tried | state.Pending) == 0 && BestRemedy(problem, beliefs, state, weight) is null)
            first = Run(problem, beliefs, ref state, ref weight, chain, 0);
        while (weight > enough && BestRemedy(problem, beliefs, state, weight) is { } remedy)
        {
            var act = problem.Remedies[remedy];
            var cost = problem.OpenCost(state.Open, act.Opens) + act.Work;
            state = state with { Pending = 1 << remedy, Open = state.Open | act.Opens };
            Run(problem, beliefs, ref state, ref weight, chain, cost);
            first ??= new Act(ActKind.Remedy, remedy);
        }

        var rest = weight * problem.GiveUp;
        for (var i = chain.Count - 1; i >= 0; i--)
        {
            var (before, step) = chain[i];
            var on = before * step + rest;
            rest = Math.Min(before * problem.GiveUp, on);
            if (i == 0 && before * problem.GiveUp < on)
                first = new Act(ActKind.GiveUp, 0);
        }

        return (rest, first ?? new Act(ActKind.GiveUp, 0));
    }

    private static Act Run(ActionProblem problem, ActionBeliefs beliefs, ref ActionState state, ref double weight, List<(double, double)> chain, double cost)
    {
        chain.Add((weight, cost + problem.CloseCost(state.Open) + problem.Test));
        weight = beliefs.Fails(state);
        state = new(state.Tried | state.Pending, 0, state.Seen, 0, true);
        return new Act(ActKind.Test, 0);
    }

    private static int? BestRemedy(ActionProblem problem, ActionBeliefs beliefs, ActionState state, double weight)
    {
        var (best, greatest) = (default(int?), 0.0);
        var likelihood = beliefs.Likely(state.Seen);
        var done = state.Tried | state.Pending;
        for (var a = 0; a < problem.Remedies.Length; a++)
        {
            if ((done >> a & 1) == 1)
                continue;
            var act = problem.Remedies[a];
            var gain = weight - beliefs.Fails(likelihood, done | 1 << a);
            var price = problem.OpenCost(state.Open, act.Opens) + act.Work + problem.CloseCost(state.Open | act.Opens) + problem.Test;
            var ratio = gain / Math.Max(1e-9, price);
            if (gain > 1e-12 * weight && ratio > greatest)
                (best, greatest) = (a, ratio);
        }

        return best;
    }
}
