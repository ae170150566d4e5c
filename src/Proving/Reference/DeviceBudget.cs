using System.Collections.Immutable;
using Ramwright.Metrology.Uncertainty;

namespace Ramwright.Proving.Reference;

/// <summary>What a change of temperature does to a reading.</summary>
/// <param name="PerKelvin">Change of the reading per kelvin, a value in SI of the reading (Pa/K, or N/K for a force cell).</param>
/// <param name="Kelvins">The device may be so many kelvins away from the temperature of its calibration, zero or more.</param>
public sealed record Warming(double PerKelvin, double Kelvins);

/// <summary>All that is known of how well a device measures peaks of one tool.</summary>
public sealed record DeviceBudget
{
    public required ReferenceKind Kind { get; init; }

    /// <summary>Why a corrected reading may be off, in SI of what the device shows: pascals, or newtons for a force cell.</summary>
    public required ImmutableArray<Component> Reading { get; init; }

    /// <summary>Null where nobody states what temperature does to it.</summary>
    public Warming? Warming { get; init; }

    /// <summary>Time constant of its first-order lag.</summary>
    public TimeSpan TimeConstant { get; init; }

    /// <summary>Time between two samples; zero for a device that holds the peak by analogue means.</summary>
    public TimeSpan SamplingInterval { get; init; }

    /// <summary>How force becomes pressure; a force cell has it, no other kind does.</summary>
    public ForceConversion? Force { get; init; }

    /// <summary>Whether the tool's own sensor was compared with a reference at this visit and found fit; counts for <see cref="ReferenceKind.ToolMemory"/> alone.</summary>
    public bool ComparedAtThisVisit { get; init; }

    /// <summary>How readings are corrected before they count; null: they count as shown.</summary>
    public ReadingCorrection? Correction { get; init; }

    /// <summary>What the reader of the budget must know beside its lines.</summary>
    public ImmutableArray<BudgetRemark> Remarks { get; init; } = [];
}
