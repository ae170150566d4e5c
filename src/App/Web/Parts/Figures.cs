using System.Collections.Frozen;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;

namespace Ramwright.App.Web.Parts;

/// <summary>A unit that a form takes: what it is of, and how it becomes SI.</summary>
public sealed record FormUnit(string Symbol, MeasuredKind Kind, double Factor, double Offset = 0);

/// <summary>Figures as people type them into forms: decimal point or comma, the unit beside the field or typed after the figure.</summary>
public static class Figures
{
    /// <summary>The units offered, the commonest of a kind first. Exact by definition: NIST SP 811:2008, Appendix B.</summary>
    public static IReadOnlyList<FormUnit> Units { get; } =
    [
        new("bar", MeasuredKind.Pressure, 1e5), new("psi", MeasuredKind.Pressure, 6894.757293168361), new("MPa", MeasuredKind.Pressure, 1e6),
        new("s", MeasuredKind.Time, 1), new("ms", MeasuredKind.Time, 1e-3), new("min", MeasuredKind.Time, 60), new("A", MeasuredKind.Current, 1), new("V", MeasuredKind.Voltage, 1),
        new("mm", MeasuredKind.Length, 1e-3), new("in", MeasuredKind.Length, 0.0254), new("kN", MeasuredKind.Force, 1e3), new("N", MeasuredKind.Force, 1),
        new("lbf", MeasuredKind.Force, 4.4482216152605), new("N·m", MeasuredKind.Torque, 1), new("lbf·ft", MeasuredKind.Torque, 1.3558179483314004), new("lbf·in", MeasuredKind.Torque, 0.1129848290276167),
        new("ml", MeasuredKind.Volume, 1e-6), new("°C", MeasuredKind.Temperature, 1, 273.15), new("°F", MeasuredKind.Temperature, 5.0 / 9, 459.67 * 5 / 9), new("pieces", MeasuredKind.Count, 1),
    ];

    private static readonly FrozenDictionary<string, FormUnit> BySymbol = Units
        .SelectMany(u => new[] { (u.Symbol, u), (u.Symbol.Replace("·", "", StringComparison.Ordinal), u), (u.Symbol.Replace("°", "", StringComparison.Ordinal), u) })
        .DistinctBy(p => p.Item1, StringComparer.OrdinalIgnoreCase).ToFrozenDictionary(p => p.Item1, p => p.u, StringComparer.OrdinalIgnoreCase);

    /// <summary>A figure with the unit typed after it, else with <paramref name="unit"/>; null with the mistake noted.</summary>
    public static MeasuredValue? Read(string? text, string unit, string field, FormMistakes mistakes)
    {
        var typed = (text ?? "").Trim();
        var end = typed.Length;
        while (end > 0 && !char.IsAsciiDigit(typed[end - 1]) && typed[end - 1] is not ('.' or ','))
            end--;
        var symbol = typed[end..].Trim() is { Length: > 0 } own ? own : unit;
        if (end == 0)
            mistakes.Add(field, "The figure is missing.", $"Write it in {unit}, such as {(unit == "bar" ? "702.1" : "12.5")}.");
        else if (Number(typed[..end]) is not { } number)
            mistakes.Add(field, $"'{Short(typed)}' is no figure.", "Write digits with a decimal point or comma and no sign between thousands.");
        else if (!BySymbol.TryGetValue(symbol, out var known))
            mistakes.Add(field, $"'{Short(symbol)}' is no unit that this form knows.", $"Write one of {string.Join(", ", Units.Select(u => u.Symbol))}.");
        else
            return new MeasuredValue(known.Kind, (number * known.Factor) + known.Offset);
        return null;
    }

    /// <summary>A pressure; a figure of another kind is a mistake.</summary>
    public static Pressure? ReadPressure(string? text, string unit, string field, FormMistakes mistakes)
    {
        if (Read(text, unit, field, mistakes) is not { } reading)
            return null;
        if (reading.AsPressure is { } pressure && pressure.Bar is > 0 and < 5000)
            return pressure;
        mistakes.Add(field, $"'{Short((text ?? "").Trim())}' is no pressure that such a tool can have.", "Write a pressure above zero, in bar, MPa or psi.");
        return null;
    }

    /// <summary>Several pressures, divided by blanks, semicolons or new lines; all mistakes at once.</summary>
    public static IReadOnlyList<Pressure> ReadPressures(string? text, string unit, string field, FormMistakes mistakes)
    {
        var words = (text ?? "").Split([' ', '\t', '\r', '\n', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var before = mistakes.Count;
        List<Pressure> read = [];
        if (words.Length is 0 or > 100)
            mistakes.Add(field, words.Length == 0 ? "No run was written down." : $"{words.Length} figures are more than the 100 that this form takes.", "Write the peak of each full run, one to a line.");
        else
        {
            for (var i = 0; i < words.Length; i++)
            {
                if (ReadPressure(words[i], unit, field, mistakes) is { } pressure)
                    read.Add(pressure);
            }
        }

        return mistakes.Count > before ? [] : read;
    }

    private static double? Number(string text)
    {
        var plain = text.Trim();
        if (plain.Count(c => c is '.' or ',') > 1 || plain.Length > 20)
            return null;
        return double.TryParse(plain.Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value) ? value : null;
    }

    private static string Short(string text) => text is { Length: > 30 } ? text[..30] + " …" : text;
}
