using System.Collections.Immutable;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Map;

/// <summary>How far the work is, part by part.</summary>
internal sealed class MapProgress(StripPlan? plan, ImmutableHashSet<NodeId> done)
{
    private readonly NodeId? next = plan?.Steps.FirstOrDefault(s => !done.Contains(s.Node))?.Node;
    private readonly Dictionary<NodeId, StripStep> steps = plan?.Steps.ToDictionary(s => s.Node) ?? [];
    private readonly HashSet<NodeId> renewed = [.. plan?.Renewals.Select(r => r.Part) ?? []];

    public MapStatus StatusOf(NodeId part)
    {
        if (done.Contains(part))
            return MapStatus.Off;
        if (!steps.TryGetValue(part, out var step))
            return MapStatus.Still;
        return part == next ? MapStatus.Next : step.Why is StepReason.Target ? MapStatus.Target : MapStatus.ComesOff;
    }

    public bool IsRenewed(NodeId part) => renewed.Contains(part);

    /// <summary>By the way that the plan takes, or by any when it takes none.</summary>
    public bool IsOutOfSight(Part part) => steps.TryGetValue(part.Id, out var step) && step.Way is { } way
        ? part.WaysOff[way].OutOfSight
        : part.WaysOff.Any(w => w.OutOfSight);

    /// <summary>The number of a part's step from 1, or null when it has none.</summary>
    public int? NumberOf(NodeId part) => plan is not null && steps.TryGetValue(part, out var step) ? plan.Steps.IndexOf(step) + 1 : null;

    public bool HasPlan => plan is not null;

    /// <summary>What stands in whose way: by the plan, or by each part's first way off.</summary>
    public IEnumerable<(NodeId Blocker, NodeId Blocked)> Links(ServiceModel model) => plan is null
        ? model.Parts.Where(p => p.WaysOff is not []).SelectMany(p => p.WaysOff[0].Needs.Select(n => (n, p.Id)))
        : plan.Steps.SelectMany(s => s.Way is { } way && model.FindPart(s.Node) is { } part
            ? part.WaysOff[way].Needs.Where(steps.ContainsKey).Select(n => (n, s.Node)) : []);
}
