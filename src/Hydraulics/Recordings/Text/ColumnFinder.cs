using System.Globalization;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>Finds out which column holds what; what it cannot find is a mistake or a question.</summary>
internal sealed class ColumnFinder(IReadOnlyList<TextLine> head, TableShape shape, RecordingOptions options, MistakeList mistakes, List<RecordingNote> notes)
{
    private readonly (ColumnName[] Names, TextLine Line)? _header = HeadNames.Find(head, shape);

    private TextLine Top => _header?.Line ?? head[shape.FirstRow];

    /// <summary>The question that is left to a person, if any.</summary>
    public RecordingAnswer.WhichColumn? Question { get; private set; }

    /// <summary>The columns; null with a mistake added or a <see cref="Question"/> asked.</summary>
    public TableColumns? Find()
    {
        if (IsAmbiguous())
        {
            mistakes.Add(head[shape.FirstRow], head[shape.FirstRow].Text.IndexOf(',', StringComparison.Ordinal) + 1, 1, RecordingCodes.AmbiguousSeparator,
                "the commas could stand between columns or before decimals", "separate the columns with ; or a tab, write a header with one name for each column, or say what the separator is");
            return null;
        }

        var time = FindTime();
        var pressure = Chosen(RecordingSignal.Pressure, options.PressureColumn, options.PressureUnit, options.PressureScale, time);
        var current = Chosen(RecordingSignal.Current, options.CurrentColumn, options.CurrentUnit, options.CurrentScale, time);
        if (Question is not null || time is null || !mistakes.IsEmpty)
            return null;
        var byShape = false;
        if (_header is null && pressure is null && current is null)
        {
            var signals = Enumerable.Range(0, shape.Columns).Where(c => c != time.Index && c != time.Fraction && shape.Kinds[c] == CellKind.Number).ToList();
            if (signals.Count != 2)
            {
                mistakes.Add(Top, 1, 0, RecordingCodes.MissingHeader, $"the file has no header, and {signals.Count} columns beside time: which is pressure, which current, is not to be seen", "write a header such as time_s;pressure_bar;current_A, or say which column is which");
                return null;
            }

            pressure = new(signals[0], $"column {signals[0] + 1}", null, null);
            current = new(signals[1], $"column {signals[1] + 1}", null, null);
            byShape = true;
        }

        if (pressure is null && current is null)
        {
            mistakes.Add(Top, 1, 0, RecordingCodes.NoSignal, $"no column is named as pressure or current; there is {Listed()}", "name them pressure_bar and current_A, or say which column is which");
            return null;
        }

        NoteIgnored(time, pressure, current);
        return new(time, pressure, current, byShape);
    }

    /// <summary>Commas everywhere, no point, and no header with as many names.</summary>
    private bool IsAmbiguous()
    {
        if (shape.Separator != ',' || options.Separator is not null || options.Decimal is not null || shape.Columns < 2 || _header is not null)
            return false;
        return head.Skip(shape.FirstRow).Take(200).All(l => !l.Text.Contains('.', StringComparison.Ordinal) && !l.Text.Contains(':', StringComparison.Ordinal));
    }

    private TimeColumn? FindTime()
    {
        var index = options.TimeColumn is { } stated ? Named(stated, "time") : null;
        if (options.TimeColumn is not null && index is null)
            return null;
        index ??= Indexes(RecordingSignal.Time).OrderBy(c => shape.Kinds[c] == CellKind.Number ? 0 : 1).Cast<int?>().FirstOrDefault();
        index ??= Enumerable.Range(0, shape.Columns).Where(c => shape.Kinds[c] == CellKind.Stamp).Cast<int?>().FirstOrDefault();
        if (index is null && _header is null)
            index = Enumerable.Range(0, shape.Columns).Where(c => shape.Kinds[c] == CellKind.Number && Rises(c)).Cast<int?>().FirstOrDefault();
        var rate = options.RowsPerSecond ?? (index is null ? HeadNames.Rate(head, shape) : null);
        if (rate is { } rows && (index is null || options.TimeColumn is null))
        {
            notes.Add(new(RecordingNoteKind.TimeFromRate, Text($"time is counted from the rows, {rows:0.###} a second as {(options.RowsPerSecond is null ? "the lines above say" : "stated")}")));
            return new(-1, null) { StepSeconds = 1 / rows };
        }

        if (index is not { } at)
        {
            mistakes.Add(Top, 1, 0, RecordingCodes.NoTimeColumn, $"no column is named as time; there is {Listed()}", "name it time_s, say which column it is, or state the rows per second");
            return null;
        }

        if (shape.Kinds[at] == CellKind.Date && at + 1 < shape.Columns && shape.Kinds[at + 1] == CellKind.Stamp)
            at++;
        if (shape.Kinds[at] == CellKind.Stamp)
            return new(at, null, IsFraction(at) ? at + 1 : -1);
        return (options.TimeUnit ?? (_header?.Names[at].Unit is { Unit: { Dimension: Dimension.Time } named } ? named : null) ?? Guessed(at)) is { } unit ? new(at, unit) : null;
    }

    private bool IsFraction(int stamp) =>
        shape.Separator == ',' && stamp + 1 < shape.Columns && shape.Kinds[stamp + 1] == CellKind.Number && _header is { } header && header.Names[stamp + 1].Text.Length == 0;

    /// <summary>The unit of time in which rows come 80 to 25,000 times a second: at most one does.</summary>
    private Unit? Guessed(int column)
    {
        var values = Values(column);
        var rate = (values.Count - 1) / (values[^1] - values[0]);
        foreach (var unit in new[] { RecordingUnits.Seconds, RecordingUnits.Milliseconds, RecordingUnits.Microseconds })
        {
            if (rate / unit.Factor is not (>= 80 and <= 25_000))
                continue;
            notes.Add(new(RecordingNoteKind.UnitAssumed, Text($"time has no unit; in {unit.Symbol} there are {rate / unit.Factor:#,0} rows a second, so {unit.Symbol} was taken"), Top.Number));
            return unit;
        }

        mistakes.Add(Top, 1, 0, RecordingCodes.MissingUnit, "time has no unit, and in none of s, ms and µs do rows come 80 to 25,000 times a second", "write the unit into the header, such as time_s, or state it");
        return null;
    }

    private SignalColumn? Chosen(RecordingSignal signal, string? stated, Unit? statedUnit, SensorScale? scale, TimeColumn? time)
    {
        var word = signal == RecordingSignal.Pressure ? "pressure" : "current";
        List<int> candidates = stated is not null
            ? Named(stated, word) is { } one ? [one] : []
            : [.. Indexes(signal).Where(c => c != time?.Index && shape.Kinds[c] is CellKind.Number or CellKind.Empty)];
        if (candidates.Count > 1)
        {
            Question ??= new(signal, [.. candidates.Select(c => Showable.Short(_header!.Value.Names[c].Text))]);
            return null;
        }

        if (candidates.Count == 0)
            return null;
        var index = candidates[0];
        var name = _header?.Names[index] ?? new ColumnName($"column {index + 1}", null, null, "");
        var wanted = signal == RecordingSignal.Pressure ? Dimension.Pressure : Dimension.Current;
        var unit = statedUnit is { } u ? new WrittenUnit(u, Absolute: false) : name.Unit;
        if (scale is null && (unit is null || unit.Value.Unit.Dimension != wanted) && HeadScale.Find(head, shape.FirstRow, wanted) is { } above)
        {
            scale = above.Scale;
            unit ??= name.UnitText.Length > 0 ? new WrittenUnit(above.Signal, Absolute: false) : null;
            notes.Add(new(RecordingNoteKind.Converted, $"the scale of '{Showable.Short(name.Text)}' was taken from line {above.Line}", above.Line));
        }

        if (unit is null && name.UnitText.Length > 0 && scale is null)
        {
            mistakes.Add(Top, new Field("", Math.Max(1, Top.Text.IndexOf(name.Text, StringComparison.Ordinal) + 1), Math.Max(1, name.Text.Length), Quoted: false), RecordingCodes.UnknownUnit,
                $"'{Showable.Short(name.UnitText)}' is no unit of a {word} that is read here", signal == RecordingSignal.Pressure ? "write bar, MPa, kPa, psi or Pa, or V or mA with a scale" : "write A or mA, or V with a scale");
            return null;
        }

        var isSensor = unit is { Unit.Dimension: var dimension } && dimension != wanted;
        if (isSensor && scale is null)
        {
            mistakes.Add(Top, new Field("", Math.Max(1, Top.Text.IndexOf(name.Text, StringComparison.Ordinal) + 1), Math.Max(1, name.Text.Length), Quoted: false), RecordingCodes.SensorNeedsScale,
                $"'{Showable.Short(name.Text)}' is what a sensor gives, in {unit!.Value.Unit.Symbol}, and no scale says what {word} that is", "state the scale, such as 100 bar/V or 4 mA = 0 bar, 20 mA = 1000 bar");
            return null;
        }

        if (!isSensor && scale is not null && unit is not null)
        {
            notes.Add(new(RecordingNoteKind.Converted, $"the scale that was stated is left out: '{Showable.Short(name.Text)}' is a {word} already", Top.Number));
            scale = null;
        }

        if (scale is not null && unit is null)
        {
            unit = new(scale.Signal == Dimension.Voltage ? UnitTable.Find("V")! : RecordingUnits.Milliampere, Absolute: false);
            notes.Add(new(RecordingNoteKind.UnitAssumed, $"'{Showable.Short(name.Text)}' has no unit; {unit.Value.Unit.Symbol} was taken, which the scale is for", Top.Number));
        }

        if (name.Unit is { } header && statedUnit is not null && header.Unit != statedUnit)
            notes.Add(new(RecordingNoteKind.Converted, $"'{Showable.Short(name.Text)}' is read in {statedUnit.Symbol} as stated, not in {header.Unit.Symbol} as its header says", Top.Number));
        return new(index, name.Text, unit, scale);
    }

    private IEnumerable<int> Indexes(RecordingSignal signal) => _header is { } header ? Enumerable.Range(0, shape.Columns).Where(c => header.Names[c].Signal == signal) : [];

    /// <summary>A column by its name, its name without unit, or its number; null with a mistake added.</summary>
    private int? Named(string stated, string word)
    {
        if (int.TryParse(stated, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= shape.Columns)
            return number - 1;
        if (_header is { } header)
        {
            var exact = Array.FindIndex(header.Names, n => n.Text.Equals(stated.Trim(), StringComparison.OrdinalIgnoreCase));
            if (exact < 0)
                exact = Array.FindIndex(header.Names, n => n.Text.StartsWith(stated.Trim(), StringComparison.OrdinalIgnoreCase));
            if (exact >= 0)
                return exact;
        }

        var near = _header is { } names ? NearName.Find(stated, names.Names.Select(n => n.Text)) : null;
        mistakes.Add(Top, 1, 0, RecordingCodes.NoSuchColumn, $"no column is called '{Showable.Short(stated)}'; there is {Listed()}", near is null ? $"name the column of {word} as the header does, or by its number from 1" : $"write {near}");
        return null;
    }

    private bool Rises(int column)
    {
        var values = Values(column);
        for (var i = 1; i < values.Count; i++)
        {
            if (values[i] < values[i - 1])
                return false;
        }

        return values.Count >= 2 && values[^1] > values[0];
    }

    private List<double> Values(int column)
    {
        Span<Range> cells = stackalloc Range[Cells.Most];
        var values = new List<double>();
        foreach (var line in head.Skip(shape.FirstRow))
        {
            if (Cells.Cut(line.Text, shape.Separator, cells) > column && Cells.TryNumber(line.Text.AsSpan(cells[column]), shape.Decimal, out var value))
                values.Add(value);
        }

        return values.Count > 0 ? values : [0];
    }

    private void NoteIgnored(TimeColumn time, SignalColumn? pressure, SignalColumn? current)
    {
        if (_header is not { } header)
            return;
        var ignored = Enumerable.Range(0, shape.Columns)
            .Where(c => c != time.Index && c != time.Fraction && c != pressure?.Index && c != current?.Index && shape.Kinds[c] != CellKind.Date && header.Names[c].Text.Length > 0)
            .Select(c => $"'{Showable.Short(header.Names[c].Text)}'").ToList();
        if (ignored.Count > 0)
            notes.Add(new(RecordingNoteKind.ColumnsIgnored, $"not read: {string.Join(", ", ignored.Take(8))}{(ignored.Count > 8 ? $" and {ignored.Count - 8} more" : "")}", header.Line.Number));
    }

    private string Listed() => _header is { } header
        ? string.Join(", ", header.Names.Take(8).Select(n => $"'{Showable.Short(n.Text)}'"))
        : $"no header, and {shape.Columns} {(shape.Columns == 1 ? "column" : "columns")}";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
