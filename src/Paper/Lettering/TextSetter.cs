using System.Collections.Immutable;
using System.Text;

namespace Ramwright.Paper.Lettering;

/// <summary>Words set at a place on their line, in points from its left.</summary>
public sealed record SetRun(double X, string Words, TextStyle Style);

/// <summary>A line of text that has been set.</summary>
public sealed record SetLine(ImmutableArray<SetRun> Runs, double Width, double Leading, double Size);

/// <summary>Breaks words into lines: at spaces, after hyphens and slashes, and inside a word only when it alone is too wide.</summary>
public static class TextSetter
{
    private static readonly System.Buffers.SearchValues<char> UnitEnds = System.Buffers.SearchValues.Create(" ,;.:)");

    private static readonly HashSet<string> Units = new(StringComparer.Ordinal)
    {
        "%", "bar", "psi", "N", "kN", "lbf", "N·m", "lbf·ft", "lbf·in", "mm", "in", "ml", "fl", "kg", "lb", "°C", "°F", "s", "ms", "min", "h", "l", "kHz", "Hz",
    };

    /// <param name="spans">What to set, in order.</param>
    /// <param name="width">Room in points; at least one sign stands on each line however narrow it is.</param>
    public static ImmutableArray<SetLine> Set(IEnumerable<Span> spans, double width)
    {
        ArgumentNullException.ThrowIfNull(spans);
        var setting = new Setting(width);
        foreach (var span in spans)
        {
            if (span == Span.Break)
            {
                setting.EndLine();
                continue;
            }

            foreach (var piece in Pieces(Writable.Of(span.Words, span.Style.Face)))
                setting.Put(piece, span.Style);
        }

        return setting.Finish();
    }

    public static ImmutableArray<SetLine> Set(Span span, double width) => Set([span], width);

    /// <summary>Words with the spaces after them; a hyphen or slash inside a long word ends a piece too.</summary>
    private static IEnumerable<string> Pieces(string words)
    {
        var start = 0;
        for (var i = 1; i <= words.Length; i++)
        {
            var ends = i == words.Length
                || (words[i] != ' ' && words[i - 1] == ' ' && !UnitOf(words, i))
                || (words[i - 1] is '-' or '/' && i - start > 4 && char.IsLetter(words[i]));
            if (!ends)
                continue;
            yield return words[start..i];
            start = i;
        }
    }

    /// <summary>Whether a unit begins here that belongs to the number before it: <c>95 %</c> is never torn.</summary>
    private static bool UnitOf(string words, int at)
    {
        if (at < 2 || !char.IsAsciiDigit(words[at - 2]))
            return false;
        var rest = words.AsSpan(at);
        var end = rest.IndexOfAny(UnitEnds);
        return Units.Contains((end < 0 ? rest : rest[..end]).ToString());
    }

    private sealed class Setting(double width)
    {
        private readonly ImmutableArray<SetLine>.Builder lines = ImmutableArray.CreateBuilder<SetLine>();
        private readonly List<(StringBuilder Words, TextStyle Style)> line = [];
        private double used;

        public void Put(string piece, TextStyle style)
        {
            var bare = style.Face.WidthOf(piece.AsSpan().TrimEnd(), style.Size);
            if (used + bare > width + 0.01 && line.Count > 0)
                Break();
            while (bare > width + 0.01 && piece.Length > 1)
            {
                var fit = Fitting(piece, style);
                Append(piece[..fit], style);
                Break();
                piece = piece[fit..];
                bare = style.Face.WidthOf(piece.AsSpan().TrimEnd(), style.Size);
            }

            if (line.Count > 0 || !string.IsNullOrWhiteSpace(piece))
                Append(piece, style);
        }

        public void EndLine()
        {
            if (line.Count > 0)
                Break();
        }

        public ImmutableArray<SetLine> Finish()
        {
            EndLine();
            return lines.ToImmutable();
        }

        private int Fitting(string piece, TextStyle style)
        {
            var fit = 1;
            while (fit < piece.Length && style.Face.WidthOf(piece.AsSpan(0, fit + 1), style.Size) <= width)
                fit++;
            return char.IsHighSurrogate(piece[fit - 1]) && fit < piece.Length ? fit + 1 : fit;
        }

        private void Append(string piece, TextStyle style)
        {
            if (line.Count == 0 || line[^1].Style != style)
                line.Add((new(), style));
            line[^1].Words.Append(piece);
            used += style.Face.WidthOf(piece, style.Size);
        }

        private void Break()
        {
            var runs = ImmutableArray.CreateBuilder<SetRun>();
            double x = 0, leading = 0, size = 0;
            for (var i = 0; i < line.Count; i++)
            {
                var words = i == line.Count - 1 ? line[i].Words.ToString().TrimEnd() : line[i].Words.ToString();
                runs.Add(new(x, words, line[i].Style));
                x += line[i].Style.Face.WidthOf(words, line[i].Style.Size);
                leading = Math.Max(leading, line[i].Style.Leading);
                size = Math.Max(size, line[i].Style.Size);
            }

            lines.Add(new(runs.ToImmutable(), x, leading, size));
            line.Clear();
            used = 0;
        }
    }
}
