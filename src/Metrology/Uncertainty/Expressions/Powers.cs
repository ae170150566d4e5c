using System.Globalization;
using Ramwright.Metrology.Input;

namespace Ramwright.Metrology.Uncertainty.Expressions;

/// <summary>What a quantity measures, as powers of the SI base units. Angles and shares are plain numbers.</summary>
public readonly record struct Powers(double Kilogram, double Metre, double Second, double Ampere, double Kelvin)
{
    /// <summary>A plain number.</summary>
    public static Powers None => default;

    public static Powers Of(Dimension dimension) => dimension switch
    {
        Dimension.Length => new(0, 1, 0, 0, 0),
        Dimension.Area => new(0, 2, 0, 0, 0),
        Dimension.Volume => new(0, 3, 0, 0, 0),
        Dimension.Mass => new(1, 0, 0, 0, 0),
        Dimension.Time => new(0, 0, 1, 0, 0),
        Dimension.Force => new(1, 1, -2, 0, 0),
        Dimension.Pressure => new(1, -1, -2, 0, 0),
        Dimension.Torque => new(1, 2, -2, 0, 0),
        Dimension.Stiffness => new(1, 0, -2, 0, 0),
        Dimension.Angle => None,
        Dimension.Temperature => new(0, 0, 0, 0, 1),
        Dimension.Expansion => new(0, 0, 0, 0, -1),
        Dimension.Voltage => new(1, 2, -3, -1, 0),
        Dimension.Resistance => new(1, 2, -3, -2, 0),
        Dimension.Current => new(0, 0, 0, 1, 0),
        Dimension.TorqueConstant => new(1, 2, -2, -1, 0),
        Dimension.Inertia => new(1, 2, 0, 0, 0),
        Dimension.ViscousFriction => new(1, 0, -1, 0, 0),
        Dimension.Density => new(1, -3, 0, 0, 0),
        Dimension.KinematicViscosity => new(0, 2, -1, 0, 0),
        _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "A dimension of the table is wanted."),
    };

    public static Powers operator +(Powers a, Powers b) => new(a.Kilogram + b.Kilogram, a.Metre + b.Metre, a.Second + b.Second, a.Ampere + b.Ampere, a.Kelvin + b.Kelvin);

    public static Powers operator *(Powers a, double times) => new(a.Kilogram * times, a.Metre * times, a.Second * times, a.Ampere * times, a.Kelvin * times);

    /// <summary>Such as <c>kg·m/s²</c>, or 'a plain number'.</summary>
    public override string ToString()
    {
        var known = this;
        foreach (var dimension in Enum.GetValues<Dimension>().Where(d => d != Dimension.Angle))
            if (Of(dimension) == known)
                return $"{UnitTable.SymbolsOf(dimension)[0]} ({dimension switch { Dimension.Expansion => "one over a temperature", _ => Words(dimension) }})";
        if (this == None)
            return "a plain number";
        var parts = new[] { ("kg", Kilogram), ("m", Metre), ("s", Second), ("A", Ampere), ("K", Kelvin) }.Where(p => p.Item2 != 0)
            .Select(p => p.Item2 == 1 ? p.Item1 : string.Create(CultureInfo.InvariantCulture, $"{p.Item1}^{p.Item2}"));
        return string.Join("·", parts);
    }

    private static string Words(Dimension dimension) => dimension switch
    {
        Dimension.Torque => "torque", // energy has the same powers
        Dimension.KinematicViscosity => "kinematic viscosity",
        Dimension.TorqueConstant => "torque constant",
        Dimension.ViscousFriction => "viscous friction",
        _ => dimension.ToString().ToLowerInvariant(),
    };
}
