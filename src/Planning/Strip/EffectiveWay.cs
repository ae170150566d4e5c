using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Strip;

/// <summary>A way off, or the operation that reaches a state, in one form: with all that must come first and all that it costs.</summary>
internal sealed record EffectiveWay
{
    public required NodeId Node { get; init; }

    /// <summary>Its place in the model, 0-based; null for a state.</summary>
    public required int? Index { get; init; }

    /// <summary>As written, and the isolating states before them.</summary>
    public required ImmutableArray<NodeId> Needs { get; init; }

    public required TimeSpan Time { get; init; }
    public double? TimeSpread { get; init; }
    public ToolId? Tool { get; init; }
    public PostureId? Posture { get; init; }
    public ImmutableArray<Caution> Cautions { get; init; } = [];

    /// <summary>What it makes to be renewed, each part once, with the cause.</summary>
    public ImmutableArray<Renewal> Renews { get; init; } = [];

    public WayOffRisk? Risk { get; init; }
}

/// <summary>A part that goes in new once all of <paramref name="Needs"/> are done, whether it comes off or not.</summary>
internal sealed record LaidOpen(Renewal Renewal, ImmutableArray<NodeId> Needs);
