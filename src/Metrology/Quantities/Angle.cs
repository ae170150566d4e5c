namespace Ramwright.Metrology.Quantities;

/// <summary>An angle, held in radians; positive is clockwise as the technician looks at the screw.</summary>
public readonly record struct Angle : IQuantity<Angle>
{
    private Angle(double radians) => Si = QuantityArithmetic.Finite(radians, "radians");

    /// <summary>The value in radians.</summary>
    public double Si { get; }

    public double Radians => Si;
    public double Degrees => Si * (180 / Math.PI);
    public double Turns => Si / (2 * Math.PI);

    public static Angle FromSi(double value) => new(value);

    public static Angle FromRadians(double radians) => new(radians);

    public static Angle FromDegrees(double degrees) => new(degrees * (Math.PI / 180));

    public static Angle FromTurns(double turns) => new(turns * 2 * Math.PI);
}
