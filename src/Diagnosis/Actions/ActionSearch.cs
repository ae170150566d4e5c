namespace Ramwright.Diagnosis.Actions;

/// <summary>The cheapest policy found.</summary>
/// <param name="Low">The least that any policy costs: lower bound, money.</param>
/// <param name="Cost">Expected cost of the policy found, money.</param>
/// <param name="First">Its first act.</param>
/// <param name="ByAct">For each act at the start the expected cost of the best policy found that begins with it.</param>
internal sealed record ActionPolicy(double Low, double Cost, Act First, IReadOnlyList<(Act Act, double Cost)> ByAct, int States)
{
    public bool IsProven => Cost - Low <= 1e-7 * (1 + Cost);
}

/// <summary>Expected cost by dynamic programming over states, deepened step by step until the bounds meet or the limit is reached.</summary>
/// <remarks>
/// V(s) = min over acts of cost + Σ P(outcome) V(s'). A state holds which remedies were tried in vain, which are done but not run, what was seen and what is
/// open, not in which order: the belief depends on nothing else. Below the present depth V lies between what one who knew the case would pay
/// (<see cref="ActionBeliefs.Least"/>) and what the p/ΔC rule pays (<see cref="GreedyRepairs"/>); acts that cannot beat the best are passed over.
/// When both bounds meet, no deeper look can change the answer and the policy is optimal.
/// </remarks>
internal sealed class ActionSearch
{
    private readonly ActionProblem problem;
    private readonly ActionBeliefs beliefs;
    private readonly int stateLimit;
    private readonly Dictionary<(ActionState, int), (double Low, double High)> kept = [];
    private readonly Dictionary<ActionState, (double Low, double High)> settled = [];
    private readonly Dictionary<ActionState, (double Low, double High)> leaves = [];
    private int states;

    private ActionSearch(ActionProblem problem, int stateLimit) => (this.problem, beliefs, this.stateLimit) = (problem, new(problem), stateLimit);

    public static ActionPolicy Solve(ActionProblem problem, int stateLimit) => new ActionSearch(problem, stateLimit).Deepen();

    private ActionPolicy Deepen()
    {
        var start = problem.Start;
        var weights = beliefs.At(start);
        var weight = weights.Sum();
        var (greedy, first) = GreedyRepairs.From(problem, beliefs, start, weight);
        var best = new ActionPolicy(beliefs.Least(start, weights) / weight, greedy / weight, first, [(first, greedy / weight)], 0);
        var deepest = 2 * problem.Remedies.Length + problem.Looks.Length + 2;
        for (var depth = 1; depth <= deepest && !best.IsProven && states <= stateLimit; depth++)
        {
            kept.Clear();
            var byAct = new List<(Act Act, double Low, double High)>();
            foreach (var (act, _) in InOrder(start, weight))
            {
                var (low, high) = After(start, act, weight, depth - 1, double.PositiveInfinity);
                byAct.Add((act, low, high));
            }

            if (states > stateLimit && depth > 1)
                break; // acts that were looked at less far cannot be set beside the others
            var chosen = byAct.MinBy(a => a.High);
            best = new(Math.Max(best.Low, byAct.Min(a => a.Low) / weight), Math.Min(best.Cost, chosen.High / weight), chosen.High / weight <= best.Cost ? chosen.Act : best.First,
                [.. byAct.Select(a => (a.Act, a.High / weight)).OrderBy(a => a.Item2)], states);
        }

        return best with { Low = Math.Min(best.Low, best.Cost), States = states };
    }

    /// <summary>Acts by what they cost at least.</summary>
    private List<(Act Act, double Low)> InOrder(ActionState state, double weight)
    {
        var acts = Acts(state).Select(a => (Act: a, After(state, a, weight, 0, double.PositiveInfinity).Low)).ToList();
        acts.Sort((a, b) => a.Low.CompareTo(b.Low));
        return acts;
    }

    /// <summary>Bounds on the cost from a state on, weighted.</summary>
    private (double Low, double High) Value(ActionState state, double weight, int depth)
    {
        if (weight <= 0)
            return (0, 0);
        if (depth > 0 && (settled.TryGetValue(state, out var done) || kept.TryGetValue((state, depth), out done)))
            return done;
        var (low, high) = Leaf(state, weight);
        if (depth == 0 || low >= high * (1 - 1e-9) || states > stateLimit)
            return (low, high);
        var least = high;
        foreach (var act in InOrder(state, weight))
        {
            if (act.Low >= high)
                break;
            var (lowAct, highAct) = After(state, act.Act, weight, depth - 1, high);
            (least, high) = (Math.Min(least, lowAct), Math.Min(high, highAct));
        }

        low = Math.Min(high, Math.Max(low, Math.Min(least, high)));
        if (high - low <= 1e-9 * high)
            settled[state] = (low, high);
        else
            kept[(state, depth)] = (low, high);
        return (low, high);
    }

    /// <summary>The bounds without looking ahead.</summary>
    private (double Low, double High) Leaf(ActionState state, double weight)
    {
        if (leaves.TryGetValue(state, out var known))
            return known;
        states++;
        var low = beliefs.Least(state, beliefs.At(state));
        var high = GreedyRepairs.From(problem, beliefs, state, weight).Cost;
        return leaves[state] = (Math.Min(low, high), high);
    }

    /// <summary>Bounds on the cost of an act and all that follows, weighted; cut short, with a valid lower bound, once it cannot beat <paramref name="beat"/>.</summary>
    private (double Low, double High) After(ActionState state, Act act, double weight, int depth, double beat)
    {
        switch (act.Kind)
        {
            case ActKind.GiveUp:
                return (weight * problem.GiveUp, weight * problem.GiveUp);
            case ActKind.Test:
                return Plus(weight * (problem.CloseCost(state.Open) + problem.Test), Value(new(state.Tried | state.Pending, 0, state.Seen, 0, true), beliefs.Fails(state), depth));
            case ActKind.Remedy:
                var remedy = problem.Remedies[act.Index];
                return Plus(weight * (problem.OpenCost(state.Open, remedy.Opens) + remedy.Work),
                    Value(state with { Pending = state.Pending | 1 << act.Index, Open = state.Open | remedy.Opens }, weight, depth));
            default:
                return Look(state, act.Index, weight, depth, beat);
        }
    }

    private (double Low, double High) Look(ActionState state, int index, double weight, int depth, double beat)
    {
        var look = problem.Looks[index];
        var open = look.Live ? 0 : state.Open | look.Opens;
        var paid = weight * (look.Work + (look.Live ? problem.CloseCost(state.Open) : problem.OpenCost(state.Open, look.Opens)));
        var before = beliefs.At(state);
        var next = look.Likelihood.Select((likelihood, o) => (State: state with { Seen = state.Seen | (UInt128)(o + 1) << (4 * index), Open = open }, Weight: Dot(before, likelihood))).ToArray();
        var lows = next.Select(n => n.Weight > 0 ? Value(n.State, n.Weight, 0).Low : 0).ToArray();
        var (low, high) = (paid + lows.Sum(), paid);
        for (var o = 0; o < next.Length; o++)
        {
            if (low >= beat)
                return (low, double.PositiveInfinity);
            var value = Value(next[o].State, next[o].Weight, depth);
            (low, high) = (low - lows[o] + value.Low, high + value.High);
        }

        return (low, high);
    }

    private IEnumerable<Act> Acts(ActionState state)
    {
        yield return new(ActKind.GiveUp, 0);
        if (state.Pending != 0 || !state.Failed)
            yield return new(ActKind.Test, 0);
        for (var a = 0; a < problem.Remedies.Length; a++)
        {
            if (((state.Tried | state.Pending) >> a & 1) == 0)
                yield return new(ActKind.Remedy, a);
        }

        for (var l = 0; l < problem.Looks.Length; l++)
        {
            if (CanLook(state, l))
                yield return new(ActKind.Look, l);
        }
    }

    /// <summary>Not made, nothing like it made; with a repair not yet run, the run comes before any other work on the closed tool.</summary>
    private bool CanLook(ActionState state, int look)
    {
        if (problem.Looks[look].Live && state.Pending != 0)
            return false;
        for (var other = 0; other < problem.Looks.Length; other++)
        {
            if ((state.Seen >> (4 * other) & 15) != 0 && (other == look || (problem.Looks[look].Excludes >> other & 1) == 1))
                return false;
        }

        return true;
    }

    private static (double Low, double High) Plus(double paid, (double Low, double High) rest) => (paid + rest.Low, paid + rest.High);

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }
}
