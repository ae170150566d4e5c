using System.Collections.Immutable;
using Ramwright.Diagnosis.Faults;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Actions;

/// <summary>Turns a tool on the bench into the search's numbers, and its policy back into advice. The search takes the six looks that by themselves save most; all are listed.</summary>
internal sealed class AdviceProblem
{
    private const int MostRemedies = 20, MostLooks = 24, LooksSearched = 6;
    private const double LeastBits = 0.002;
    private readonly FaultNetwork network;
    private readonly ActionOptions options;
    private readonly AdviceCases cases;
    private readonly OpeningCosts costs;
    private readonly List<(Remedy Remedy, Opening Opening)> remedies;
    private readonly StepGroups groups;
    private readonly ImmutableArray<LookWorth> worth;
    private readonly ActionProblem problem;
    private List<(PossibleLook Look, Opening Opening, double Bits)> looks;

    public AdviceProblem(FaultNetwork network, ActionOptions options, ImmutableArray<Datum> data, AdviceCases cases)
    {
        (this.network, this.options, this.cases) = (network, options, cases);
        costs = new(network.Model, options.Rates, options.Open);
        costs.TakeStart();
        var live = cases.Faults.SelectMany(f => f).Select(i => network.Model.Faults[i].Id).ToHashSet();
        remedies = [.. network.Model.Remedies.Where(r => r.Mends.Any(m => m.Probability > 0 && live.Contains(m.Fault)))
            .Select(r => (Remedy: r, Opening: costs.To(r.Frees))).Where(r => r.Opening is not null).Take(MostRemedies).Select(r => (r.Remedy, r.Opening!))];
        looks = [.. PossibleLook.Of(network, data, cases.Faults).Select(l => (Look: l, Bits: Information(l.Likelihood))).Where(l => l.Bits >= LeastBits)
            .OrderByDescending(l => l.Bits).Take(MostLooks).Select(l => (l.Look, Opening: costs.To(l.Look.Needs), l.Bits)).Where(l => l.Opening is not null).Select(l => (l.Look, l.Opening!, l.Bits))];
        costs.Settle();
        groups = new(costs, [.. remedies.Select(r => r.Opening.Steps), .. looks.Select(l => l.Opening.Steps)]);
        problem = Problem();
        ImmutableArray<LookWorth> all = [.. looks.Select((_, i) => Worth(i))];
        worth = [.. all.OrderByDescending(Net)];
        looks = [.. looks.Select((l, i) => (Look: l, all[i])).OrderByDescending(l => Net(l.Item2)).Select(l => l.Look).Take(LooksSearched)];
        problem = Problem();
    }

    public Advice Advise()
    {
        var policy = ActionSearch.Solve(problem, options.StateLimit);
        var byAct = policy.ByAct.ToDictionary(a => a.Act, a => a.Cost);
        var next = Priced(policy.First, policy.Cost);
        return new()
        {
            Next = next,
            AlongWithIt = AlongWith(policy.First),
            ExpectedCost = Money(policy.Cost),
            Gap = Money(policy.IsProven ? 0 : policy.Cost - policy.Low),
            Others = [.. byAct.Where(a => a.Key != policy.First && double.IsFinite(a.Value)).OrderBy(a => a.Value).Take(6).Select(a => Priced(a.Key, a.Value))],
            Looks = worth,
            LeftOutProbability = cases.LeftOut,
            StatesSearched = policy.States,
        };
    }

    private ActionProblem Problem()
    {
        var ids = looks.Select(l => l.Look.Id).ToList();
        return new()
        {
            Weights = cases.Weights,
            Cases = cases.Faults,
            Remedies = [.. remedies.Select(r => new RemedyAct(groups.Of(r.Opening.Steps), (double)WorkPrice(r.Remedy, r.Opening), MendsOf(r.Remedy)))],
            Looks = [.. looks.Select(l => new LookAct(groups.Of(l.Opening.Steps), (double)options.Rates.CostOf(l.Look.Time).Amount, l.Look.Live, l.Look.Likelihood,
                l.Look.Excludes.Select(e => ids.IndexOf(e)).Where(i => i >= 0).Sum(i => 1 << i)))],
            Opening = groups.Opening,
            Closing = groups.Closing,
            Test = (double)options.Rates.CostOf(options.TestRun).Amount,
            GiveUp = (double)(options.GivenUp ?? options.Rates.CostOf(TimeSpan.FromHours(20))).Amount,
            Start = new(Tried(), 0, 0, groups.Of(costs.Start), !options.Tried.IsEmpty),
        };
    }

    private int Tried() => remedies.Select((r, i) => options.Tried.Contains(r.Remedy.Id) ? 1 << i : 0).Sum();

    private double[] MendsOf(Remedy remedy) =>
        [.. network.Model.Faults.Select(f => remedy.Mends.FirstOrDefault(m => m.Fault == f.Id)?.Probability ?? 0)];

    /// <summary>The remedy's own minutes and the parts that it renews, but for those that the way in renews anyway.</summary>
    private decimal WorkPrice(Remedy remedy, Opening opening) => options.Rates.CostOf(remedy.Time).Amount
        + remedy.Renews.Where(p => !opening.Renewed.Contains(p)).Sum(p => (network.Model.FindPart(p)?.Count ?? 1) * (network.Model.FindPart(p)?.Price?.Amount ?? 0));

    private PricedAct Priced(Act act, double expected)
    {
        var (tested, passes) = (options.TestRun, Passes(act));
        return act.Kind switch
        {
            ActKind.Remedy => new(ServiceActOf(act), remedies[act.Index].Opening.Time + remedies[act.Index].Remedy.Time,
                new(remedies[act.Index].Opening.Price + WorkPrice(remedies[act.Index].Remedy, remedies[act.Index].Opening), Currency), Money(expected), passes, Nodes(remedies[act.Index].Opening)),
            ActKind.Look => new(ServiceActOf(act), looks[act.Index].Opening.Time + looks[act.Index].Look.Time,
                new(looks[act.Index].Opening.Price + options.Rates.CostOf(looks[act.Index].Look.Time).Amount, Currency), Money(expected), null, Nodes(looks[act.Index].Opening)),
            ActKind.Test => new(ServiceActOf(act), tested, options.Rates.CostOf(tested), Money(expected), passes, []),
            _ => new(ServiceActOf(act), TimeSpan.Zero, Money(problem.GiveUp), Money(expected), null, []),
        };
    }

    private ServiceAct ServiceActOf(Act act) => act.Kind switch
    {
        ActKind.Remedy => new ServiceAct.Repair(remedies[act.Index].Remedy.Id),
        ActKind.Look => looks[act.Index].Look.Act,
        ActKind.Test => new ServiceAct.RunIt(),
        _ => new ServiceAct.Stop(),
    };

    private double? Passes(Act act)
    {
        if (act.Kind is not (ActKind.Remedy or ActKind.Test))
            return null;
        var beliefs = new ActionBeliefs(problem);
        var state = act.Kind == ActKind.Remedy ? problem.Start with { Pending = 1 << act.Index } : problem.Start;
        return 1 - beliefs.Fails(state) / beliefs.At(problem.Start).Sum();
    }

    /// <summary>Repairs that the policy adds before the next run; found by asking again behind each.</summary>
    private ImmutableArray<ServiceAct> AlongWith(Act first)
    {
        var along = ImmutableArray.CreateBuilder<ServiceAct>();
        var state = problem.Start;
        for (var act = first; act.Kind == ActKind.Remedy && along.Count < 3;)
        {
            state = state with { Pending = state.Pending | 1 << act.Index, Open = state.Open | problem.Remedies[act.Index].Opens };
            act = ActionSearch.Solve(problem.From(state), Math.Max(1, options.StateLimit / 6)).First;
            if (act.Kind == ActKind.Remedy)
                along.Add(ServiceActOf(act));
        }

        return along.ToImmutable();
    }

    private static decimal Net(LookWorth look) => look.Saves.Amount - look.Price.Amount;

    private LookWorth Worth(int index)
    {
        var (look, opening, bits) = looks[index];
        var beliefs = new ActionBeliefs(problem);
        var start = problem.Start;
        var now = beliefs.At(start);
        var (before, total) = (GreedyRepairs.From(problem, beliefs, start, now.Sum()).Cost, now.Sum());
        var after = 0.0;
        var outcomes = ImmutableArray.CreateBuilder<LookOutcome>();
        for (var o = 0; o < look.Outcomes.Length; o++)
        {
            var state = start with { Seen = (UInt128)(o + 1) << (4 * index) };
            var weights = beliefs.At(state);
            var weight = weights.Sum();
            if (weight <= 0)
                continue;
            after += GreedyRepairs.From(problem, beliefs, state, weight).Cost;
            var (fault, probability) = Likeliest(weights, weight);
            outcomes.Add(new(look.Outcomes[o].Id, look.Outcomes[o].Name, weight / total, fault, probability));
        }

        return new(look.Act, opening.Time + look.Time, new(opening.Price + options.Rates.CostOf(look.Time).Amount, Currency), Money(Math.Max(0, before - after) / total), bits, outcomes.ToImmutable());
    }

    private (FaultId? Fault, double Probability) Likeliest(double[] weights, double sum)
    {
        var by = new double[network.Model.Faults.Length];
        var sound = 0.0;
        for (var h = 0; h < weights.Length; h++)
        {
            foreach (var fault in cases.Faults[h])
                by[fault] += weights[h] / sum;
            sound += cases.Faults[h].Length == 0 ? weights[h] / sum : 0;
        }

        var best = Array.IndexOf(by, by.Max());
        return sound > by[best] ? (null, sound) : (network.Model.Faults[best].Id, by[best]);
    }

    /// <summary>Mutual information of outcome and case.</summary>
    private double Information(double[][] likelihood)
    {
        var bits = 0.0;
        foreach (var row in likelihood)
        {
            var mean = row.Zip(cases.Weights, (p, w) => p * w).Sum();
            for (var h = 0; h < row.Length; h++)
                bits += row[h] > 0 && cases.Weights[h] > 0 ? cases.Weights[h] * row[h] * Math.Log2(row[h] / mean) : 0;
        }

        return Math.Max(0, bits);
    }

    private ImmutableArray<NodeId> Nodes(Opening opening) => [.. costs.Nodes.Where((_, i) => (opening.Steps >> i & 1) == 1)];

    private string Currency => options.Rates.LabourPerHour.Currency;

    private Money Money(double amount) => new((decimal)Math.Round(amount, 6), Currency);
}
