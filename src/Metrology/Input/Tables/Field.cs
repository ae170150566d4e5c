using System.Text;

namespace Ramwright.Metrology.Input.Tables;

/// <summary>One field of a line: its text without blanks and quotes, and where it stands (1-based column, length one or more).</summary>
public readonly record struct Field(string Text, int Column, int Length, bool Quoted);

/// <summary>Cuts a line into fields.</summary>
public static class Fields
{
    /// <summary>Cuts at a separator outside double quotes; without a separator the line is one field. Empty fields at the end are dropped.</summary>
    /// <param name="openQuote">1-based column of a quote that is never closed, else 0.</param>
    /// <remarks>Quoting as in RFC 4180, section 2, but within one line.</remarks>
    public static List<Field> Cut(string line, char? separator, out int openQuote)
    {
        openQuote = 0;
        var fields = new List<Field>();
        var start = 0;
        while (start <= line.Length)
        {
            var end = EndOfField(line, start, separator, ref openQuote);
            fields.Add(Take(line, start, end));
            start = end + 1;
        }
        while (fields.Count > 1 && fields[^1] is { Text.Length: 0, Quoted: false })
            fields.RemoveAt(fields.Count - 1);
        return fields;
    }

    private static int EndOfField(string line, int start, char? separator, ref int openQuote)
    {
        var at = start;
        while (at < line.Length && line[at] != separator && char.IsWhiteSpace(line[at]))
            at++;
        if (at < line.Length && line[at] == '"')
        {
            var quote = at++;
            while (at < line.Length && (line[at] != '"' || (at + 1 < line.Length && line[at + 1] == '"')))
                at += line[at] == '"' ? 2 : 1;
            if (at >= line.Length)
                openQuote = quote + 1;
        }
        while (at < line.Length && line[at] != separator)
            at++;
        return Math.Min(at, line.Length);
    }

    private static Field Take(string line, int start, int end)
    {
        while (start < end && char.IsWhiteSpace(line[start]))
            start++;
        while (end > start && char.IsWhiteSpace(line[end - 1]))
            end--;
        var length = Math.Max(1, end - start);
        if (end - start >= 2 && line[start] == '"' && line[end - 1] == '"')
            return new(Unquoted(line.AsSpan(start + 1, end - start - 2)), start + 1, length, Quoted: true);
        return new(line[start..end], start + 1, length, Quoted: false);
    }

    private static string Unquoted(ReadOnlySpan<char> inside) => new StringBuilder().Append(inside).Replace("\"\"", "\"").ToString().Trim();
}
