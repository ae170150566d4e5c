using System.Globalization;
using Ramwright.Metrology.Input;

namespace Ramwright.Diagnosis.Networks;

/// <summary>A word or sign of a BIF text and where it stands; an empty word is the end.</summary>
internal readonly record struct BifWord(string Text, Place At)
{
    public bool IsEnd => Text.Length == 0;

    public bool Is(string sign) => string.Equals(Text, sign, StringComparison.Ordinal);

    public bool TryNumber(out double value) => double.TryParse(Text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
}

/// <summary>Cuts a BIF text into words: names, numbers, and the signs <c>{ } ( ) [ ] | , ;</c>; blanks and comments part them.</summary>
internal static class BifText
{
    private const string Signs = "{}()[]|,;";

    public static List<BifWord> Words(string text, string file)
    {
        var words = new List<BifWord>();
        var (line, start) = (1, 0);
        for (var i = 0; i < text.Length;)
        {
            var c = text[i];
            if (c == '\n')
            {
                i++;
                (line, start) = (line + 1, i);
            }
            else if (char.IsWhiteSpace(c))
            {
                i++;
            }
            else if (c == '/' && i + 1 < text.Length && text[i + 1] is '/' or '*')
            {
                var end = text[i + 1] == '/' ? text.IndexOf('\n', i) : EndOf(text.IndexOf("*/", i + 2, StringComparison.Ordinal), 2);
                end = end < 0 ? text.Length : end;
                for (; i < end; i++)
                {
                    if (text[i] == '\n')
                        (line, start) = (line + 1, i + 1);
                }
            }
            else
            {
                var length = Length(text, i);
                words.Add(new(text.Substring(i, length), new(file, line, i - start + 1, length)));
                i += length;
            }
        }

        words.Add(new("", new(file, line, Math.Max(1, text.Length - start + 1), 0)));
        return words;
    }

    private static int EndOf(int found, int length) => found < 0 ? -1 : found + length;

    private static int Length(string text, int from)
    {
        if (Signs.Contains(text[from], StringComparison.Ordinal))
            return 1;
        if (text[from] == '"')
        {
            var close = text.AsSpan(from + 1).IndexOfAny('"', '\n');
            return close < 0 ? text.Length - from : close + (text[from + 1 + close] == '"' ? 2 : 1);
        }

        var i = from;
        while (i < text.Length && !char.IsWhiteSpace(text[i]) && !Signs.Contains(text[i], StringComparison.Ordinal))
            i++;
        return i - from;
    }
}
