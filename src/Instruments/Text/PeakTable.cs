using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Instruments.Text;

/// <summary>Reads a file of peaks with separated columns.</summary>
internal static class PeakTable
{
    /// <summary>Which column is which (0-based), and the unit.</summary>
    private readonly record struct Layout(int Peak, int? Run, int? Void, int Columns, string PeakName, ReadingUnit? Unit)
    {
        /// <summary>Whether the unit was assumed, since neither header nor caller says one.</summary>
        public bool UnitAssumed { get; init; }
    }

    public static ReadingsAnswer Read(IReadOnlyList<TextLine> lines, ReadingsOptions options, MistakeList mistakes)
    {
        var content = lines.Where(l => !l.IsEmpty).ToList();
        if (content.Count == 0)
            return NoReading(mistakes);
        var hasHeader = Header.IsHeader(content[0].Text);
        if (Dialect.Find(content, hasHeader, options.Decimal, mistakes) is not { } dialect)
            return new ReadingsAnswer.Refused(mistakes.InOrder());
        var layout = hasHeader ? FromHeader(content[0], dialect, options, mistakes) : WithoutHeader(content[0], dialect, options, mistakes);
        if (layout is not { } found)
            return new ReadingsAnswer.Refused(mistakes.InOrder());
        var data = hasHeader ? content[1..] : content;
        return data.Count == 0 && mistakes.IsEmpty ? NoReading(mistakes) : Rows(data, dialect, found, options, mistakes);
    }

    private static ReadingsAnswer Rows(List<TextLine> data, Dialect dialect, Layout layout, ReadingsOptions options, MistakeList mistakes)
    {
        var peaks = new PeakCell(layout.PeakName, layout.Unit, options.RamArea, options.ForceHeldBack, mistakes) { Settled = dialect.Decimal };
        var order = new RunOrder(mistakes);
        var taken = ImmutableArray.CreateBuilder<Reading>();
        var voided = ImmutableArray.CreateBuilder<VoidReading>();
        foreach (var line in data)
        {
            var fields = Fields.Cut(line.Text, dialect.Separator, out var openQuote);
            if (openQuote > 0)
            {
                mistakes.Add(line, openQuote, 1, ReadingCodes.OpenQuote, "a quote opens here and is not closed on this line", "close the quote, or take it out");
                continue;
            }
            if (fields.Count > layout.Columns)
                mistakes.Add(line, fields[layout.Columns], ReadingCodes.TooManyColumns, $"this line has {fields.Count} columns; the file has {layout.Columns}", "take out what is too much; a number with its thousands set apart counts as two columns");
            var run = layout.Run is { } runColumn ? order.Read(line, At(fields, runColumn, line)) : taken.Count + voided.Count + 1;
            var cell = At(fields, layout.Peak, line);
            if (layout.Void is { } voidColumn && VoidCause(line, At(fields, voidColumn, line), mistakes) is { } cause)
                voided.Add(new(run ?? 0, cell.Text.Length == 0 || NumberWords.IsNoNumber(cell.Text) ? null : peaks.Read(line, cell), line.Number, cause));
            else if (peaks.Read(line, cell) is { } peak && run is { } number)
                taken.Add(new(number, peak, line.Number));
        }
        if (mistakes.IsEmpty && taken.Count == 0)
            return NoReading(mistakes);
        return mistakes.IsEmpty ? new ReadingsAnswer.Taken(taken.ToImmutable()) { Void = voided.ToImmutable(), Unit = layout.Unit!.Value, UnitAssumed = layout.UnitAssumed } : new ReadingsAnswer.Refused(mistakes.InOrder());
    }

    private static Layout? FromHeader(TextLine line, Dialect dialect, ReadingsOptions options, MistakeList mistakes)
    {
        var columns = Header.Read(Fields.Cut(line.Text, dialect.Separator, out _));
        var peaks = columns.Where(c => c.Kind == ColumnKind.Peak).ToList();
        if (columns.Where(c => c.Kind == ColumnKind.Time).Select(c => (HeaderColumn?)c).FirstOrDefault() is { } time && peaks.Count > 0)
        {
            mistakes.Add(line, time.Field, ReadingCodes.RecordingNotPeaks, $"the column '{Showable.Short(time.Field.Text)}' says that this is a recording over time, not a list of peaks", "give a list with one peak per run");
            return null;
        }
        if (peaks.Count == 0)
        {
            mistakes.Add(line, 1, 0, ReadingCodes.NoPeakColumn, $"no column is named as a peak; there is {string.Join(", ", columns.Take(6).Select(c => $"'{Showable.Short(c.Field.Text)}'"))}", "name it peak_bar, or peak with another unit");
            return null;
        }
        if (peaks.Count > 1)
        {
            mistakes.Add(line, peaks[1].Field, ReadingCodes.TwoPeakColumns, $"'{Showable.Short(peaks[0].Field.Text)}' and '{Showable.Short(peaks[1].Field.Text)}' both name a peak", "keep one column of peaks, or give the other one another name");
            return null;
        }
        return new(columns.IndexOf(peaks[0]), Index(columns, ColumnKind.Run), Index(columns, ColumnKind.Void), columns.Length,
            Showable.Short(peaks[0].Field.Text), UnitOf(line, peaks[0], options, mistakes))
        { UnitAssumed = peaks[0].Unit is null && options.Unit is null };
    }

    private static Layout? WithoutHeader(TextLine first, Dialect dialect, ReadingsOptions options, MistakeList mistakes)
    {
        var fields = Fields.Cut(first.Text, dialect.Separator, out _);
        if (fields.Count > 2)
        {
            mistakes.Add(first, 1, 0, ReadingCodes.MissingHeader, $"the file has {fields.Count} columns and no header that says which holds the peak", "write a header line above, such as run;peak_bar;operator");
            return null;
        }
        if (fields.Count == 2 && int.TryParse(fields[0].Text, NumberStyles.None, CultureInfo.InvariantCulture, out var run) && run != 1)
        {
            mistakes.Add(first, fields[0], ReadingCodes.MissingHeader, $"the file has 2 columns and no header, and {run} is no number of a first run", "write a header line above, such as run;peak_bar; or put one peak on each line");
            return null;
        }
        if (Given(options) is null)
            mistakes.Add(first, 1, 0, ReadingCodes.MissingUnit, "the file has no header and no unit was given", $"write a header such as peak_bar above, or give the unit: {ReadingUnits.Known}");
        return new(fields.Count - 1, fields.Count == 2 ? 0 : null, null, fields.Count, "peak", Usable(Given(options), first, new("", 1, 0, Quoted: false), options, mistakes)) { UnitAssumed = options.Unit is null };
    }

    private static ReadingUnit? UnitOf(TextLine line, HeaderColumn peak, ReadingsOptions options, MistakeList mistakes)
    {
        if (peak.Unit is not { } symbol)
        {
            if (Given(options) is null)
                mistakes.Add(line, peak.Field, ReadingCodes.MissingUnit, $"'{Showable.Short(peak.Field.Text)}' names no unit and none was given", $"write the unit into the header, such as peak_bar, or give it: {ReadingUnits.Known}");
            return Usable(Given(options), line, peak.Field, options, mistakes);
        }
        if (ReadingUnits.Find(symbol) is not { } unit)
        {
            mistakes.Add(line, peak.Field, ReadingCodes.UnknownUnit, $"'{Showable.Short(symbol)}' is no unit that is read here", $"give the peaks in {ReadingUnits.Known}, as gauge pressure");
            return null;
        }
        if (options.Unit is { } given && given != unit)
        {
            mistakes.Add(line, peak.Field, ReadingCodes.UnitConflict, $"the header says {unit.Symbol()}, but {given.Symbol()} was given as the unit", "leave the given unit out if the header is right; else mend the header");
            return null;
        }
        return Usable(unit, line, peak.Field, options, mistakes);
    }

    private static ReadingUnit? Given(ReadingsOptions options) => options.Unit ?? options.AssumedUnit;

    private static ReadingUnit? Usable(ReadingUnit? unit, TextLine line, Field at, ReadingsOptions options, MistakeList mistakes)
    {
        if (unit is not ReadingUnit.Kilonewton || options.RamArea is { SquareMetres: > 0 })
            return unit;
        mistakes.Add(line, at, ReadingCodes.UnitNeedsArea, "the peaks are forces in kN, and no ram area is known to turn them into pressures", "take a service model that states the ram diameter, or give the peaks as pressures");
        return null;
    }

    /// <summary>The cause in a void cell; null for a valid run, or with a mistake added when it is marked void without a cause.</summary>
    private static string? VoidCause(TextLine line, Field cell, MistakeList mistakes)
    {
        switch (cell.Text.ToLowerInvariant())
        {
            case "" or "-" or "0" or "no" or "false" or "nein":
                return null;
            case "1" or "x" or "yes" or "y" or "true" or "void" or "ja":
                mistakes.Add(line, cell, ReadingCodes.VoidWithoutCause, "the run is marked void without a cause", "write what happened, such as 'trigger let go too early'; a value alone makes no run void");
                return null;
            default:
                return Showable.Of(cell.Text.Length > 200 ? cell.Text[..200] : cell.Text);
        }
    }

    private static Field At(List<Field> fields, int column, TextLine line) => column < fields.Count ? fields[column] : new("", line.Text.Length + 1, 1, Quoted: false);

    private static int? Index(ImmutableArray<HeaderColumn> columns, ColumnKind kind)
    {
        for (var i = 0; i < columns.Length; i++)
        {
            if (columns[i].Kind == kind)
                return i;
        }
        return null;
    }

    private static ReadingsAnswer.Refused NoReading(MistakeList mistakes)
    {
        mistakes.AddWhole(ReadingCodes.NoReading, "there is no reading in this file", "write one peak per line, under a header such as peak_bar");
        return new ReadingsAnswer.Refused(mistakes.InOrder());
    }
}
