using System.Collections.Immutable;

namespace Ramwright.Hydraulics.Phases;

/// <summary>Phases in the making: each begins where the one before ended.</summary>
internal sealed class PhaseList(double startSeconds, double endSeconds)
{
    private readonly ImmutableArray<StrokePhase>.Builder _phases = ImmutableArray.CreateBuilder<StrokePhase>();
    private double _from = startSeconds;

    public PhaseKind? LastKind => _phases.Count > 0 ? _phases[^1].Kind : null;

    /// <summary>Adds a phase up to a moment; nothing when no time is left for it.</summary>
    /// <param name="only">Whether the stroke has such a phase.</param>
    public void Add(PhaseKind kind, double toSeconds, bool only = true)
    {
        toSeconds = Math.Min(toSeconds, endSeconds); // steps of a grid may reach past the last row
        if (!only || !(toSeconds > _from))
            return;
        _phases.Add(new(kind, _phases.Count(p => p.Kind == kind) + 1, _from, toSeconds));
        _from = toSeconds;
    }

    /// <summary>The phases, with what is left up to the end as rest.</summary>
    public ImmutableArray<StrokePhase> Finish()
    {
        Add(PhaseKind.Rest, endSeconds);
        return _phases.ToImmutable();
    }
}
