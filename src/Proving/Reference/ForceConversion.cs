using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Uncertainty;

namespace Ramwright.Proving.Reference;

/// <summary>From the force between the jaws to the pressure on the ram: p = (F + spring + friction)/A.</summary>
/// <param name="RamDiameter">Diameter of the ram.</param>
/// <param name="DiameterLimit">Limits ± of that diameter.</param>
/// <param name="Spring">Force of the return spring where the jaws close.</param>
/// <param name="SpringLimit">Limits ± of it.</param>
/// <param name="Friction">Friction of seals and guide at the peak, on the way out.</param>
/// <param name="FrictionLimit">Limits ± of it.</param>
public sealed record ForceConversion(Length RamDiameter, Length DiameterLimit, Force Spring, Force SpringLimit, Force Friction, Force FrictionLimit)
{
    public Area Area => Area.OfCircle(RamDiameter);

    /// <summary>What spring and friction hold back of the force on the ram.</summary>
    public Force HeldBack => Spring + Friction;

    /// <summary>The pressure that this force between the jaws stands for.</summary>
    public Pressure Equivalent(Force measured) => (measured + HeldBack) / Area;

    /// <summary>The force between the jaws that stands for this pressure.</summary>
    public Force Behind(Pressure pressure) => (pressure * Area) - HeldBack;

    /// <summary>The same with the friction that loading up and down has shown.</summary>
    public ForceConversion With(FrictionLoop.Shown shown)
    {
        ArgumentNullException.ThrowIfNull(shown);
        return this with { Friction = shown.Friction, FrictionLimit = Force.FromNewtons(0), Measured = shown };
    }

    /// <summary>How the friction was found, where it was measured and not taken from the model.</summary>
    public FrictionLoop.Shown? Measured { get; private init; }

    internal BudgetInput DiameterInput => new("diameter", RamDiameter.Metres, [new("ram diameter", new Spread.Rectangular(DiameterLimit.Metres), Effect.Systematic)]);

    /// <summary>The return spring as an input in newtons.</summary>
    public BudgetInput SpringInput => new("spring", Spring.Newtons, [new("return spring", new Spread.Rectangular(SpringLimit.Newtons), Effect.Systematic)]);

    /// <summary>The friction as an input in newtons.</summary>
    public BudgetInput FrictionInput => new("friction", Friction.Newtons, [Measured is { } m
        ? new("friction, by loading up and down", new Spread.Normal(m.Standard.Newtons), Effect.Systematic, m.Loops - 1)
        : new("friction", new Spread.Rectangular(FrictionLimit.Newtons), Effect.Systematic)]);
}
