using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Rebuild;

/// <summary>From what a rebuild starts.</summary>
public sealed record RebuildJob
{
    public required ServiceModel Model { get; init; }
    public required Rates Rates { get; init; }

    /// <summary>Parts that are off and states that are reached.</summary>
    public required ImmutableHashSet<NodeId> Done { get; init; }

    /// <summary>What goes in new.</summary>
    public required ImmutableArray<Renewal> Renewals { get; init; }

    /// <summary>By which way (0-based) each part came off, where that is known; else the quickest way that the parts off allow is taken for it.</summary>
    public ImmutableDictionary<NodeId, int> WaysUsed { get; init; } = ImmutableDictionary<NodeId, int>.Empty;

    /// <summary>Above so many search states the order is the best found so far.</summary>
    public int StateLimit { get; init; } = 200_000;
}

/// <summary>The answer: a plan, or the parts that wait for each other.</summary>
public abstract record RebuildAnswer
{
    private RebuildAnswer() { }

    public sealed record Planned(RebuildPlan Plan) : RebuildAnswer;

    /// <summary>Parts whose fits wait for each other, in order, so that none can start.</summary>
    public sealed record Circle(ImmutableArray<NodeId> Nodes) : RebuildAnswer;
}

/// <summary>The order in which the tool goes together again.</summary>
public sealed record RebuildPlan
{
    public required ImmutableArray<RebuildStep> Steps { get; init; }
    public required ImmutableArray<ToolId> Tools { get; init; }
    public required TimeSpan LikelyTime { get; init; }
    public required TimeSpan SafeTime { get; init; }
    public required Money Labour { get; init; }

    /// <summary>Oil that goes in, all fills together.</summary>
    public required Volume OilFilled { get; init; }

    /// <summary>True when no order has fewer minutes of tool and posture changes.</summary>
    public bool ProvenOptimal { get; init; }
}

/// <summary>What kind of work a rebuild step is.</summary>
public enum RebuildKind { MakeUpUnit, FitUnit, FitPart, Prime, Fill, Bleed, UndoState }

/// <summary>One step of a rebuild.</summary>
public sealed record RebuildStep
{
    public required RebuildKind Kind { get; init; }

    /// <summary>The part fitted or the state ended; for a unit the parts stand in <see cref="Parts"/>.</summary>
    public NodeId? Node { get; init; }

    public UnitId? Unit { get; init; }

    /// <summary>All parts that go in with this step.</summary>
    public ImmutableArray<NodeId> Parts { get; init; } = [];

    /// <summary>A sentence in the imperative.</summary>
    public required string Operation { get; init; }

    public ToolId? Tool { get; init; }
    public PostureId? Posture { get; init; }
    public required TimeSpan Time { get; init; }
    public required TimeSpan ChangeTime { get; init; }
    public TorqueSpec? Torque { get; init; }
    public ThreadHand? Hand { get; init; }
    public string? Lubricant { get; init; }
    public string? Orientation { get; init; }
    public Volume? Oil { get; init; }

    /// <summary>Which of <see cref="Parts"/> go in new.</summary>
    public ImmutableArray<NodeId> NewParts { get; init; } = [];

    public ImmutableArray<Caution> Cautions { get; init; } = [];
}
