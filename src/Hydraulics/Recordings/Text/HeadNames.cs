using System.Text.RegularExpressions;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>What stands above the rows: names, units on a line of their own, a rate.</summary>
internal static partial class HeadNames
{
    private const int LinesLookedAt = 12;

    /// <summary>A name for each column and the line that they stand on; null where there is no header.</summary>
    public static (ColumnName[] Names, TextLine Line)? Find(IReadOnlyList<TextLine> head, TableShape shape)
    {
        (ColumnName[] Names, TextLine Line)? found = null;
        string[]? units = null;
        for (var i = shape.FirstRow - 1; i >= Math.Max(0, shape.FirstRow - LinesLookedAt); i--)
        {
            var cells = CellsOf(head[i].Text, shape.Separator, shape.Columns);
            if (Aligned(cells, shape) is not { } names)
                continue;
            if (units is null && found is null && IsUnits(names))
            {
                units = names;
                continue;
            }

            var columns = names.Select((n, c) => units is not null ? ColumnName.Of(n).WithUnit(units[c]) : ColumnName.Of(n)).ToArray();
            if (columns.Any(c => c.Signal is not null))
                return (columns, head[i]);
            if (names.Any(n => n.Any(char.IsLetter)))
                found ??= (columns, head[i]);
        }

        // A line of units alone names the columns as well: s;bar;A.
        return units is not null && found is null ? ([.. units.Select(ColumnName.Of)], head[shape.FirstRow - 1]) : found;
    }

    /// <summary>Rows per second that lines above the header state; null when they do not.</summary>
    public static double? Rate(IReadOnlyList<TextLine> head, TableShape shape)
    {
        for (var i = 0; i < shape.FirstRow; i++)
        {
            var match = RateLine().Match(head[i].Text);
            if (!match.Success || !Cells.TryNumber(match.Groups["number"].ValueSpan, match.Groups["number"].Value.Contains(',', StringComparison.Ordinal) ? DecimalMark.Comma : DecimalMark.Point, out var number) || number <= 0)
                continue;
            var unit = match.Groups["unit"].Value;
            var rate = match.Groups["rate"].Success
                ? number * (unit.StartsWith('k') || unit.StartsWith('K') ? 1e3 : 1)
                : RecordingUnits.Find(unit) is { Unit: { Dimension: Metrology.Input.Dimension.Time } time } ? 1 / time.ToSi(number) : double.NaN;
            if (rate is > 0.1 and < 1e7)
                return rate;
        }

        return null;
    }

    private static string[] CellsOf(string line, char? separator, int columns)
    {
        var text = line.TrimStart().TrimStart('#', '%', '/', ';').Trim();
        Span<Range> ranges = stackalloc Range[Cells.Most];
        var cells = Cut(text, separator, ranges);
        if (cells.Length == columns || separator is not ' ')
            return cells;
        var wide = WideBlank().Split(text); // names with blanks inside, set apart by more than one
        return wide.Length == columns ? wide : cells.Length > columns && Cut(text, ',', ranges) is { } commas && commas.Length == columns ? commas : Joined(cells);
    }

    private static string[] Cut(string text, char? separator, Span<Range> ranges)
    {
        var cells = new string[Cells.Cut(text, separator, ranges)];
        for (var i = 0; i < cells.Length; i++)
            cells[i] = text[ranges[i]];
        return cells;
    }

    /// <summary>Puts units in brackets back to the names before them: <c>time [s] pressure [bar]</c>.</summary>
    private static string[] Joined(string[] cells)
    {
        var joined = new List<string>();
        foreach (var cell in cells)
        {
            if (joined.Count > 0 && cell is ['[' or '(', ..])
                joined[^1] += " " + cell;
            else
                joined.Add(cell);
        }

        return [.. joined];
    }

    /// <summary>Names brought over the cells of a row: a date beside its time, or decimals behind the comma of a time stamp, have no name of their own.</summary>
    private static string[]? Aligned(string[] names, TableShape shape)
    {
        var length = names.Length;
        while (length > shape.Columns && names[length - 1].Length == 0)
            length--;
        if (length >= shape.Columns)
            return names[..shape.Columns];
        if (length != shape.Columns - 1)
            return null;
        for (var i = 0; i < shape.Columns - 1; i++)
        {
            if (shape.Kinds[i] == CellKind.Date && shape.Kinds[i + 1] == CellKind.Stamp)
                return [.. names[..i], "", .. names[i..]];
            if (shape.Separator == ',' && shape.Kinds[i] == CellKind.Stamp && shape.Kinds[i + 1] == CellKind.Number)
                return [.. names[..(i + 1)], "", .. names[(i + 1)..]];
        }

        return null;
    }

    private static bool IsUnits(string[] cells) =>
        cells.Any(c => RecordingUnits.Find(c) is not null) && cells.All(c => c.Length == 0 || RecordingUnits.Find(c) is not null || c is ['[' or '(', ..] or "-" or "°C" or "%" or "mm" or "kN" or "N" or "rpm");

    [GeneratedRegex(@"(?:(?<rate>(?:sampl\w*|scan|data|abtast)\w*[ _-]*(?:rate|freq\w*)|abtastrate|rate|frequency)|(?:sampl\w*|scan|time|abtast)\w*[ _-]*(?:interval|period|step|intervall)|interval|dt)\W{1,5}?(?<number>[0-9]+(?:[.,][0-9]+)?)[\s;,]*(?<unit>[A-Za-zµμ/]*)", RegexOptions.IgnoreCase, matchTimeoutMilliseconds: 100)]
    private static partial Regex RateLine();

    [GeneratedRegex(@"\s{2,}|\t", RegexOptions.None, matchTimeoutMilliseconds: 100)]
    private static partial Regex WideBlank();
}
