using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Rebuild;
using Ramwright.Records.Ids;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Events;

/// <summary>A step of the strip plan that stands was done.</summary>
/// <param name="Step">0-based place in the plan.</param>
/// <param name="Node">The part that came off or the state that was reached.</param>
/// <param name="Value">The figure that answers the step, where it has one.</param>
public sealed record StripStepSigned(int Step, NodeId Node, MeasuredValue? Value, string? Note) : JobEvent;

/// <summary>A part was looked at or measured: it may be used again, or not.</summary>
public sealed record InspectionAnswered(InspectionId Inspection, NodeId Part, bool Good, MeasuredValue? Measured, string? Note) : JobEvent;

/// <summary>A plan to put the tool together was taken on.</summary>
/// <param name="Start">Parts off and states reached when it was made.</param>
public sealed record RebuildPlanned(ImmutableArray<NodeId> Start, RebuildPlan Plan) : JobEvent;

/// <summary>A step of the rebuild plan that stands was done.</summary>
/// <param name="Step">0-based place in the plan.</param>
/// <param name="Applied">Torque applied, where the step has one.</param>
/// <param name="Wrench">The torque wrench.</param>
/// <param name="Batches">Seals and oil used, by batch.</param>
public sealed record RebuildStepSigned(int Step, Torque? Applied, InstrumentId? Wrench, ImmutableArray<BatchUse> Batches, string? Note) : JobEvent;

/// <summary>So many pieces, or so much oil, of a batch went in.</summary>
/// <param name="Count">Pieces; for oil zero, with <paramref name="Oil"/> given.</param>
public sealed record BatchUse(BatchId Batch, NodeId? Part, int Count, Volume? Oil);

/// <summary>Something worth telling the next technician.</summary>
public sealed record NoteWritten(Station Station, string Text) : JobEvent;
