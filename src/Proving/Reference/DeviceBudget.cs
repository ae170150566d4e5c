using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Proving.Reference;

/// <summary>What measures the peak of a proof.</summary>
public enum ReferenceKind
{
    /// <summary>A force cell between jaw blocks; pressure follows through the ram's area, return spring and friction.</summary>
    ForceCell,

    /// <summary>A gauge or transducer at a pressure port.</summary>
    PortGauge,

    /// <summary>A gauge that holds the highest reading.</summary>
    PeakHoldGauge,

    /// <summary>The tool's own record of its peaks; only when its sensor was compared with a reference at this visit.</summary>
    ToolMemory,
}

/// <summary>All that is known of how well a device measures peaks of one tool.</summary>
public sealed record DeviceBudget
{
    public required ReferenceKind Kind { get; init; }

    /// <summary>Expanded uncertainty (k = 2) of its last calibration, or of the comparison at this visit; zero or more.</summary>
    public required Pressure CalibrationExpanded { get; init; }

    /// <summary>Limits ± within which it may have drifted since; zero when unknown is no answer, so state it.</summary>
    public Pressure DriftLimit { get; init; } = Pressure.FromPascals(0);

    /// <summary>Limits ± of what the temperature of the shop does to it.</summary>
    public Pressure TemperatureLimit { get; init; } = Pressure.FromPascals(0);

    /// <summary>Smallest step of its reading, zero or more.</summary>
    public Pressure Resolution { get; init; } = Pressure.FromPascals(0);

    /// <summary>Standard deviation of repeated readings of one true peak: the random part of a single reading.</summary>
    public Pressure Repeatability { get; init; } = Pressure.FromPascals(0);

    /// <summary>Time constant of its first-order lag.</summary>
    public TimeSpan TimeConstant { get; init; }

    /// <summary>Time between two samples; zero for a device that holds the peak by analogue means.</summary>
    public TimeSpan SamplingInterval { get; init; }

    /// <summary>How force becomes pressure; a force cell has it, no other kind does.</summary>
    public ForceConversion? Force { get; init; }

    /// <summary>Whether the tool's own sensor was compared with a reference at this visit; counts for <see cref="ReferenceKind.ToolMemory"/> alone.</summary>
    public bool ComparedAtThisVisit { get; init; }

    /// <summary>Further contributions, such as the reference of a comparison.</summary>
    public ImmutableArray<BudgetLine> Further { get; init; } = [];
}

/// <summary>From the force between the jaws to the pressure on the ram: p = (F + spring + friction)/A.</summary>
/// <param name="RamDiameter">Diameter of the ram.</param>
/// <param name="DiameterLimit">Limits ± of that diameter.</param>
/// <param name="Spring">Force of the return spring where the jaws close.</param>
/// <param name="SpringLimit">Limits ± of it.</param>
/// <param name="Friction">Friction of seals and guide at the peak, on the way out.</param>
/// <param name="FrictionLimit">Limits ± of it.</param>
public sealed record ForceConversion(Length RamDiameter, Length DiameterLimit, Force Spring, Force SpringLimit, Force Friction, Force FrictionLimit)
{
    private Area Area => Area.OfCircle(RamDiameter);

    /// <summary>The pressure that this force between the jaws stands for.</summary>
    public Pressure Equivalent(Force measured) => (measured + Spring + Friction) / Area;

    /// <summary>Its contributions near a pressure: spring, friction, and 2·δd/d of the pressure for the diameter.</summary>
    internal ImmutableArray<BudgetLine> LinesAt(Pressure pressure) =>
    [
        BudgetLine.FromLimits("ram diameter", 2 * (DiameterLimit / RamDiameter) * pressure),
        BudgetLine.FromLimits("spring", SpringLimit / Area),
        BudgetLine.FromLimits("friction", FrictionLimit / Area),
    ];
}
