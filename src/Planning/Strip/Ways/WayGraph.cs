using System.Collections.Immutable;
using Ramwright.Planning.Sequence;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Strip.Ways;

/// <summary>The AND/OR graph of a job: which nodes can matter, and the ways to do each. All needs of a way must be done; one way is enough.</summary>
internal sealed class WayGraph
{
    public required ImmutableArray<NodeId> Nodes { get; init; }

    /// <summary>The ways of each node, in the model's order, without those that are never better than another.</summary>
    public required GraphWay[][] Ways { get; init; }

    public required NodeSet Targets { get; init; }

    public required ImmutableArray<NodeId> Renewable { get; init; }

    /// <summary>Scaled price of all of a part that would go in new.</summary>
    public required long[] RenewalCost { get; init; }

    /// <summary>Which renewal falls due once which nodes are done, by whatever ways.</summary>
    public required (int Renewal, NodeSet Needs)[] LaidOpen { get; init; }

    public required ImmutableArray<ToolId> Tools { get; init; }

    public required long[] ToolCost { get; init; }

    public required ImmutableArray<PostureId> Postures { get; init; }

    public required long[] PostureCost { get; init; }

    public required int ToolInHand { get; init; }

    public required int PostureNow { get; init; }

    public int Count => Nodes.Length;
}
