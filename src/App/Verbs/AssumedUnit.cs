using System.Globalization;
using Ramwright.Instruments;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;

namespace Ramwright.App.Verbs;

/// <summary>Readings without any stated unit are taken in that of the limits, which is bar unless written otherwise; never where they then lie far off.</summary>
internal static class AssumedUnit
{
    /// <summary>A middle reading below this share of the lower limit, or above its inverse times the upper one, may well be in another unit.</summary>
    private const double FarShare = 0.5;

    /// <summary>What the person must be told.</summary>
    public static string Note(ReadingUnit unit) => $"note: no unit stands with the readings; they are taken as {unit.Symbol()}. A header such as peak_{unit.Symbol()} says it for good";

    /// <summary>Why the assumption cannot be made; null when it can, or when the unit is stated.</summary>
    public static Mistake? Doubt(ReadingsAnswer.Taken taken, PressureWindow limits, string file)
    {
        if (!taken.UnitAssumed)
            return null;
        var middle = taken.Readings.Select(r => r.Peak).Order(Comparer<Pressure>.Create((a, b) => a.Pascals.CompareTo(b.Pascals))).ElementAt(taken.Readings.Length / 2);
        return middle.Pascals >= FarShare * limits.Min.Pascals && middle.Pascals <= limits.Max.Pascals / FarShare
            ? null
            : new Mistake(new Place(file, taken.Readings[0].Line, 1, 0),
                string.Create(CultureInfo.InvariantCulture, $"no unit stands with the readings, and in {taken.Unit.Symbol()} they would lie at {middle.Bar:0.#} bar, far from the limits {limits.Min.Bar:0.#} to {limits.Max.Bar:0.#} bar"),
                $"say the unit: a header such as peak_MPa, or --unit with {ReadingUnits.Known}", ReadingCodes.MissingUnit);
    }
}
