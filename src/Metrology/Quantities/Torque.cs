namespace Ramwright.Metrology.Quantities;

/// <summary>A torque, held in newton metres; positive tightens.</summary>
public readonly record struct Torque : IQuantity<Torque>
{
    private Torque(double newtonMetres) => Si = QuantityArithmetic.Finite(newtonMetres, "newton metres");

    /// <summary>The value in newton metres.</summary>
    public double Si { get; }

    public double NewtonMetres => Si;

    public static Torque FromSi(double value) => new(value);

    public static Torque FromNewtonMetres(double newtonMetres) => new(newtonMetres);
}
