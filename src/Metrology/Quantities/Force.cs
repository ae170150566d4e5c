namespace Ramwright.Metrology.Quantities;

/// <summary>A force, held in newtons; positive pushes the ram out.</summary>
public readonly record struct Force : IQuantity<Force>
{
    private Force(double newtons) => Si = QuantityArithmetic.Finite(newtons, "newtons");

    /// <summary>The value in newtons.</summary>
    public double Si { get; }

    public double Newtons => Si;
    public double Kilonewtons => Si / 1e3;

    public static Force FromSi(double value) => new(value);

    public static Force FromNewtons(double newtons) => new(newtons);

    public static Force FromKilonewtons(double kilonewtons) => new(kilonewtons * 1e3);

    public static Pressure operator /(Force f, Area a) => Pressure.FromPascals(f.Newtons / a.SquareMetres);

    public static Torque operator *(Force f, Length arm) => Torque.FromNewtonMetres(f.Newtons * arm.Metres);
}
