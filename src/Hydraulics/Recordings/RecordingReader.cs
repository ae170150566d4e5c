using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using Ramwright.Hydraulics.Recordings.Text;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Hydraulics.Recordings;

/// <summary>Reads a recording as loggers write it, in bounded memory. Never throws on what is in the text.</summary>
public static class RecordingReader
{
    private const int HeadLines = 1_000;

    /// <summary>Reads a recording from its text.</summary>
    /// <param name="fileName">For the places of mistakes only; nothing is opened.</param>
    public static RecordingAnswer Read(string fileName, string text, RecordingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        using var bytes = new MemoryStream(Encoding.UTF8.GetBytes(text));
        return Read(fileName, bytes, options);
    }

    /// <summary>Reads a recording from its bytes, to the end or until it is clear that it cannot be taken.</summary>
    /// <param name="fileName">For the places of mistakes only; nothing is opened.</param>
    /// <param name="bytes">Read forward only, once.</param>
    /// <exception cref="ArgumentOutOfRangeException">A caller's bug: an option out of its range.</exception>
    public static RecordingAnswer Read(string fileName, Stream bytes, RecordingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        options ??= new();
        Check(options);
        var mistakes = new MistakeList(fileName);
        var notes = new List<RecordingNote>();
        var lines = new ByteLines(bytes);
        if (lines.Form is TextForm.NoText or TextForm.Packed)
        {
            mistakes.AddWhole(RecordingCodes.NotText, lines.Form == TextForm.Packed ? "the file is packed: a spreadsheet or an archive, no text" : "the file holds bytes that belong in no text", "save or export it as text with separated columns (CSV)");
            return Refused(mistakes);
        }

        var head = new List<TextLine>();
        var unended = false;
        while (head.Count < HeadLines && lines.Next(out var line))
        {
            unended = lines.IsUnended;
            head.Add(new(lines.Number, line.ToString()));
        }

        if (lines.IsTooLong)
            return TooLong(head[^1], mistakes);
        if (TableShape.Find(head, options) is not { } shape)
        {
            mistakes.AddWhole(RecordingCodes.NoRow, head.TrueForAll(l => l.IsEmpty) ? "there is nothing in this file" : "no line of this file looks like a row of numbers", "write one row for each moment, such as 0.001;12.5;31.2, under a header such as time_s;pressure_bar;current_A");
            return Refused(mistakes);
        }

        var finder = new ColumnFinder(head, shape, options, mistakes, notes);
        if (finder.Find() is not { } columns)
            return finder.Question is { } question ? question : Refused(mistakes);
        var rows = new RowReader(shape, columns, mistakes, options.MostRows);
        return Rows(head, unended, lines, shape, rows, mistakes) ? Finish(lines, shape, columns, rows, options, mistakes, notes) : Refused(mistakes);
    }

    /// <summary>Reads all rows; false with a mistake added when there is no recording in them.</summary>
    private static bool Rows(List<TextLine> head, bool unended, ByteLines lines, TableShape shape, RowReader rows, MistakeList mistakes)
    {
        var goOn = true;
        for (var i = shape.FirstRow; i < head.Count && goOn; i++)
            goOn = rows.Take(head[i].Text, head[i].Number, unended && i == head.Count - 1);
        while (goOn && lines.Next(out var line))
        {
            if (lines.IsTooLong)
            {
                TooLong(new(lines.Number, line.ToString()), mistakes);
                return false;
            }

            goOn = rows.Take(line, lines.Number, lines.IsUnended);
        }

        if (!mistakes.IsEmpty)
            return false;
        if (rows.Store.Count < 2)
            mistakes.AddWhole(RecordingCodes.NoRow, rows.Store.Count == 0 ? "no row of this file could be read" : "there is one row in this file; a recording has two at least", "give the recording of a whole stroke, with the standstill before it");
        else if (rows.Store.Seconds[^1] <= rows.Store.Seconds[0])
            mistakes.AddWhole(RecordingCodes.TimeStands, "all rows have the same time", "give a column of time that moves, or state the rows per second");
        return mistakes.IsEmpty;
    }

    private static RecordingAnswer Finish(ByteLines lines, TableShape shape, TableColumns columns, RowReader rows, RecordingOptions options, MistakeList mistakes, List<RecordingNote> notes)
    {
        var (seconds, first, second) = (rows.Store.Seconds.ToArray(), rows.Store.First.ToArray(), rows.Store.Second.ToArray());
        RowClock.Spread(seconds, notes);
        RowClock.Judge(seconds, notes);
        var (pressure, current) = (columns.Pressure, columns.Current);
        if (columns.ByShape)
        {
            if (SignalOrder.CurrentIsFirst(first, second))
                (pressure, current, first, second) = (current, pressure, second, first);
            notes.Insert(0, new(RecordingNoteKind.ColumnsAssumed, $"the file has no header; {pressure!.Name} was taken as pressure and {current!.Name} as current, since current rises first"));
        }

        if (pressure is not null && !SignalValues.ToPascals(first, pressure, options, mistakes, notes))
            return Refused(mistakes);
        if (current is not null)
            SignalValues.ToAmperes(second, current, options, notes);
        if (pressure is not null && ClippedTop.TakeOut(seconds, first, options.PressureFullScalePascals) is { } clipped)
            notes.Add(new(RecordingNoteKind.Clipped, Text($"pressure stands at {clipped.Limit / 1e5:0.##} bar in {clipped.Rows} rows, the end of the range; they count as missing")));
        if (current is not null && ClippedTop.TakeOut(seconds, second, null) is { } limited)
            notes.Add(new(RecordingNoteKind.Clipped, Text($"current stands at {limited.Limit:0.##} A in {limited.Rows} rows, the end of the range; they count as missing")));
        notes.AddRange(rows.Notes());
        if (pressure is null || current is null)
            notes.Add(new(RecordingNoteKind.SignalMissing, pressure is null ? "there is no pressure in this file" : "there is no current in this file"));
        if (!shape.DecimalIsSure)
            notes.Add(new(RecordingNoteKind.MarkAssumed, shape.Decimal == DecimalMark.Comma ? "a comma was taken as the mark before decimals" : "a point was taken as the mark before decimals", shape.FirstRow + 1));
        if (lines.OddBytes > 0)
            notes.Add(new(RecordingNoteKind.Encoding, lines.OddBytes == 1 ? "1 byte is no UTF-8 and was read as Latin-1" : $"{lines.OddBytes} bytes are no UTF-8 and were read as Latin-1"));
        if (lines.Form is TextForm.Utf16 or TextForm.Utf16BigEndian)
            notes.Add(new(RecordingNoteKind.Encoding, "the file is written in UTF-16"));
        return new RecordingAnswer.Taken(new(Array(seconds), pressure is null ? null : Array(first), current is null ? null : Array(second)), [.. notes]);
    }

    private static ImmutableArray<double> Array(double[] values) => ImmutableCollectionsMarshal.AsImmutableArray(values);

    private static RecordingAnswer.Refused TooLong(TextLine line, MistakeList mistakes)
    {
        mistakes.Add(line with { Text = line.Text[..80] }, 1, 0, RecordingCodes.LineTooLong, $"the line has more than {ByteLines.LongestLine} signs", "put each row on a line of its own");
        return Refused(mistakes);
    }

    private static RecordingAnswer.Refused Refused(MistakeList mistakes) => new(mistakes.InOrder());

    private static void Check(RecordingOptions options)
    {
        if (options.MostRows < 1_000)
            throw new ArgumentOutOfRangeException(nameof(options), options.MostRows, "1,000 rows are kept at least.");
        if (options.RowsPerSecond is { } rate and not (> 0 and < double.PositiveInfinity))
            throw new ArgumentOutOfRangeException(nameof(options), rate, "Rows per second are above 0.");
        if (!double.IsFinite(options.PressureZeroPascals) || !double.IsFinite(options.CurrentZeroAmperes))
            throw new ArgumentOutOfRangeException(nameof(options), options, "A sensor's zero is finite.");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
