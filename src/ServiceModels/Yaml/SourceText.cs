using System.Text;
using System.Text.Unicode;
using Ramwright.Metrology.Input;

namespace Ramwright.ServiceModels.Yaml;

/// <summary>The text of a file, cut into lines for excerpts.</summary>
internal sealed class SourceText
{
    private SourceText(string file, string text)
    {
        File = file;
        Text = text;
        Lines = text.ReplaceLineEndings("\n").Split('\n');
    }

    public string File { get; }

    public string Text { get; }

    public string[] Lines { get; }

    /// <summary>The line by its number from 1; null past the end.</summary>
    public string? Line(int number) => number >= 1 && number <= Lines.Length ? Lines[number - 1] : null;

    /// <summary>Decodes UTF-8; bytes that are none and control characters are refused with their place.</summary>
    public static SourceDecoding Decode(string file, ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith(Encoding.UTF8.Preamble))
            bytes = bytes[3..];
        if (!Utf8.IsValid(bytes))
            return new SourceDecoding.NotText(BadBytes(file, bytes));
        var source = new SourceText(file, Encoding.UTF8.GetString(bytes));
        for (var i = 0; i < source.Text.Length; i++)
            if (IsForbidden(source.Text[i]))
                return new SourceDecoding.NotText(ForbiddenAt(source, i));
        return new SourceDecoding.Text(source);
    }

    /// <summary>Control characters other than tab and line ends, and the line separators that editors do not count alike.</summary>
    private static bool IsForbidden(char c) => c is not ('\t' or '\n' or '\r') && (char.IsControl(c) || c is '\u2028' or '\u2029' or '\uFEFF' or '\uFFFE' or '\uFFFF');

    private static Mistake BadBytes(string file, ReadOnlySpan<byte> bytes)
    {
        var text = new StringBuilder();
        var good = 0;
        while (good < bytes.Length && Rune.DecodeFromUtf8(bytes[good..], out _, out var used) == System.Buffers.OperationStatus.Done)
            good += used;
        text.Append(Encoding.UTF8.GetString(bytes[..good]).ReplaceLineEndings("\n"));
        var before = text.ToString();
        var line = before.AsSpan().Count('\n') + 1;
        var column = before.Length - before.LastIndexOf('\n');
        return new(new(file, line, column, 1), $"the byte {bytes[good]:x2} here is no UTF-8", "save the file as UTF-8", "not-text");
    }

    private static Mistake ForbiddenAt(SourceText source, int index)
    {
        var before = source.Text[..index].ReplaceLineEndings("\n");
        var line = before.AsSpan().Count('\n') + 1;
        return new(new(source.File, line, index == 0 ? 1 : before.Length - before.LastIndexOf('\n'), 1), $"a control character (U+{(int)source.Text[index]:X4}) stands here", "take it out; a model is plain text", "not-text")
        {
            Excerpt = source.Line(line),
        };
    }
}

/// <summary>The text, or why the bytes are none.</summary>
internal abstract record SourceDecoding
{
    private SourceDecoding() { }

    public sealed record Text(SourceText Source) : SourceDecoding;

    public sealed record NotText(Mistake Mistake) : SourceDecoding;
}
