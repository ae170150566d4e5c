using System.Globalization;
using Ramwright.Instruments;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;

namespace Ramwright.App.Verbs;

/// <summary>Reads pressures typed as options: limits, and amounts that a device may be off. A bare number is in bar.</summary>
internal static class PressureOption
{
    private const double MostBar = 2000; // as for readings: no such tool goes there

    /// <summary>A window such as <c>679..721</c>, <c>679..721bar</c> or <c>9850psi..10460psi</c>; a unit behind one limit holds for both.</summary>
    /// <param name="unit">The unit that was written; null when none was, or one in which readings are not written.</param>
    /// <returns>Null with a mistake added when it cannot be taken.</returns>
    public static PressureWindow? ReadWindow(string text, List<Mistake> found, out ReadingUnit? unit)
    {
        const string Mend = "write the lower limit, two dots, the upper one: 679..721 (bar), 679..721bar or 67.9MPa..72.1MPa";
        unit = null;
        var parts = text.Split("..");
        if (parts.Length != 2 || parts.Any(p => p.Trim().Length == 0))
            return Refuse(found, $"'{text}' is no pair of limits", Mend);
        var (low, lowUnit) = NumberAndUnit(parts[0]);
        var (high, highUnit) = NumberAndUnit(parts[1]);
        var written = lowUnit.Length > 0 ? lowUnit : highUnit;
        unit = ReadingUnits.Find(written);
        var shared = written.Length > 0 ? written : "bar";
        var whole = $"{low} {(lowUnit.Length > 0 ? lowUnit : shared)} .. {high} {(highUnit.Length > 0 ? highUnit : shared)}";
        var read = QuantityReader.ReadWindow(whole, Dimension.Pressure);
        if (read is TextReading<(double Low, double High)>.Bad bad)
            return Refuse(found, bad.Fault.What, Mend);
        var (least, most) = ((TextReading<(double Low, double High)>.Good)read).Value;
        if (!(least < most))
            return Refuse(found, $"'{text}': the upper limit must lie above the lower one", Mend);
        return least < 0 || most > MostBar * 1e5
            ? Refuse(found, $"'{text}' reaches outside 0 to 2,000 bar, where no such tool opens", Mend)
            : new PressureWindow(Pressure.FromSi(least), Pressure.FromSi(most));
    }

    /// <summary>An amount of zero or more in a unit of pressure or in % of the nominal pressure; zero with a mistake added when it is none.</summary>
    public static Pressure ReadAmount(string option, string text, Pressure nominal, List<Mistake> found)
    {
        var trimmed = text.Trim();
        Pressure? amount = null;
        if (trimmed.EndsWith('%'))
            amount = Number(trimmed[..^1]) is { } percent and <= 100 ? percent / 100 * nominal : null;
        else if (Number(trimmed) is { } bare and <= MostBar)
            amount = Pressure.FromBar(bare);
        else if (QuantityReader.Read<Pressure>(trimmed, Dimension.Pressure) is TextReading<Pressure>.Good { Value: var value })
            amount = value;
        if (amount is { Bar: >= 0 and <= MostBar } good)
            return good;
        found.Add(new Mistake(Place.Whole(option), $"'{text}' is no amount that a device may be off", "write it zero or more, in bar or another unit of pressure, or in % of the nominal pressure: 4bar or 0.6%", "usage"));
        return Pressure.FromBar(0);
    }

    private static (string Number, string Unit) NumberAndUnit(string text)
    {
        var trimmed = text.Trim();
        var end = trimmed.Length;
        while (end > 0 && char.IsLetter(trimmed[end - 1]))
            end--;
        return (trimmed[..end].Trim(), trimmed[end..]);
    }

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value is >= 0 and < double.PositiveInfinity ? value : null;

    private static PressureWindow? Refuse(List<Mistake> found, string what, string mend)
    {
        found.Add(new Mistake(Place.Whole("--window"), what, mend, "usage"));
        return null;
    }
}
