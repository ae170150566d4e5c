using System.Collections.Immutable;

namespace Ramwright.ServiceModels.Model;

/// <summary>Something that can be wrong with the tool.</summary>
public sealed record Fault
{
    public required FaultId Id { get; init; }
    public required string Name { get; init; }

    /// <summary>Prior probability that a tool sent in has it, 0 to 1.</summary>
    public required double Rate { get; init; }

    /// <summary>Parts that are at fault.</summary>
    public ImmutableArray<NodeId> Parts { get; init; } = [];
}

/// <summary>Something seen, heard or felt; a leaky noisy-OR of the faults that cause it.</summary>
public sealed record Symptom
{
    public required SymptomId Id { get; init; }

    /// <summary>In plain words: "oil at the cap".</summary>
    public required string Name { get; init; }

    /// <summary>Heading under which it is offered: oil, pressure, movement, sound, drive, head.</summary>
    public required string Group { get; init; }

    /// <summary>Probability that it shows although no listed fault causes it.</summary>
    public double Leak { get; init; }

    /// <summary>For each fault the probability that it alone brings the symptom.</summary>
    public ImmutableArray<Cause> Causes { get; init; } = [];
}

/// <summary>A fault and the probability (0 to 1) with which it alone brings an outcome about.</summary>
public sealed record Cause(FaultId Fault, double Probability);

/// <summary>A check that costs time and answers with one of its outcomes.</summary>
public sealed record Check
{
    public required CheckId Id { get; init; }

    /// <summary>In the imperative: "hold at 500 bar for a minute".</summary>
    public required string Name { get; init; }

    public required TimeSpan Time { get; init; }

    /// <summary>Parts off or states reached before it can be made.</summary>
    public ImmutableArray<NodeId> Needs { get; init; } = [];

    public ToolId? Tool { get; init; }
    public ImmutableArray<Caution> Cautions { get; init; } = [];

    /// <summary>Whether the tool runs under power for it.</summary>
    public bool Live { get; init; }

    /// <summary>Symptoms that it shows more exactly: beside its outcome they do not count again.</summary>
    public ImmutableArray<SymptomId> InsteadOf { get; init; } = [];

    /// <summary>Two outcomes or more; for each fault how likely the outcome is.</summary>
    public ImmutableArray<CheckOutcome> Outcomes { get; init; } = [];
}

/// <summary>One outcome of a check: its likelihood with no fault, and with each fault that changes it.</summary>
public sealed record CheckOutcome(string Id, string Name, double WhenSound, ImmutableArray<Cause> WhenFault);

/// <summary>A remedy: what it renews or does, and which faults it mends with what chance.</summary>
public sealed record Remedy
{
    public required RemedyId Id { get; init; }
    public required string Name { get; init; }

    /// <summary>Parts to free for it.</summary>
    public ImmutableArray<NodeId> Frees { get; init; } = [];

    /// <summary>Parts renewed.</summary>
    public ImmutableArray<NodeId> Renews { get; init; } = [];

    /// <summary>Work beyond freeing and renewing.</summary>
    public TimeSpan Time { get; init; }

    public ImmutableArray<Cause> Mends { get; init; } = [];
}
