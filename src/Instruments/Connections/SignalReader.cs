using Ramwright.Metrology.Input;
using Ramwright.Metrology.Input.Tables;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Connections;

/// <summary>Reads what the numbers of a device mean, and when they make a run.</summary>
internal static class SignalReader
{
    public static Signal? Read(Clauses clauses)
    {
        var unit = Unit(clauses);
        var factor = clauses.Number("times", -1e9, 1e9) ?? 1;
        if (Math.Abs(factor) < 1e-9)
            clauses.Wrong("times", "out-of-range", "with a factor of nothing every reading is nothing", "write the factor of the device, such as times 0.1");
        var offset = clauses.Number("plus", -1e9, 1e9) ?? 0;
        var lag = clauses.Time("lag", 0, 1);
        var defaults = new Signal { Unit = ReadingUnit.Bar };
        var begins = Pressure(clauses, "begins") ?? defaults.Begins;
        var ends = Pressure(clauses, "ends") ?? (clauses.Has("begins") ? 0.5 * begins : defaults.Ends);
        var full = Pressure(clauses, "full");
        if (ends >= begins)
            clauses.Wrong(clauses.Has("ends") ? "ends" : "begins", ConnectionCodes.ClauseConflict, "a run would end where it begins, or above", "write 'ends' below 'begins': noise must not part one run into two");
        if (full is { } least && least <= begins)
            clauses.Wrong("full", ConnectionCodes.ClauseConflict, "every run would be a full one", "write 'full' above 'begins': the least peak of a run that went all the way");
        return unit is { } known ? new Signal { Unit = known, Factor = factor, Offset = offset, Lag = lag, Begins = begins, Ends = ends, Full = full } : null;
    }

    private static Pressure? Pressure(Clauses clauses, string clause) =>
        clauses.Quantity(clause, Dimension.Pressure, 1e4, 2e8, "Pa") is { } pascals ? Metrology.Quantities.Pressure.FromPascals(pascals) : null;

    private static ReadingUnit? Unit(Clauses clauses)
    {
        if (!clauses.Has("in"))
            clauses.Missing("in", $"write the unit of the readings, such as in bar; known are {ReadingUnits.Known}");
        if (clauses.Single("in") is not { } word)
            return null;
        if (ReadingUnits.Find(word.Text) is { } unit)
            return unit;
        clauses.Wrong(word, ReadingCodes.UnknownUnit, $"'{Showable.Short(word.Text)}' is no unit that is read here", $"write {ReadingUnits.Known}");
        return null;
    }
}
