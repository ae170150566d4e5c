using System.Globalization;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>Turns the numbers of a column into SI.</summary>
internal static class SignalValues
{
    /// <summary>The unit taken for a pressure from its highest number: the one in which a tool of some hundred bar would show it; null when none or several would do.</summary>
    public static Unit? GuessedPressure(double highest) => highest switch
    {
        >= 150 and <= 1_100 => RecordingUnits.Bar,
        >= 2_175 and <= 16_000 => RecordingUnits.Psi,
        > 16_000 and <= 110_000 => RecordingUnits.Kilopascal,
        >= 1.5e7 and <= 1.1e8 => RecordingUnits.Pascal,
        _ => null,
    };

    /// <summary>Highest value that is not missing; NaN when all are.</summary>
    public static double Highest(ReadOnlySpan<double> values)
    {
        var highest = double.NaN;
        foreach (var value in values)
            highest = value > highest || double.IsNaN(highest) ? value : highest;
        return highest;
    }

    /// <summary>Pressure in pascals, in place; false with a mistake added when its unit cannot be told.</summary>
    public static bool ToPascals(Span<double> values, SignalColumn column, RecordingOptions options, MistakeList mistakes, List<RecordingNote> notes)
    {
        var unit = column.Unit?.Unit;
        if (unit is null)
        {
            var highest = Highest(values);
            unit = GuessedPressure(highest);
            if (unit is null)
            {
                mistakes.AddWhole(RecordingCodes.MissingUnit, Text($"'{Showable.Short(column.Name)}' has no unit, and its highest value, {highest:0.###}, could stand for several"), "write the unit into the header, such as pressure_bar, or state it");
                return false;
            }

            notes.Add(new(RecordingNoteKind.UnitAssumed, Text($"'{Showable.Short(column.Name)}' has no unit; {unit.Symbol} was taken, since it goes up to {highest:0.##}")));
        }

        Convert(values, unit, column, options.PressureZeroPascals + (column.Unit is { Absolute: true } ? RecordingUnits.Atmosphere : 0));
        if (column.Unit is { Absolute: true })
            notes.Add(new(RecordingNoteKind.Converted, $"'{Showable.Short(column.Name)}' is absolute; the standard atmosphere, 1.01325 bar, was taken off"));
        if (column.Scale is { } scale)
            notes.Add(new(RecordingNoteKind.Converted, Text($"'{Showable.Short(column.Name)}' was turned into pressure at {scale.PerSignal / 1e5:0.####} bar per {(scale.Signal == Dimension.Voltage ? "V" : "A")}, zero at {scale.SignalAtZero:0.####} {(scale.Signal == Dimension.Voltage ? "V" : "A")}")));
        if (options.PressureZeroPascals != 0)
            notes.Add(new(RecordingNoteKind.Converted, Text($"{options.PressureZeroPascals / 1e5:0.###} bar were taken off, the sensor's zero as stated")));
        return true;
    }

    /// <summary>Current in amperes, in place.</summary>
    public static void ToAmperes(Span<double> values, SignalColumn column, RecordingOptions options, List<RecordingNote> notes)
    {
        var unit = column.Unit?.Unit;
        if (unit is null)
        {
            var highest = Highest(values);
            unit = highest > 2_000 ? RecordingUnits.Milliampere : RecordingUnits.Ampere;
            notes.Add(new(RecordingNoteKind.UnitAssumed, Text($"'{Showable.Short(column.Name)}' has no unit; {unit.Symbol} was taken, since it goes up to {highest:0.##}")));
        }

        Convert(values, unit, column, options.CurrentZeroAmperes);
        if (column.Scale is { } scale)
            notes.Add(new(RecordingNoteKind.Converted, Text($"'{Showable.Short(column.Name)}' was turned into current at {scale.PerSignal:0.####} A per V, zero at {scale.SignalAtZero:0.####} V")));
        if (options.CurrentZeroAmperes != 0)
            notes.Add(new(RecordingNoteKind.Converted, Text($"{options.CurrentZeroAmperes:0.###} A were taken off, the sensor's zero as stated")));
    }

    private static void Convert(Span<double> values, Unit unit, SignalColumn column, double zero)
    {
        for (var i = 0; i < values.Length; i++)
        {
            var si = unit.ToSi(values[i]);
            values[i] = (column.Scale is { } scale ? scale.Of(si) : si) - zero;
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
