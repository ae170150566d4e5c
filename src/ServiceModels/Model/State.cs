using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;

namespace Ramwright.ServiceModels.Model;

/// <summary>A condition of the tool that work needs: battery removed, pressure released, oil drained. Within one plan states only grow.</summary>
public sealed record State
{
    public required NodeId Id { get; init; }
    public required string Name { get; init; }

    /// <summary>The operation that brings the tool into the state; null when the tool arrives in it.</summary>
    public Operation? Reach { get; init; }

    /// <summary>The operation that ends the state when the tool is rebuilt (fill and bleed after a drain); null when nothing is to be done.</summary>
    public Undo? Undo { get; init; }

    /// <summary>Oil that is lost on reaching the state.</summary>
    public Volume? Loses { get; init; }

    /// <summary>Whether this state is part of making the tool safe (battery out, pressure released): the first sign-off of every job.</summary>
    public bool Isolates { get; init; }
}

/// <summary>Something that is done, and what it takes.</summary>
public sealed record Operation
{
    /// <summary>In the imperative, lower case: "take the pack off".</summary>
    public required string Text { get; init; }

    /// <summary>Parts off or states reached that must come first.</summary>
    public ImmutableArray<NodeId> Needs { get; init; } = [];

    public ToolId? Tool { get; init; }
    public PostureId? Posture { get; init; }
    public required TimeSpan Time { get; init; }

    /// <summary>Relative standard deviation of the time, such as 0.25; null takes the shop's.</summary>
    public double? TimeSpread { get; init; }

    public ImmutableArray<Caution> Cautions { get; init; } = [];
}

/// <summary>What ends a state again on rebuild.</summary>
public sealed record Undo
{
    public required string Text { get; init; }

    /// <summary>Parts that must be in place first.</summary>
    public ImmutableArray<NodeId> After { get; init; } = [];

    /// <summary>Parts that are fitted only afterwards (the fill plug after the fill).</summary>
    public ImmutableArray<NodeId> Before { get; init; } = [];

    public ToolId? Tool { get; init; }
    public PostureId? Posture { get; init; }
    public required TimeSpan Time { get; init; }
    public UndoKind Kind { get; init; }

    /// <summary>Oil that goes in.</summary>
    public Volume? Volume { get; init; }

    public ImmutableArray<Caution> Cautions { get; init; } = [];
}

/// <summary>What kind of work ends the state.</summary>
public enum UndoKind { Other, Fill, Prime, Bleed }

/// <summary>How serious a caution is; the signal words of ISO 3864-2 / ANSI Z535 in their order.</summary>
public enum CautionLevel { Notice, Caution, Warning, Danger }

/// <summary>What can hurt or spoil, said before the step it guards.</summary>
/// <param name="Hazard">A word of the list in docs/service-model.md, such as <c>stored-spring-energy</c>; it chooses the sign.</param>
public sealed record Caution(CautionLevel Level, string Hazard, string Text);

/// <summary>How the work is held.</summary>
public sealed record Posture(PostureId Id, string Name)
{
    /// <summary>Minutes to get the work into this posture; null takes the shop's.</summary>
    public TimeSpan? Change { get; init; }
}
