using System.Globalization;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Instruments.Text;

/// <summary>How a file separates its columns, and which decimal mark is already settled by that (null: the first number with a mark settles it).</summary>
internal readonly record struct Dialect(char? Separator, DecimalMark? Decimal)
{
    /// <summary>Finds the dialect of the lines with content; null with a mistake added when two readings of the file are possible.</summary>
    /// <remarks>A tab or a semicolon outside quotes settles the columns. With commas alone the header, an asked decimal mark, or a point beside a comma must settle them.</remarks>
    public static Dialect? Find(IReadOnlyList<TextLine> lines, bool hasHeader, DecimalMark? asked, MistakeList mistakes)
    {
        if (lines.Any(l => Outside(l.Text, '\t') > 0))
            return new('\t', asked);
        if (lines.Any(l => Outside(l.Text, ';') > 0))
            return new(';', asked);
        if (!lines.Any(l => Outside(l.Text, ',') > 0))
            return new(null, asked);

        var data = hasHeader ? [.. lines.Skip(1)] : lines;
        var headerCommas = hasHeader ? Outside(lines[0].Text, ',') : -1;
        return headerCommas > 0 ? WithCommaHeader(data, headerCommas, asked, mistakes)
            : asked is DecimalMark.Comma || (asked is not null && hasHeader) ? new(null, asked)
            : asked is DecimalMark.Point ? new(',', asked)
            : hasHeader ? WithOneColumnHeader(data, mistakes)
            : WithoutHeader(data, mistakes);
    }

    private static Dialect? WithCommaHeader(IReadOnlyList<TextLine> data, int headerCommas, DecimalMark? asked, MistakeList mistakes)
    {
        foreach (var line in data)
        {
            if (Outside(line.Text, ',') > headerCommas && IsDigitsAndCommas(line.Text))
                return Refuse(line, "commas stand between columns and, it seems, before decimals, so the columns cannot be told apart", mistakes);
        }
        return new(',', asked);
    }

    private static Dialect? WithOneColumnHeader(IReadOnlyList<TextLine> data, MistakeList mistakes)
    {
        var first = data.FirstOrDefault(l => Outside(l.Text, ',') > 0);
        if (data.Count >= 2 && data.All(l => Outside(l.Text, ',') > 0) && CountsUp(data))
            return Refuse(first, "the header names one column, but the part before the comma counts the lines: the comma could be a separator or a decimal mark", mistakes);
        return new(null, data.Any(l => l.Text.Contains('.', StringComparison.Ordinal)) ? null : DecimalMark.Comma);
    }

    private static Dialect? WithoutHeader(IReadOnlyList<TextLine> data, MistakeList mistakes)
    {
        var withComma = data.Where(l => Outside(l.Text, ',') > 0).ToList();
        var both = withComma.Exists(l => l.Text.Contains('.', StringComparison.Ordinal));
        if (!both && data.Any(l => l.Text.Contains('.', StringComparison.Ordinal)))
            return new(null, null); // comma here, point there: each number says which, and the odd ones are reported
        if (!both || (withComma.TrueForAll(l => LooksGrouped(l.Text)) && !(withComma.Count >= 2 && CountsUp(withComma))))
            return Refuse(withComma[0], both ? "the comma could separate the run from its peak or the thousands of one number" : "the comma could be a separator or a decimal mark", mistakes);
        return new(',', DecimalMark.Point);
    }

    private static Dialect? Refuse(TextLine line, string what, MistakeList mistakes)
    {
        var column = line.Text.IndexOf(',', StringComparison.Ordinal) + 1;
        mistakes.Add(line, column, 1, ReadingCodes.AmbiguousSeparator, what,
            "separate the columns with ; or a tab, or write a header such as run;peak_bar, or say which decimal mark the file has");
        return null;
    }

    /// <summary>How often a sign stands in a line outside double quotes and not at its end.</summary>
    private static int Outside(string line, char sign)
    {
        var (count, quoted, end) = (0, false, line.Length);
        while (end > 0 && (line[end - 1] == sign || char.IsWhiteSpace(line[end - 1])))
            end--;
        for (var i = 0; i < end; i++)
        {
            quoted ^= line[i] == '"';
            count += line[i] == sign && !quoted ? 1 : 0;
        }
        return count;
    }

    private static bool IsDigitsAndCommas(string line) => line.All(c => char.IsAsciiDigit(c) || c is ',' or '+' or '-' || char.IsWhiteSpace(c));

    private static bool CountsUp(IReadOnlyList<TextLine> lines)
    {
        int? before = null;
        foreach (var line in lines)
        {
            var head = line.Text.AsSpan(0, Math.Max(0, line.Text.IndexOf(',', StringComparison.Ordinal)));
            if (!int.TryParse(head.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) || (before is { } b && number != b + 1))
                return false;
            before = number;
        }
        return true;
    }

    /// <summary>Whether a line reads as one number with its thousands set apart: <c>10,152.6</c>.</summary>
    private static bool LooksGrouped(string line)
    {
        var groups = line.Trim().Split('.')[0].Split(',');
        return line.Count(c => c == '.') <= 1 && groups.Length >= 2 && groups[0].Length is >= 1 and <= 3 && groups.Skip(1).All(g => g.Length == 3) && groups.All(g => g.All(char.IsAsciiDigit));
    }
}
