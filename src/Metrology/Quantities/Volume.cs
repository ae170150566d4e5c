namespace Ramwright.Metrology.Quantities;

/// <summary>A volume, held in cubic metres.</summary>
public readonly record struct Volume : IQuantity<Volume>
{
    private Volume(double cubicMetres) => Si = QuantityArithmetic.Finite(cubicMetres, "cubic metres");

    /// <summary>The value in cubic metres.</summary>
    public double Si { get; }

    public double CubicMetres => Si;
    public double Millilitres => Si * 1e6;

    public static Volume FromSi(double value) => new(value);

    public static Volume FromCubicMetres(double cubicMetres) => new(cubicMetres);

    public static Volume FromMillilitres(double millilitres) => new(millilitres * 1e-6);
}
