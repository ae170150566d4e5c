namespace Ramwright.Metrology.Quantities;

/// <summary>A temperature, held in kelvins; zero or more in nature, any finite value here.</summary>
public readonly record struct Temperature : IQuantity<Temperature>
{
    private Temperature(double kelvins) => Si = QuantityArithmetic.Finite(kelvins, "kelvins");

    /// <summary>The value in kelvins.</summary>
    public double Si { get; }

    public double Kelvins => Si;
    public double Celsius => Si - 273.15;

    public static Temperature FromSi(double value) => new(value);

    public static Temperature FromCelsius(double celsius) => new(celsius + 273.15);
}
