namespace Ramwright.Metrology.Quantities;

/// <summary>A length, held in metres.</summary>
public readonly record struct Length : IQuantity<Length>
{
    private Length(double metres) => Si = QuantityArithmetic.Finite(metres, "metres");

    /// <summary>The value in metres.</summary>
    public double Si { get; }

    public double Metres => Si;
    public double Millimetres => Si * 1e3;

    public static Length FromSi(double value) => new(value);

    public static Length FromMetres(double metres) => new(metres);

    public static Length FromMillimetres(double millimetres) => new(millimetres * 1e-3);
}
