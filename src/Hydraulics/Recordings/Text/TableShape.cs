using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>How the rows of a file are written.</summary>
/// <param name="Separator">Null: one column.</param>
/// <param name="Columns">Cells in a row, at least one.</param>
/// <param name="FirstRow">Index in the head of the first row.</param>
internal sealed record TableShape(char? Separator, DecimalMark Decimal, int Columns, int FirstRow)
{
    /// <summary>What the cells of the first row look like.</summary>
    public required CellKind[] Kinds { get; init; }

    /// <summary>Whether the decimal mark could be taken from the text in one way only, or was stated.</summary>
    public bool DecimalIsSure { get; init; }

    private static readonly char?[] s_separators = ['\t', ';', '|', ' ', ',', null];

    /// <summary>Finds the shape in the first lines of a file; null where no line looks like a row.</summary>
    public static TableShape? Find(IReadOnlyList<TextLine> head, RecordingOptions options)
    {
        TableShape? best = null;
        var most = 0;
        foreach (var separator in options.Separator is { } stated ? [stated] : s_separators)
        {
            var (shape, rows) = With(separator, head, options);
            if (shape is null || rows <= (separator is null ? most * 1.5 : most * 1.2) || (best is not null && shape.Columns < 2))
                continue;
            (best, most) = (shape, rows);
        }

        return best;
    }

    /// <summary>The shape with a separator, and how many lines of the head are rows of it.</summary>
    private static (TableShape? Shape, int Rows) With(char? separator, IReadOnlyList<TextLine> head, RecordingOptions options)
    {
        Span<Range> cells = stackalloc Range[Cells.Most];
        var rowsOf = new Dictionary<int, (int Rows, int First)>();
        for (var i = 0; i < head.Count; i++)
        {
            if (head[i].IsEmpty || Width(head[i].Text, separator, cells) is not (> 0 and var width))
                continue;
            var (rows, first) = rowsOf.GetValueOrDefault(width, (0, i));
            rowsOf[width] = (rows + 1, first);
        }

        if (rowsOf.Count == 0)
            return (null, 0);
        var columns = rowsOf.MaxBy(w => w.Value.Rows).Key;
        if (columns < 2 && separator is not null)
            return (null, 0);
        var start = rowsOf[columns].First;
        var (mark, sure) = MarkOf(head, start, separator, options);
        return (new(separator, mark, columns, start) { Kinds = KindsOf(head[start].Text, separator, cells), DecimalIsSure = sure }, rowsOf[columns].Rows);
    }

    /// <summary>Cells of a line that could be a row: one number or time at least, no fewer than words; 0 for another line. Empty cells at the end do not count.</summary>
    private static int Width(string line, char? separator, Span<Range> cells)
    {
        var count = Cells.Cut(line, separator, cells);
        while (count > 1 && cells[count - 1].Start.Value >= cells[count - 1].End.Value)
            count--;
        var (numbers, words) = (0, 0);
        for (var i = 0; i < count; i++)
        {
            var kind = Cells.KindOf(line.AsSpan(cells[i]));
            numbers += kind is CellKind.Number or CellKind.Stamp ? 1 : 0;
            words += kind == CellKind.Word ? 1 : 0;
        }

        return numbers > 0 && words <= Math.Min(numbers, count / 3) ? count : 0;
    }

    private static CellKind[] KindsOf(string line, char? separator, Span<Range> cells)
    {
        var kinds = new CellKind[Cells.Cut(line, separator, cells)];
        for (var i = 0; i < kinds.Length; i++)
            kinds[i] = Cells.KindOf(line.AsSpan(cells[i]));
        return kinds;
    }

    /// <summary>The mark before decimals: with two marks in a number the last; else one that cannot stand between thousands.</summary>
    private static (DecimalMark Mark, bool Sure) MarkOf(IReadOnlyList<TextLine> head, int start, char? separator, RecordingOptions options)
    {
        if (options.Decimal is { } stated)
            return (stated, true);
        if (separator == ',')
            return (DecimalMark.Point, true);
        Span<Range> cells = stackalloc Range[Cells.Most];
        DecimalMark? seen = null;
        for (var i = start; i < head.Count; i++)
        {
            var line = head[i].Text.AsSpan();
            var count = Cells.Cut(line, separator, cells);
            for (var c = 0; c < count; c++)
            {
                var cell = line[cells[c]];
                var last = cell.LastIndexOfAny('.', ',');
                if (last < 0 || Cells.KindOf(cell) != CellKind.Number)
                    continue;
                var mark = cell[last] == ',' ? DecimalMark.Comma : DecimalMark.Point;
                var other = cell[last] == ',' ? '.' : ',';
                if (cell[..last].Contains(other) || cell.Length - last - 1 != 3 || cell.TrimStart("+-\u2212")[0] == '0')
                    return cell[..last].Contains(cell[last]) ? (mark == DecimalMark.Comma ? DecimalMark.Point : DecimalMark.Comma, true) : (mark, true);
                seen ??= mark;
            }
        }

        return (seen ?? DecimalMark.Point, seen is null);
    }
}
