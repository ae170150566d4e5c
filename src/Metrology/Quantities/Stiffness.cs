namespace Ramwright.Metrology.Quantities;

/// <summary>A stiffness or spring rate, held in newtons per metre.</summary>
public readonly record struct Stiffness : IQuantity<Stiffness>
{
    private Stiffness(double newtonsPerMetre) => Si = QuantityArithmetic.Finite(newtonsPerMetre, "newtons per metre");

    /// <summary>The value in newtons per metre.</summary>
    public double Si { get; }

    public double NewtonsPerMetre => Si;

    public static Stiffness FromSi(double value) => new(value);

    public static Stiffness FromNewtonsPerMetre(double newtonsPerMetre) => new(newtonsPerMetre);

    public static Force operator *(Stiffness k, Length x) => Force.FromNewtons(k.NewtonsPerMetre * x.Metres);
}
