using System.Collections.Immutable;
using Ramwright.Planning.Sequence;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Strip.Ways;

/// <summary>Makes the graph of a job: only what can be done and can help, each way with its cost.</summary>
internal sealed class WayGraphBuilder
{
    private readonly StripJob job;
    private readonly EffectiveWays ways;
    private readonly HashSet<NodeId> done;
    private readonly Dictionary<NodeId, int> nodes;
    private readonly Dictionary<NodeId, int> renewable = [];
    private readonly Dictionary<ToolId, int> tools = [];
    private readonly Dictionary<PostureId, int> postures = [];

    private WayGraphBuilder(StripJob job, EffectiveWays ways, HashSet<NodeId> done, HashSet<NodeId> reached)
    {
        (this.job, this.ways, this.done) = (job, ways, done);
        var helpful = Helpful(reached);
        nodes = ways.Of.Keys.Where(helpful.Contains).Select((id, index) => (id, index)).ToDictionary(n => n.id, n => n.index);
    }

    /// <param name="done">What is done at the start, states in which the tool arrives included.</param>
    /// <param name="reached">What can be done at all; all targets are in it.</param>
    public static WayGraph Build(StripJob job, EffectiveWays ways, HashSet<NodeId> done, HashSet<NodeId> reached) =>
        new WayGraphBuilder(job, ways, done, reached).Build();

    private WayGraph Build()
    {
        var laidOpen = ways.LaidOpen.Where(CanBeLaidOpen).ToList();
        foreach (var part in nodes.Keys.SelectMany(n => ways.Of[n]).SelectMany(w => w.Renews).Concat(laidOpen.Select(l => l.Renewal)).Select(r => r.Part))
        {
            if (!job.RenewalsOwed.Contains(part))
                renewable.TryAdd(part, renewable.Count);
        }

        var compiled = nodes.Keys.Select(n => WithoutDominated([.. ways.Of[n].Where(w => w.Needs.All(Possible)).Select(Compile)])).ToArray();
        var targets = NodeSet.Empty(nodes.Count);
        foreach (var target in job.Targets.Where(t => !done.Contains(t)))
            targets.Add(nodes[target]);
        return new WayGraph
        {
            Nodes = [.. nodes.Keys],
            Ways = compiled,
            Targets = targets,
            Renewable = [.. renewable.Keys],
            RenewalCost = [.. renewable.Keys.Select(r => CostScale.Of(ways.PriceOf(r)))],
            LaidOpen = [.. laidOpen.Where(l => renewable.ContainsKey(l.Renewal.Part)).Select(l => (renewable[l.Renewal.Part], StillToDo(l.Needs)))],
            Tools = [.. tools.Keys],
            ToolCost = [.. tools.Keys.Select(t => CostScale.Of(job.Rates.CostOf(job.Rates.ChangeTime(job.Model, t))))],
            Postures = [.. postures.Keys],
            PostureCost = [.. postures.Keys.Select(p => CostScale.Of(job.Rates.CostOf(job.Rates.ChangeTime(job.Model, p))))],
            ToolInHand = job.ToolInHand is { } tool ? tools.GetValueOrDefault(tool, SequenceProblem.None) : SequenceProblem.None,
            PostureNow = job.Posture is { } posture ? postures.GetValueOrDefault(posture, SequenceProblem.None) : SequenceProblem.None,
        };
    }

    private bool Possible(NodeId need) => done.Contains(need) || nodes.ContainsKey(need);

    /// <summary>What was laid open before the work began is not laid open by it.</summary>
    private bool CanBeLaidOpen(LaidOpen part) =>
        !done.Contains(part.Renewal.Part) && part.Needs.All(Possible) && !part.Needs.All(done.Contains);

    private NodeSet StillToDo(IEnumerable<NodeId> needs)
    {
        var left = NodeSet.Empty(nodes.Count);
        foreach (var need in needs.Where(n => !done.Contains(n)))
            left.Add(nodes[need]);
        return left;
    }

    private GraphWay Compile(EffectiveWay way)
    {
        var renews = NodeSet.Empty(renewable.Count);
        foreach (var renewal in way.Renews.Where(r => renewable.ContainsKey(r.Part)))
            renews.Add(renewable[renewal.Part]);
        var risk = way.Risk is { } r ? (decimal)r.Chance * r.Damages.Sum(ways.PriceOf) : 0m;
        var cost = CostScale.Of(job.Rates.CostOf(way.Time)) + CostScale.Of(risk) + CostScale.OneStep;
        return new GraphWay(way.Index, StillToDo(way.Needs), cost, NumberOf(tools, way.Tool), NumberOf(postures, way.Posture), renews);
    }

    private static int NumberOf<T>(Dictionary<T, int> numbers, T? id) where T : struct
    {
        if (id is not { } some)
            return SequenceProblem.None;
        if (!numbers.TryGetValue(some, out var number))
            numbers.Add(some, number = numbers.Count);
        return number;
    }

    private static GraphWay[] WithoutDominated(GraphWay[] all) =>
        [.. all.Where((way, i) => !all.Where((other, j) => j != i && other.Dominates(way) && (j < i || !way.Dominates(other))).Any())];

    /// <summary>What some way to a target may need, itself possible. A step outside never pays: a change costs by what is taken up alone.</summary>
    private HashSet<NodeId> Helpful(HashSet<NodeId> reached)
    {
        var helpful = new HashSet<NodeId>(job.Targets.Where(t => !done.Contains(t)));
        var open = new Queue<NodeId>(helpful);
        while (open.TryDequeue(out var node))
        {
            foreach (var need in ways.Of[node].Where(w => w.Needs.All(reached.Contains)).SelectMany(w => w.Needs))
            {
                if (!done.Contains(need) && helpful.Add(need))
                    open.Enqueue(need);
            }
        }

        return helpful;
    }
}
