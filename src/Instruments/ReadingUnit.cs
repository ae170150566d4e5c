using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments;

/// <summary>Units in which readings may be written. A force is turned into a pressure by the ram area.</summary>
public enum ReadingUnit { Bar, Megapascal, Kilopascal, Psi, Kilonewton }

/// <summary>Names and sizes of the units.</summary>
public static class ReadingUnits
{
    // One pound-force over one square inch, from the exact pound (0.45359237 kg), standard gravity (9.80665 m/s²) and inch (25.4 mm): NIST SP 811, appendix B.
    private const double PascalsPerPsi = 0.45359237 * 9.80665 / (0.0254 * 0.0254);

    private static readonly Dictionary<string, ReadingUnit> s_bySymbol = new(StringComparer.OrdinalIgnoreCase)
    {
        ["bar"] = ReadingUnit.Bar,
        ["barg"] = ReadingUnit.Bar,
        ["MPa"] = ReadingUnit.Megapascal,
        ["kPa"] = ReadingUnit.Kilopascal,
        ["psi"] = ReadingUnit.Psi,
        ["psig"] = ReadingUnit.Psi,
        ["kN"] = ReadingUnit.Kilonewton,
    };

    /// <summary>The units a person may write, for the text of a mistake.</summary>
    public static string Known => "bar, MPa, kPa, psi or kN";

    /// <summary>The unit of a symbol such as <c>bar</c> or <c>MPa</c>, capitals not minded; null for any other.</summary>
    public static ReadingUnit? Find(string symbol) => s_bySymbol.TryGetValue(symbol, out var unit) ? unit : null;

    public static string Symbol(this ReadingUnit unit) => unit switch
    {
        ReadingUnit.Bar => "bar",
        ReadingUnit.Megapascal => "MPa",
        ReadingUnit.Kilopascal => "kPa",
        ReadingUnit.Psi => "psi",
        ReadingUnit.Kilonewton => "kN",
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, "No such unit."),
    };

    /// <summary>A value in a unit as a pressure; null when it overflows, or for a force without a ram area: p = (F + held back)/A.</summary>
    internal static Pressure? ToPressure(this ReadingUnit unit, double value, Area? ramArea, Force heldBack)
    {
        var pascals = unit switch
        {
            ReadingUnit.Bar => value * 1e5,
            ReadingUnit.Megapascal => value * 1e6,
            ReadingUnit.Kilopascal => value * 1e3,
            ReadingUnit.Psi => value * PascalsPerPsi,
            _ => ramArea is { SquareMetres: > 0 } area ? ((value * 1e3) + heldBack.Newtons) / area.SquareMetres : double.NaN,
        };
        return double.IsFinite(pascals) ? Pressure.FromPascals(pascals) : null;
    }
}
