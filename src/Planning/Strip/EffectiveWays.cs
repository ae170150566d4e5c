using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Strip;

/// <summary>Every way to do every part and state of a model, with the isolating states before the rest.</summary>
internal sealed class EffectiveWays
{
    private readonly ServiceModel model;
    private readonly ImmutableArray<NodeId> isolating;
    private readonly HashSet<NodeId> beforeIsolation;
    private readonly Dictionary<NodeId, Part> parts;

    public EffectiveWays(ServiceModel model)
    {
        this.model = model;
        parts = model.Parts.ToDictionary(p => p.Id);
        isolating = [.. model.States.Where(s => s is { Isolates: true, Reach: not null }).Select(s => s.Id)];
        beforeIsolation = BeforeIsolation();
        Of = model.States.Select(s => (s.Id, OfState(s))).Concat(model.Parts.Select(p => (p.Id, OfPart(p))))
            .ToDictionary(pair => pair.Id, pair => pair.Item2);
        LaidOpen = [.. model.Parts.Where(p => p.Renew is RenewalRule.Always).SelectMany(LaidOpenBy)];
    }

    /// <summary>The ways of each node in the model's order; none for what nothing frees.</summary>
    public Dictionary<NodeId, ImmutableArray<EffectiveWay>> Of { get; }

    /// <summary>What lays a part open whose rule is <c>always</c>: one entry for each of its ways off.</summary>
    public ImmutableArray<LaidOpen> LaidOpen { get; }

    /// <summary>States in which the tool arrives.</summary>
    public IEnumerable<NodeId> Given => model.States.Where(s => s.Reach is null).Select(s => s.Id);

    public decimal PriceOf(NodeId id) => parts.TryGetValue(id, out var part) ? part.Count * (part.Price?.Amount ?? 0m) : 0m;

    private ImmutableArray<EffectiveWay> OfState(State state) => state.Reach is not { } reach ? [] :
    [
        new EffectiveWay
        {
            Node = state.Id, Index = null, Needs = WithIsolation(state.Id, reach.Needs), Time = reach.Time, TimeSpread = reach.TimeSpread,
            Tool = reach.Tool, Posture = reach.Posture, Cautions = reach.Cautions,
        },
    ];

    private ImmutableArray<EffectiveWay> OfPart(Part part) =>
    [
        .. part.WaysOff.Select((way, index) => new EffectiveWay
        {
            Node = part.Id, Index = index, Needs = WithIsolation(part.Id, way.Needs), Time = way.Time, TimeSpread = way.TimeSpread,
            Tool = way.Tool, Posture = way.Posture, Cautions = way.Cautions, Renews = RenewsOf(part, way), Risk = way.Risk,
        }),
    ];

    /// <summary>What is destroyed goes in new whatever its rule; what comes off or is disturbed does by its rule.</summary>
    private ImmutableArray<Renewal> RenewsOf(Part part, WayOff way)
    {
        var renewals = way.Destroys.Select(id => new Renewal(id, CountOf(id), RenewalCause.Destroyed, part.Id))
            .Concat(way.Disturbs.Where(RenewedWhenDisturbed).Select(id => new Renewal(id, CountOf(id), RenewalCause.Disturbed, part.Id)));
        if (RenewedWhenDisturbed(part.Id))
            renewals = renewals.Append(new Renewal(part.Id, part.Count, RenewalCause.Rule, null));
        return [.. renewals.DistinctBy(r => r.Part)];
    }

    private bool RenewedWhenDisturbed(NodeId id) =>
        parts.TryGetValue(id, out var part) && part.Renew is RenewalRule.WhenDisturbed or RenewalRule.Always;

    /// <summary>A way that asks for no more than to make the tool safe lays nothing open: its part lies outside.</summary>
    private IEnumerable<LaidOpen> LaidOpenBy(Part part) =>
        from way in Of[part.Id]
        where way.Needs.Except(isolating).Except(Given).Any()
        select new LaidOpen(new Renewal(part.Id, part.Count, RenewalCause.Rule, null), way.Needs);

    private int CountOf(NodeId id) => parts.TryGetValue(id, out var part) ? part.Count : 1;

    private ImmutableArray<NodeId> WithIsolation(NodeId node, ImmutableArray<NodeId> needs) =>
        beforeIsolation.Contains(node) ? [.. needs.Distinct()] : [.. isolating.Concat(needs).Distinct()];

    /// <summary>The isolating states and all that may have to come first to reach them: they cannot wait for isolation.</summary>
    private HashSet<NodeId> BeforeIsolation()
    {
        var found = new HashSet<NodeId>(isolating);
        var open = new Queue<NodeId>(isolating);
        while (open.TryDequeue(out var node))
        {
            var needs = model.FindState(node)?.Reach?.Needs ?? (parts.TryGetValue(node, out var part)
                ? part.WaysOff.SelectMany(w => w.Needs) : []);
            foreach (var need in needs.Where(found.Add))
                open.Enqueue(need);
        }

        return found;
    }
}
