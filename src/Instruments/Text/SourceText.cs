using System.Text.Unicode;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Instruments.Text;

/// <summary>Turns a file's bytes into lines, or says why it cannot.</summary>
internal static class SourceText
{
    public const int MostLines = 20_000;
    public const int LongestLine = 2_000;

    /// <summary>The text of UTF-8 bytes; null with a mistake added when they are something else.</summary>
    public static string? Decode(ReadOnlySpan<byte> bytes, MistakeList mistakes)
    {
        const string Save = "save it as text in UTF-8 (in a spreadsheet: 'CSV UTF-8')";
        if (bytes.Length > Readings.LargestFileBytes)
        {
            mistakes.AddWhole(ReadingCodes.TooLarge, $"the file has {bytes.Length / 1e6:0.0} MB; {Readings.LargestFileBytes / 1e6:0} MB are the most that is read",
                "give a list with one peak per run; a recording over time belongs elsewhere");
            return null;
        }
        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..])
        {
            mistakes.AddWhole(ReadingCodes.NotText, "the file is written in UTF-16, two bytes for a sign", Save);
            return null;
        }
        if (bytes is [0xEF, 0xBB, 0xBF, ..])
            bytes = bytes[3..];
        var chars = new char[bytes.Length];
        var status = Utf8.ToUtf16(bytes, chars, out var consumed, out var written, replaceInvalidSequences: false);
        var text = new string(chars, 0, written);
        if (status == System.Buffers.OperationStatus.Done)
            return text;
        var line = LastLine(text);
        mistakes.Add(line, line.Text.Length + 1, 1, ReadingCodes.NotText, $"the byte {bytes[consumed]:X2} here is no UTF-8", Save);
        return null;
    }

    /// <summary>The lines of a text; null with a mistake added when it is too long or no text.</summary>
    public static List<TextLine>? Lines(string text, MistakeList mistakes)
    {
        if (text.Length > Readings.LargestFileBytes)
        {
            mistakes.AddWhole(ReadingCodes.TooLarge, $"the text has {text.Length / 1e6:0.0} million signs; {Readings.LargestFileBytes / 1e6:0} million are the most that is read",
                "give a list with one peak per run; a recording over time belongs elsewhere");
            return null;
        }
        var lines = new List<TextLine>();
        var start = text is ['\uFEFF', ..] ? 1 : 0;
        while (start <= text.Length)
        {
            var (range, next) = NextLine(text, start);
            var raw = text.AsSpan(range);
            var line = new TextLine(lines.Count + 1, raw.Length > LongestLine ? raw[..80].ToString() : raw.ToString());
            if (lines.Count >= MostLines)
            {
                mistakes.Add(line, 1, 0, ReadingCodes.TooManyLines, $"the file has more than {MostLines} lines", "give a list with one peak per run; a recording over time belongs elsewhere");
                return null;
            }
            if (raw.Length > LongestLine)
                mistakes.Add(line, 1, 0, ReadingCodes.LineTooLong, $"the line has {raw.Length} signs; {LongestLine} are the most that is read", "put each run on a line of its own");
            else if (FirstControl(raw) is var control and >= 0)
                mistakes.Add(line, control + 1, 1, ReadingCodes.NotText, $"the sign U+{(int)raw[control]:X4} here belongs in no text", "save the file as plain text in UTF-8; a spreadsheet's own format is not read");
            lines.Add(line);
            start = next;
        }
        return mistakes.IsEmpty ? lines : null;
    }

    private static int FirstControl(ReadOnlySpan<char> line)
    {
        for (var i = 0; i < line.Length; i++)
        {
            if (line[i] < ' ' && line[i] is not '\t')
                return i;
        }
        return -1;
    }

    /// <summary>The line that starts at a place, and where the next one starts; a line ends at LF, CR LF or CR.</summary>
    private static (Range Line, int Next) NextLine(string text, int start)
    {
        var length = text.AsSpan(start).IndexOfAny('\r', '\n');
        if (length < 0)
            return (start..text.Length, text.Length + 1);
        var end = start + length;
        return (start..end, end + (text.AsSpan(end).StartsWith("\r\n", StringComparison.Ordinal) ? 2 : 1));
    }

    private static TextLine LastLine(string text)
    {
        var (number, start) = (0, 0);
        while (true)
        {
            var (line, next) = NextLine(text, start);
            number++;
            if (next > text.Length)
                return new(number, text[line] is { Length: > LongestLine } longLine ? longLine[..80] : text[line]);
            start = next;
        }
    }
}
