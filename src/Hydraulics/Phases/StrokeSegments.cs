using System.Collections.Immutable;
using Ramwright.Hydraulics.Recordings;

namespace Ramwright.Hydraulics.Phases;

/// <summary>A recorded stroke parted into phases: in the order of time, without holes from the first row to the last.</summary>
/// <param name="Standstill">What the sensors showed before the trigger was pulled; null where the recording begins later.</param>
public sealed record StrokeSegments(ImmutableArray<StrokePhase> Phases, ImmutableArray<PhaseEvent> Events, Standstill? Standstill, ImmutableArray<PhaseNote> Notes)
{
    /// <summary>The first moment of a kind, or null.</summary>
    public PhaseEvent? First(PhaseEventKind kind) => Events.FirstOrDefault(e => e.Kind == kind);

    /// <summary>Phases of a kind, in the order of time.</summary>
    public IEnumerable<StrokePhase> Of(PhaseKind kind) => Phases.Where(p => p.Kind == kind);
}

/// <summary>Which part of a stroke a recording lacks.</summary>
public enum MissingPart { Beginning, End, BeginningAndEnd }

/// <summary>What a recording holds.</summary>
public abstract record Segmentation
{
    private Segmentation() { }

    /// <summary>A stroke from its trigger until the motor stopped, whether or not the relief opened.</summary>
    public sealed record WholeStroke(StrokeSegments Segments) : Segmentation;

    /// <summary>A part of a stroke, parted as far as it goes.</summary>
    public sealed record HalfStroke(MissingPart Missing, StrokeSegments Segments) : Segmentation;

    /// <summary>No stroke: nothing rises out of the noise.</summary>
    /// <param name="Why">One phrase without a full stop.</param>
    public sealed record NoStroke(string Why) : Segmentation;
}
