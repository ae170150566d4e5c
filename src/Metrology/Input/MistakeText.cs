using System.Globalization;
using System.Text;

namespace Ramwright.Metrology.Input;

/// <summary>Mistakes as text: place, what, code; the line with carets under the fault; how to mend it; a count at the end.</summary>
public static class MistakeText
{
    private const int CodeColumn = 86;
    private const int WidestExcerpt = 120;

    /// <summary>All mistakes in the order given, and a closing line such as '3 mistakes in 2 files; nothing was loaded'.</summary>
    public static string Write(IReadOnlyCollection<Mistake> mistakes, string consequence = "nothing was loaded")
    {
        ArgumentNullException.ThrowIfNull(mistakes);
        var text = new StringBuilder();
        foreach (var mistake in mistakes)
            WriteOne(text, mistake);
        return text.Append(CountLine(mistakes)).Append("; ").Append(consequence).Append('\n').ToString();
    }

    /// <summary>One mistake without the count.</summary>
    public static string WriteOne(Mistake mistake)
    {
        var text = new StringBuilder();
        WriteOne(text, mistake);
        return text.ToString();
    }

    private static string CountLine(IReadOnlyCollection<Mistake> mistakes)
    {
        var files = mistakes.Select(m => m.At.File).Distinct(StringComparer.Ordinal).Count();
        var count = mistakes.Count == 1 ? "1 mistake" : string.Create(CultureInfo.InvariantCulture, $"{mistakes.Count} mistakes");
        return files == 1 ? $"{count} in 1 file" : string.Create(CultureInfo.InvariantCulture, $"{count} in {files} files");
    }

    private static void WriteOne(StringBuilder text, Mistake mistake)
    {
        var lines = mistake.What.Split('\n');
        var at = mistake.At;
        var head = at.Line > 0
            ? string.Create(CultureInfo.InvariantCulture, $"{at.File}:{at.Line}:{at.Column}: {lines[0]}")
            : $"{at.File}: {lines[0]}";
        text.Append(head.PadRight(CodeColumn)).Append(head.Length < CodeColumn ? "" : "  ").Append('[').Append(mistake.Code).Append("]\n");
        foreach (var line in lines.Skip(1))
            text.Append("    ").Append(line).Append('\n');
        if (mistake.Excerpt is { } excerpt && at.Line > 0)
            WriteExcerpt(text, excerpt, at);
        text.Append("    mend: ").Append(mistake.Mend).Append('\n');
    }

    private static void WriteExcerpt(StringBuilder text, string line, Place at)
    {
        var start = Math.Clamp(at.Column - 1, 0, line.Length);
        var from = line.Length <= WidestExcerpt ? 0 : Math.Clamp(start - 20, 0, line.Length - WidestExcerpt);
        var cut = line.AsSpan(from, Math.Min(WidestExcerpt, line.Length - from));
        start -= from;
        var room = Math.Max(1, cut.Length - start);
        var length = at.Length == 0 ? room : Math.Min(at.Length, room);
        var shown = new StringBuilder(cut.Length);
        foreach (var c in cut)
            shown.Append(c == '\t' ? ' ' : char.IsControl(c) ? '\u00b7' : c);
        var number = at.Line.ToString(CultureInfo.InvariantCulture);
        text.Append("    ").Append(number).Append(" | ").Append(shown).Append('\n');
        text.Append("    ").Append(' ', number.Length).Append(" | ").Append(' ', start).Append('^', length).Append('\n');
    }
}
