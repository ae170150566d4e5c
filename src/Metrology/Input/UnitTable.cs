using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Ramwright.Metrology.Input;

/// <summary>A unit: how it is written, and how it converts: SI = (value + offset) × factor.</summary>
/// <param name="Symbol">As it is shown, such as <c>N·m</c>.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">Size in the coherent SI unit of the dimension.</param>
/// <param name="Offset">Added before scaling; only temperatures have one.</param>
public sealed record Unit(string Symbol, Dimension Dimension, double Factor, double Offset = 0)
{
    public double ToSi(double value) => (value + Offset) * Factor;

    /// <summary>From SI to this unit.</summary>
    public double FromSi(double si) => si / Factor - Offset;
}

/// <summary>
/// The units that files and options may use, small enough to cost nothing at start. Factors are exact by definition
/// (SI Brochure, 9th ed., tables 4, 5 and 8; NIST SP 811, appendix B.8, for the inch-pound units) and are compared with UnitsNet in the tests.
/// </summary>
public static class UnitTable
{
    private const double Inch = 0.0254;
    private const double Pound = 0.45359237;
    private const double PoundForce = Pound * 9.80665;
    private const double Day = 86_400;

    private static readonly Unit[] Units =
    [
        new("mm", Dimension.Length, 1e-3), new("m", Dimension.Length, 1), new("cm", Dimension.Length, 1e-2),
        new("µm", Dimension.Length, 1e-6), new("in", Dimension.Length, Inch),
        new("ml", Dimension.Volume, 1e-6), new("cm³", Dimension.Volume, 1e-6), new("l", Dimension.Volume, 1e-3),
        new("mm³", Dimension.Volume, 1e-9), new("m³", Dimension.Volume, 1),
        new("kg", Dimension.Mass, 1), new("g", Dimension.Mass, 1e-3), new("lb", Dimension.Mass, Pound),
        new("s", Dimension.Time, 1), new("ms", Dimension.Time, 1e-3), new("min", Dimension.Time, 60), new("h", Dimension.Time, 3600),
        new("days", Dimension.Time, Day), new("weeks", Dimension.Time, 7 * Day), new("years", Dimension.Time, 365.25 * Day),
        new("N", Dimension.Force, 1), new("kN", Dimension.Force, 1e3), new("lbf", Dimension.Force, PoundForce),
        new("bar", Dimension.Pressure, 1e5), new("MPa", Dimension.Pressure, 1e6), new("kPa", Dimension.Pressure, 1e3),
        new("GPa", Dimension.Pressure, 1e9), new("Pa", Dimension.Pressure, 1), new("mbar", Dimension.Pressure, 1e2),
        new("psi", Dimension.Pressure, PoundForce / (Inch * Inch)),
        new("N·m", Dimension.Torque, 1), new("N·cm", Dimension.Torque, 1e-2), new("N·mm", Dimension.Torque, 1e-3), new("kN·m", Dimension.Torque, 1e3),
        new("lbf·ft", Dimension.Torque, PoundForce * 12 * Inch), new("lbf·in", Dimension.Torque, PoundForce * Inch),
        new("N/mm", Dimension.Stiffness, 1e3), new("kN/mm", Dimension.Stiffness, 1e6), new("N/m", Dimension.Stiffness, 1), new("lbf/in", Dimension.Stiffness, PoundForce / Inch),
        new("°", Dimension.Angle, Math.PI / 180), new("rad", Dimension.Angle, 1), new("turns", Dimension.Angle, 2 * Math.PI),
        new("°C", Dimension.Temperature, 1, 273.15), new("K", Dimension.Temperature, 1), new("°F", Dimension.Temperature, 5d / 9, 459.67),
        new("V", Dimension.Voltage, 1), new("mV", Dimension.Voltage, 1e-3),
        new("mΩ", Dimension.Resistance, 1e-3), new("Ω", Dimension.Resistance, 1),
        new("A", Dimension.Current, 1), new("mA", Dimension.Current, 1e-3),
        new("N·m/A", Dimension.TorqueConstant, 1), new("mN·m/A", Dimension.TorqueConstant, 1e-3), new("V·s/rad", Dimension.TorqueConstant, 1),
        new("kg·m²", Dimension.Inertia, 1), new("kg·mm²", Dimension.Inertia, 1e-6), new("g·cm²", Dimension.Inertia, 1e-7),
        new("N·s/m", Dimension.ViscousFriction, 1), new("N·s/mm", Dimension.ViscousFriction, 1e3),
        new("kg/m³", Dimension.Density, 1), new("kg/l", Dimension.Density, 1e3), new("g/cm³", Dimension.Density, 1e3),
        new("mm²/s", Dimension.KinematicViscosity, 1e-6), new("cSt", Dimension.KinematicViscosity, 1e-6), new("m²/s", Dimension.KinematicViscosity, 1),
        new("mm²", Dimension.Area, 1e-6), new("cm²", Dimension.Area, 1e-4), new("m²", Dimension.Area, 1), new("in²", Dimension.Area, Inch * Inch),
        new("1/K", Dimension.Expansion, 1),
    ];

    private static readonly (string Written, string Symbol)[] OtherSpellings =
    [
        ("cc", "cm³"), ("mL", "ml"), ("L", "l"), ("day", "days"), ("d", "days"), ("week", "weeks"), ("year", "years"), ("a", "years"),
        ("sec", "s"), ("minutes", "min"), ("minute", "min"), ("hours", "h"), ("hour", "h"), ("turn", "turns"),
        ("lb·ft", "lbf·ft"), ("ft·lbf", "lbf·ft"), ("in·lbf", "lbf·in"),
    ];

    private static readonly FrozenDictionary<string, Unit> ByKey = Index();

    /// <summary>Every unit, in the order in which they are offered.</summary>
    public static IReadOnlyList<Unit> All => Units;

    /// <summary>The unit that is written so; ASCII spellings (N.m, Nm, N*m, um, cm3, ohm, deg) count as the same. Null when there is none.</summary>
    public static Unit? Find(string written) => ByKey.GetValueOrDefault(Key(written));

    /// <summary>A unit that differs from what was written by capitals only, such as bar for Bar; null when there is none.</summary>
    public static Unit? FindInOtherCase(string written)
    {
        var key = Key(written);
        foreach (var unit in Units)
            if (string.Equals(Key(unit.Symbol), key, StringComparison.OrdinalIgnoreCase))
                return unit;
        return null;
    }

    /// <summary>Symbols of the units of a dimension, the usual one first.</summary>
    public static ImmutableArray<string> SymbolsOf(Dimension dimension) =>
        [.. Units.Where(u => u.Dimension == dimension).Select(u => u.Symbol)];

    private static FrozenDictionary<string, Unit> Index()
    {
        var index = Units.ToDictionary(u => Key(u.Symbol), StringComparer.Ordinal);
        foreach (var (written, symbol) in OtherSpellings)
            index.Add(Key(written), index[Key(symbol)]);
        return index.ToFrozenDictionary(StringComparer.Ordinal);
    }

    /// <summary>One key for all spellings: no dots or spaces, ASCII for the signs.</summary>
    private static string Key(string written)
    {
        var key = new System.Text.StringBuilder(written.Length + 4);
        foreach (var c in written)
            _ = c switch
            {
                '·' or '⋅' or '∙' or '*' or '.' or '^' or ' ' => key,
                '²' => key.Append('2'),
                '³' => key.Append('3'),
                'µ' or 'μ' => key.Append('u'),
                'Ω' or '\u2126' => key.Append("ohm"),
                '°' => key.Append("deg"),
                _ => key.Append(c),
            };
        return key.ToString();
    }
}
