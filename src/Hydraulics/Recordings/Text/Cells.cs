using System.Globalization;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>What a cell looks like.</summary>
internal enum CellKind { Empty, Number, Stamp, Date, Word }

/// <summary>Cuts lines into cells and reads numbers in them, without allocating.</summary>
internal static class Cells
{
    /// <summary>Most columns looked at.</summary>
    public const int Most = 128;

    private static readonly double[] s_tens = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22];

    /// <summary>Cuts a line; blanks around a cell and quotes are left out of its range. A blank as separator stands for any run of blanks; null gives one cell.</summary>
    /// <returns>The number of cells, at most <see cref="Most"/>.</returns>
    public static int Cut(ReadOnlySpan<char> line, char? separator, Span<Range> cells)
    {
        var (count, start) = (0, 0);
        while (start <= line.Length && count < cells.Length)
        {
            while (start < line.Length && line[start] != separator && char.IsWhiteSpace(line[start]) || (separator == ' ' && start < line.Length && line[start] is ' ' or '\t'))
                start++;
            if (separator == ' ' && start >= line.Length && count > 0)
                break;
            int end, next;
            if (start < line.Length && line[start] == '"' && line[(start + 1)..].IndexOf('"') is >= 0 and var quoted)
            {
                (start, end) = (start + 1, start + 1 + quoted);
                next = end + 1 + EndOf(line[(end + 1)..], separator);
            }
            else
            {
                end = start + EndOf(line[start..], separator);
                next = end;
            }

            while (end > start && char.IsWhiteSpace(line[end - 1]))
                end--;
            cells[count++] = start..end;
            start = next + 1;
        }

        return count;
    }

    private static int EndOf(ReadOnlySpan<char> rest, char? separator)
    {
        var at = separator is not { } mark ? -1 : mark == ' ' ? rest.IndexOfAny(' ', '\t') : rest.IndexOf(mark);
        return at < 0 ? rest.Length : at;
    }

    /// <summary>A finite number with one decimal mark, and the other mark, an apostrophe or a thin blank between groups of three.</summary>
    public static bool TryNumber(ReadOnlySpan<char> cell, DecimalMark mark, out double value)
    {
        var point = mark == DecimalMark.Comma ? ',' : '.';
        var (digits, at, places, mantissa) = (0, 0, -1, 0L);
        var negative = cell is ['-' or '\u2212', ..];
        if (negative || cell is ['+', ..])
            at = 1;
        for (; at < cell.Length; at++)
        {
            var sign = cell[at];
            if (char.IsAsciiDigit(sign) && digits < 18)
            {
                mantissa = (10 * mantissa) + (sign - '0');
                digits++;
                places += places >= 0 ? 1 : 0;
            }
            else if (sign == point && places < 0)
            {
                places = 0;
            }
            else
            {
                return TrySlow(cell, point, out value);
            }
        }

        if (digits == 0 || mantissa > 1L << 53 || cell[^1] == ',')
            return TrySlow(cell, point, out value);
        value = (negative ? -mantissa : mantissa) / s_tens[Math.Max(places, 0)]; // both exact: rounded once (Clinger, 1990)
        return true;
    }

    /// <summary>Exponents, long numbers and thousands set apart.</summary>
    private static bool TrySlow(ReadOnlySpan<char> cell, char point, out double value)
    {
        value = double.NaN;
        if (cell.Length is 0 or > 40 || cell[^1] == ',') // "1, 2": the comma stands between cells
            return false;
        Span<char> plain = stackalloc char[40];
        var (length, since, group) = (0, -1, '\0'); // digits since the last mark between thousands
        var decimals = false;
        foreach (var sign in cell)
        {
            if (sign == point && !decimals)
            {
                if (since is >= 0 and not 3)
                    return false;
                (decimals, since) = (true, -1);
                plain[length++] = '.';
            }
            else if (sign is '.' or ',' or '\'' or '\u2019' or ' ' or '\u00a0' or '\u2009' or '\u202f')
            {
                if (decimals || length == 0 || (group != '\0' && (sign != group || since != 3)) || (group == '\0' && length > 4))
                    return false;
                (group, since) = (sign, 0);
            }
            else
            {
                since += since >= 0 && char.IsAsciiDigit(sign) ? 1 : 0;
                plain[length++] = sign == '\u2212' ? '-' : sign;
            }
        }

        return (since < 0 || since == 3)
            && double.TryParse(plain[..length], NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out value)
            && double.IsFinite(value);
    }

    /// <summary>Whether a cell is a number by either mark, a time of day, a date, or something else.</summary>
    public static CellKind KindOf(ReadOnlySpan<char> cell)
    {
        if (cell.IsEmpty)
            return CellKind.Empty;
        if (TryNumber(cell, DecimalMark.Point, out _) || TryNumber(cell, DecimalMark.Comma, out _))
            return CellKind.Number;
        if (ClockStamp.TrySeconds(cell, out _))
            return CellKind.Stamp;
        return ClockStamp.IsDate(cell) ? CellKind.Date : NumberWords.IsNoNumber(cell.ToString()) ? CellKind.Empty : CellKind.Word;
    }
}
