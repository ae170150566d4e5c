using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>Reads rows one after the other into a store; passes over lines that are none.</summary>
internal sealed class RowReader(TableShape shape, TableColumns columns, MistakeList mistakes, int mostRows)
{
    private const int MostMistakes = 200;

    private int _passedOver, _firstPassedOver, _missing, _firstMissing, _mistakes;
    private double _start = double.NaN, _before = double.NegativeInfinity;
    private TextLine? _unended;

    public RowStore Store { get; } = new(mostRows);

    /// <summary>Number of rows in the file.</summary>
    public int Rows { get; private set; }

    /// <summary>Takes a line; false when nothing more is to be read.</summary>
    public bool Take(ReadOnlySpan<char> line, int number, bool isUnended)
    {
        Span<Range> cells = stackalloc Range[Cells.Most];
        if (line.TrimStart() is [] or ['#', ..])
            return true;
        if (line.ContainsAnyInRange('\0', '\b'))
            return PassOver(number);
        var count = Cells.Cut(line, shape.Separator, cells);
        var pressure = Signal(columns.Pressure?.Index, line, cells[..count], out var pressureIsBad);
        var current = Signal(columns.Current?.Index, line, cells[..count], out var currentIsBad);
        var holdsNothing = double.IsNaN(pressure) && double.IsNaN(current);
        if (!TrySeconds(line, cells[..count], out var seconds))
        {
            if (holdsNothing || columns.Time.Index >= count || !line[cells[columns.Time.Index]].ContainsAnyInRange('0', '9'))
                return PassOver(number);
            return isUnended || Bad(line, number, cells[columns.Time.Index], "time");
        }

        if (isUnended && (pressureIsBad || currentIsBad || count < shape.Columns))
        {
            _unended = new(number, line.ToString());
            return PassOver(number);
        }

        if (pressureIsBad && !Bad(line, number, cells[columns.Pressure!.Index], columns.Pressure.Name))
            return false;
        if (currentIsBad && !Bad(line, number, cells[columns.Current!.Index], columns.Current.Name))
            return false;
        if ((columns.Pressure is not null && double.IsNaN(pressure)) || (columns.Current is not null && double.IsNaN(current)))
        {
            _firstMissing = _missing == 0 ? number : _firstMissing;
            _missing++;
        }

        return Add(line, number, seconds, pressure, current);
    }

    private bool Add(ReadOnlySpan<char> line, int number, double seconds, double pressure, double current)
    {
        if (double.IsNaN(_start))
            _start = columns.Time.Unit is null || Math.Abs(seconds) > 1e5 ? seconds : 0;
        seconds -= _start;
        Rows++;
        if (seconds < _before)
        {
            var second = seconds < 1e-3 * _before;
            mistakes.Add(new(number, line.ToString()), 1, 0, RecordingCodes.TimeBackwards, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"time goes back here, from {_before:0.######} s to {seconds:0.######} s"),
                second ? "a second recording begins here: part the file before this line" : "write the rows in the order in which they were taken");
            _before = seconds;
            return ++_mistakes < MostMistakes && !second;
        }

        _before = seconds;
        if (Store.Add(seconds, pressure, current))
            return true;
        mistakes.Add(new(number, line.ToString()), 1, 0, RecordingCodes.RecordingTooLong, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"the recording goes on past {Store.Count:#,0} rows, {Store.Seconds[^1] - Store.Seconds[0]:0} s"),
            "cut the file to one stroke; the first line is the header, the rows before the stroke and after it may go");
        return false;
    }

    /// <summary>What was passed over and what is missing.</summary>
    public IEnumerable<RecordingNote> Notes()
    {
        if (_missing > 0)
            yield return new(RecordingNoteKind.CellsMissing, $"{(_missing == 1 ? "1 row lacks" : $"{_missing} rows lack")} pressure or current; they count as missing", _firstMissing);
        if (_passedOver > 0)
            yield return new(RecordingNoteKind.LinesPassedOver, $"{(_passedOver == 1 ? "1 line is no row and was" : $"{_passedOver} lines are no rows and were")} passed over{(_unended is null ? "" : "; the last row is cut off")}", _firstPassedOver);
        if (Store.Averaged > 1)
            yield return new(RecordingNoteKind.Thinned, $"{Rows} rows are more than are kept: each row kept is the mean of {Store.Averaged}, which takes a little off a sharp peak");
    }

    private bool PassOver(int number)
    {
        _firstPassedOver = _passedOver == 0 ? number : _firstPassedOver;
        _passedOver++;
        return true;
    }

    private bool Bad(ReadOnlySpan<char> line, int number, Range cell, string name)
    {
        var written = line[cell].ToString();
        mistakes.Add(new(number, line.ToString()), cell.Start.Value + 1, Math.Max(1, written.Length), RecordingCodes.BadNumber,
            $"{Showable.Short(name)} is '{Showable.Short(written)}', which is no number{(shape.Decimal == DecimalMark.Comma ? " with a decimal comma" : " with a decimal point")}", "write the number, or leave the cell empty where nothing was recorded");
        return ++_mistakes < MostMistakes;
    }

    private double Signal(int? column, ReadOnlySpan<char> line, ReadOnlySpan<Range> cells, out bool isBad)
    {
        isBad = false;
        if (column is not { } at || at >= cells.Length)
            return double.NaN;
        var cell = line[cells[at]];
        if (Cells.TryNumber(cell, shape.Decimal, out var value))
            return value;
        isBad = !cell.IsEmpty && !NumberWords.IsNoNumber(cell.ToString());
        return double.NaN;
    }

    private bool TrySeconds(ReadOnlySpan<char> line, ReadOnlySpan<Range> cells, out double seconds)
    {
        seconds = Rows * columns.Time.StepSeconds;
        if (columns.Time.Index < 0)
            return true;
        if (columns.Time.Index >= cells.Length)
            return false;
        var cell = line[cells[columns.Time.Index]];
        if (columns.Time.Unit is { } unit)
        {
            var read = Cells.TryNumber(cell, shape.Decimal, out var number);
            seconds = unit.ToSi(number);
            return read;
        }

        if (!ClockStamp.TrySeconds(cell, out seconds))
            return false;
        if (columns.Time.Fraction >= 0 && columns.Time.Fraction < cells.Length && Cells.TryNumber(line[cells[columns.Time.Fraction]], DecimalMark.Point, out var decimals))
            seconds += decimals / Math.Pow(10, line[cells[columns.Time.Fraction]].Length);
        seconds = double.IsNaN(_start) ? seconds : ClockStamp.ToGoOn(seconds, _before + _start);
        return true;
    }
}
