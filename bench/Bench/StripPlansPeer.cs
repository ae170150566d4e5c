using Google.OrTools.Sat;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Bench;

/// <summary>The same problem given to OR-Tools CP-SAT, one thread. How changes are counted is left to two forms of the model.</summary>
/// <remarks>Like the planner it leaves out what cannot help a target.</remarks>
internal abstract class StripPlansPeer
{
    private const decimal Scale = 1_000_000m;

    protected readonly StripJob job;
    protected readonly CpModel model = new();
    protected readonly List<Mode> modes = [];
    private readonly List<(ILiteral Literal, long Cost)> costs = [];
    protected readonly ToolId?[] tools;
    protected readonly PostureId?[] postures;

    protected StripPlansPeer(StripJob job)
    {
        this.job = job;
        Collect();
        tools = [null, .. modes.Select(m => m.Tool).OfType<ToolId>().Distinct().Cast<ToolId?>()];
        postures = [null, .. modes.Select(m => m.Posture).OfType<PostureId>().Distinct().Cast<PostureId?>()];
    }

    /// <summary>Cost in the currency of the labour rate; whether it is proven.</summary>
    public (decimal Cost, bool Proven) Solve(double seconds)
    {
        Build();
        var solver = new CpSolver { StringParameters = FormattableString.Invariant($"num_search_workers:1 random_seed:1 max_time_in_seconds:{seconds}") };
        var status = solver.Solve(model);
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? ((decimal)solver.ObjectiveValue / Scale, status is CpSolverStatus.Optimal)
            : (0m, false);
    }

    /// <summary>Adds the order, and what changes of tool and posture cost in it.</summary>
    protected abstract void Changes(BoolVar[] used, Dictionary<NodeId, IntVar> rank);

    protected BoolVar Change(TimeSpan time)
    {
        var change = model.NewBoolVar("change");
        costs.Add((change, Scaled(job.Rates.CostOf(time).Amount)));
        return change;
    }

    protected sealed record Mode(NodeId Node, NodeId[] Needs, TimeSpan Time, ToolId? Tool, PostureId? Posture, NodeId[] Renews, decimal Risk);

    /// <summary>The ways of all that may help, isolating states first where they can be.</summary>
    private void Collect()
    {
        var isolating = job.Model.States.Where(s => s is { Isolates: true, Reach: not null }).Select(s => s.Id).ToArray();
        var exempt = Closure(isolating, _ => []);
        var needed = Closure(job.Targets, n => exempt.Contains(n) ? [] : isolating);
        foreach (var node in needed)
        {
            NodeId[] first = exempt.Contains(node) ? [] : isolating;
            if (job.Model.FindState(node)?.Reach is { } reach)
                modes.Add(new Mode(node, [.. first.Union(reach.Needs)], reach.Time, reach.Tool, reach.Posture, [], 0));
            foreach (var way in job.Model.FindPart(node)?.WaysOff ?? [])
            {
                var renews = way.Destroys.Union(way.Disturbs.Append(node).Where(ByRule)).ToArray();
                var risk = way.Risk is null ? 0 : (decimal)way.Risk.Chance * way.Risk.Damages.Sum(Price);
                modes.Add(new Mode(node, [.. first.Union(way.Needs)], way.Time, way.Tool, way.Posture, renews, risk));
            }
        }
    }

    private HashSet<NodeId> Closure(IEnumerable<NodeId> from, Func<NodeId, NodeId[]> more)
    {
        var found = new HashSet<NodeId>(from);
        var open = new Queue<NodeId>(found);
        while (open.TryDequeue(out var node))
        {
            var needs = (job.Model.FindState(node)?.Reach?.Needs ?? []).Concat(job.Model.FindPart(node)?.WaysOff.SelectMany(w => w.Needs) ?? []).Concat(more(node));
            foreach (var need in needs.Where(found.Add))
                open.Enqueue(need);
        }

        return found;
    }

    private void Build()
    {
        var used = modes.Select((_, i) => model.NewBoolVar($"used{i}")).ToArray();
        var nodes = modes.Select(m => m.Node).Distinct().ToArray();
        var rank = nodes.ToDictionary(n => n, n => model.NewIntVar(0, nodes.Length, n.Value));
        var done = nodes.ToDictionary(n => n, n => LinearExpr.Sum(modes.Select((m, i) => (m, i)).Where(x => x.m.Node == n).Select(x => used[x.i])));
        foreach (var node in nodes)
            model.Add(done[node] <= 1);
        foreach (var target in job.Targets)
            model.Add(done[target] == 1);
        for (var i = 0; i < modes.Count; i++)
        {
            costs.Add((used[i], Scaled(job.Rates.CostOf(modes[i].Time).Amount + modes[i].Risk)));
            foreach (var need in modes[i].Needs)
            {
                model.Add(rank[modes[i].Node] >= rank[need] + 1).OnlyEnforceIf(used[i]);
                if (done.TryGetValue(need, out var first))
                    model.Add(first == 1).OnlyEnforceIf(used[i]);
            }
        }

        Renewals(used, done);
        Changes(used, rank);
        model.Minimize(LinearExpr.WeightedSum(costs.Select(c => c.Literal), costs.Select(c => c.Cost)));
    }

    private void Renewals(BoolVar[] used, Dictionary<NodeId, LinearExpr> done)
    {
        var laidOpen = LaidOpen(done).ToList();
        foreach (var part in modes.SelectMany(m => m.Renews).Union(laidOpen.Select(l => l.Part)))
        {
            var renewed = model.NewBoolVar($"renew {part}");
            foreach (var (_, needs) in laidOpen.Where(l => l.Part == part))
                model.Add(renewed >= LinearExpr.Sum(needs.Select(n => done[n])) - (needs.Length - 1));
            costs.Add((renewed, Scaled(Price(part))));
            for (var i = 0; i < modes.Count; i++)
            {
                if (modes[i].Renews.Contains(part))
                    model.AddImplication(used[i], renewed);
            }
        }
    }

    /// <summary>Parts always renewed, and what lays them open: the needs of a way that asks for more than a safe tool.</summary>
    private IEnumerable<(NodeId Part, NodeId[] Needs)> LaidOpen(Dictionary<NodeId, LinearExpr> done)
    {
        var isolating = job.Model.States.Where(s => s is { Isolates: true, Reach: not null }).Select(s => s.Id).ToArray();
        var given = job.Model.States.Where(s => s.Reach is null).Select(s => s.Id).ToArray();
        return from part in job.Model.Parts
               where part.Renew is RenewalRule.Always
               from way in part.WaysOff
               where way.Needs.Except(isolating).Except(given).Any()
               let needs = isolating.Union(way.Needs).Except(given).ToArray()
               where needs.All(done.ContainsKey)
               select (part.Id, needs);
    }

    private static long Scaled(decimal amount) => (long)decimal.Round(amount * Scale);

    private bool ByRule(NodeId id) => job.Model.FindPart(id)?.Renew is RenewalRule.Always or RenewalRule.WhenDisturbed;

    private decimal Price(NodeId id) => job.Model.FindPart(id) is { Price: { } price } part ? part.Count * price.Amount : 0m;
}
