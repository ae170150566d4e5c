namespace Ramwright.Metrology.Quantities;

/// <summary>A gauge pressure, held in pascals. Zero is atmosphere; any finite value.</summary>
public readonly record struct Pressure : IQuantity<Pressure>
{
    private Pressure(double pascals) => Si = QuantityArithmetic.Finite(pascals, "pascals");

    /// <summary>The value in pascals.</summary>
    public double Si { get; }

    public double Pascals => Si;
    public double Bar => Si / 1e5;

    public static Pressure FromSi(double value) => new(value);

    public static Pressure FromPascals(double pascals) => new(pascals);

    public static Pressure FromBar(double bar) => new(bar * 1e5);

    public static Force operator *(Pressure p, Area a) => Force.FromNewtons(p.Pascals * a.SquareMetres);
}
