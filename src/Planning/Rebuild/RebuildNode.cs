using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Rebuild;

/// <summary>One act of a rebuild that is put in order: a part goes in, a part goes on its unit, a unit goes in, a state is ended.</summary>
internal abstract record RebuildNode(ToolId? Tool, PostureId? Posture, TimeSpan Time)
{
    /// <summary>A part goes into the tool.</summary>
    /// <param name="Alone">The unit it belongs to, when no other part of that unit is off.</param>
    /// <param name="InPlace">It never came off: it is renewed where it is.</param>
    public sealed record PartIn(Part Part, WayOff? Way, MadeUpUnit? Alone, bool InPlace, ToolId? Tool, PostureId? Posture, TimeSpan Time)
        : RebuildNode(Tool, Posture, Time);

    /// <summary>A part goes on its unit, on the bench.</summary>
    /// <param name="InPlace">It did not come off the unit before: the old one comes off and the new one goes on.</param>
    public sealed record PartOnUnit(Part Part, WayOff? Way, MadeUpUnit Unit, bool InPlace, ToolId? Tool, PostureId? Posture, TimeSpan Time)
        : RebuildNode(Tool, Posture, Time);

    /// <summary>The unit goes into the tool.</summary>
    public sealed record UnitIn(MadeUpUnit Unit, ImmutableArray<Part> Members) : RebuildNode(Unit.Tool, Unit.Posture, Unit.Time);

    /// <summary>A state is ended.</summary>
    public sealed record StateEnded(State State, Undo Undo) : RebuildNode(Undo.Tool, Undo.Posture, Undo.Time);

    /// <summary>By what a technician knows it.</summary>
    public NodeId Id => this switch
    {
        PartIn part => part.Part.Id,
        PartOnUnit part => part.Part.Id,
        UnitIn unit => unit.Members[0].Id,
        StateEnded state => state.State.Id,
        _ => throw new InvalidOperationException("There are four kinds."),
    };
}
