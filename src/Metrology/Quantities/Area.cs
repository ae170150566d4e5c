namespace Ramwright.Metrology.Quantities;

/// <summary>An area, held in square metres.</summary>
public readonly record struct Area : IQuantity<Area>
{
    private Area(double squareMetres) => Si = QuantityArithmetic.Finite(squareMetres, "square metres");

    /// <summary>The value in square metres.</summary>
    public double Si { get; }

    public double SquareMetres => Si;

    public static Area FromSi(double value) => new(value);

    public static Area FromSquareMetres(double squareMetres) => new(squareMetres);

    /// <summary>The area of a full circle.</summary>
    public static Area OfCircle(Length diameter) => new(Math.PI / 4 * diameter.Metres * diameter.Metres);
}
