using Ramwright.Metrology.Input;
using YamlDotNet.Core;

namespace Ramwright.ServiceModels.Yaml;

/// <summary>Puts a parser's complaint into words that say what to do.</summary>
internal static class SyntaxMistake
{
    public static void Report(string message, Mark start, SourceText source, MistakeList mistakes)
    {
        var line = Math.Clamp((int)start.Line, 1, source.Lines.Length);
        var text = source.Line(line) ?? "";
        if (TabIn(source, line) is { } tab)
        {
            mistakes.Add(tab, "a tab indents this line; YAML knows spaces only", "replace the tab by spaces, two for each level", "tab");
            return;
        }

        var column = Math.Clamp((int)start.Column, 1, text.Length + 1);
        mistakes.Add(new(source.File, line, column, 1), $"the file is no YAML from here on: {Reason(message)}", Mend(message, text), "yaml-syntax");
    }

    /// <summary>The first tab in the indentation of the line or of the two lines around it.</summary>
    private static Place? TabIn(SourceText source, int line)
    {
        for (var n = Math.Max(1, line - 2); n <= line + 2; n++)
        {
            var text = source.Line(n) ?? "";
            var indent = text.Length - text.TrimStart().Length;
            if (text.AsSpan(0, indent).IndexOf('\t') is >= 0 and var tab)
                return new(source.File, n, tab + 1, 1);
        }

        return null;
    }

    private static string Reason(string message)
    {
        var reason = message.Split('\n')[0].TrimEnd('.');
        var at = reason.IndexOf("): ", StringComparison.Ordinal); // the library puts its marks before the words
        reason = at >= 0 ? reason[(at + 3)..] : reason;
        return reason.Length == 0 ? "it cannot be taken apart" : char.ToLowerInvariant(reason[0]) + reason[1..];
    }

    private static string Mend(string message, string line) =>
        message.Contains("flow", StringComparison.OrdinalIgnoreCase) || line.AsSpan().IndexOfAny('{', '[') >= 0
            ? "see that every { and [ is closed and that commas stand between the entries; quote text that holds a comma or a colon"
            : "see that each key stands under the key beside it, with a colon and a space after it; quote text that holds a colon";
}
