namespace Ramwright.Metrology.Quantities;

/// <summary>A mass, held in kilograms.</summary>
public readonly record struct Mass : IQuantity<Mass>
{
    private Mass(double kilograms) => Si = QuantityArithmetic.Finite(kilograms, "kilograms");

    /// <summary>The value in kilograms.</summary>
    public double Si { get; }

    public double Kilograms => Si;

    public static Mass FromSi(double value) => new(value);

    public static Mass FromKilograms(double kilograms) => new(kilograms);
}
