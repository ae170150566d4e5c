using System.Collections.Immutable;

namespace Ramwright.ServiceModels.Model;

/// <summary>
/// What is known of one tool family: its limits (level 0), parts and kits (level 1), ways off and fits (level 2),
/// behaviour and faults (level 3). Read and linted by <c>ModelReader</c>; every reference in it resolves.
/// </summary>
public sealed record ServiceModel
{
    public required ToolIdentity Tool { get; init; }
    public required Limits Limits { get; init; }
    public Fluid? Fluid { get; init; }
    public ImmutableArray<State> States { get; init; } = [];
    public ImmutableArray<ShopTool> Tools { get; init; } = [];
    public ImmutableArray<Posture> Postures { get; init; } = [];
    public ImmutableArray<Part> Parts { get; init; } = [];
    public ImmutableArray<Kit> Kits { get; init; } = [];
    public ImmutableArray<MadeUpUnit> Units { get; init; } = [];
    public ImmutableArray<Supersession> Supersessions { get; init; } = [];
    public Behaviour? Behaviour { get; init; }
    public ImmutableArray<Fault> Faults { get; init; } = [];
    public ImmutableArray<Symptom> Symptoms { get; init; } = [];
    public ImmutableArray<Check> Checks { get; init; } = [];
    public ImmutableArray<Remedy> Remedies { get; init; } = [];

    /// <summary>SHA-256 of the file's bytes, lower-case hex: what a report names, so that a later change of the model shows.</summary>
    public required string Fingerprint { get; init; }

    public Part? FindPart(NodeId id) => Parts.FirstOrDefault(p => p.Id == id);

    public State? FindState(NodeId id) => States.FirstOrDefault(s => s.Id == id);

    public ShopTool? FindTool(ToolId id) => Tools.FirstOrDefault(t => t.Id == id);

    /// <summary>The name of a part or state as a technician reads it; the id when it has none.</summary>
    public string NameOf(NodeId id) => FindPart(id)?.Name ?? FindState(id)?.Name ?? id.Value;
}
