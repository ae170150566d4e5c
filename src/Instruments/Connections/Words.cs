using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Instruments.Connections;

/// <summary>A word of a connection text, or what stands between double quotes; a quote inside is written twice.</summary>
internal readonly record struct Word(TextLine Line, Field Field)
{
    public string Text => Field.Text;
}

/// <summary>Cuts a connection text into words.</summary>
internal static class Words
{
    public static List<Word> Cut(IReadOnlyList<TextLine> lines, MistakeList mistakes)
    {
        var words = new List<Word>();
        foreach (var line in lines.Where(l => !l.IsEmpty))
        {
            var at = 0;
            while (at < line.Text.Length)
            {
                if (char.IsWhiteSpace(line.Text[at]))
                    at++;
                else if (line.Text[at] == '"')
                    at = Quoted(line, at, words, mistakes);
                else
                    at = Plain(line, at, words);
            }
        }
        return words;
    }

    private static int Plain(TextLine line, int start, List<Word> words)
    {
        var end = start;
        while (end < line.Text.Length && !char.IsWhiteSpace(line.Text[end]))
            end++;
        words.Add(new(line, new(line.Text[start..end], start + 1, end - start, Quoted: false)));
        return end;
    }

    private static int Quoted(TextLine line, int start, List<Word> words, MistakeList mistakes)
    {
        var end = start + 1;
        while (end < line.Text.Length && (line.Text[end] != '"' || (end + 1 < line.Text.Length && line.Text[end + 1] == '"')))
            end += line.Text[end] == '"' ? 2 : 1;
        if (end >= line.Text.Length)
            mistakes.Add(line, start + 1, 1, ReadingCodes.OpenQuote, "a quote opens here and is not closed on this line", "close the quote");
        var inside = line.Text[(start + 1)..Math.Min(end, line.Text.Length)].Replace("\"\"", "\"", StringComparison.Ordinal);
        words.Add(new(line, new(inside, start + 1, Math.Min(end + 1, line.Text.Length) - start, Quoted: true)));
        return Math.Min(end + 1, line.Text.Length);
    }
}
