using System.Collections.Immutable;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Instruments.Text;

/// <summary>What a column holds.</summary>
internal enum ColumnKind { Other, Run, Peak, Void, Time }

/// <summary>A column as its header names it.</summary>
/// <param name="Unit">The unit's symbol as written; null when the header names none.</param>
internal readonly record struct HeaderColumn(ColumnKind Kind, string? Unit, Field Field);

/// <summary>Reads the names and units of a header line.</summary>
internal static class Header
{
    private static readonly ImmutableHashSet<string> s_peak =
    [
        "peak", "peaks", "pressure", "p", "pmax", "p-max", "max", "maximum", "peak-pressure", "max-pressure", "pressure-peak", "reading", "value", "force", "f", "fmax", "f-max", "peak-force",
        "druck", "spitze", "spitzendruck", "spitzenwert", "höchstdruck", "hoechstdruck", "maximaldruck", "messwert", "wert", "kraft", "presskraft",
    ];
    private static readonly ImmutableHashSet<string> s_run =
        ["position", "run", "runs", "run-no", "run-number", "no", "nr", "number", "n", "stroke", "cycle", "lauf", "lauf-nr", "hub", "lfd-nr", "nummer"];
    private static readonly ImmutableHashSet<string> s_void = ["void", "voided", "void-because", "void-cause", "cause", "ungültig", "ungueltig", "ursache"];
    private static readonly ImmutableHashSet<string> s_time = ["t", "time", "zeit"];
    private static readonly ImmutableHashSet<string> s_timeUnits = ["s", "ms", "us", "µs", "sec", "seconds"];
    private static readonly ImmutableHashSet<string> s_otherUnits = ["pa", "hpa", "n", "mn", "kgf", "kp", "at", "atm", "bara", "psia", "mbar", "ksi", "lbf", "kg/cm2", "kg/cm²", "n/mm2", "n/mm²", "t", "kbar", "gpa"];

    /// <summary>Whether a line is a header: words in it, and no field that starts as a number does.</summary>
    public static bool IsHeader(string line)
    {
        var parts = line.Split([';', '\t', ','], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(p => p.Trim('"', ' ')).Where(p => p.Length > 0).ToList();
        return parts.Exists(LooksLikeName) && !parts.Exists(p => char.IsAsciiDigit(p[0]) || p[0] is '+' or '-' or '.' or '\u2212');
    }

    /// <summary>The columns that a header's fields name.</summary>
    public static ImmutableArray<HeaderColumn> Read(IReadOnlyList<Field> fields)
    {
        var columns = fields.Select(Column).ToImmutableArray();
        var single = columns.Length == 1 || columns.Count(c => c is { Kind: ColumnKind.Other, Unit: not null }) == 1;
        return columns.Any(c => c.Kind == ColumnKind.Peak) || !single
            ? columns
            : [.. columns.Select(c => c is { Kind: ColumnKind.Other, Unit: { } unit } && ReadingUnits.Find(unit) is not null ? c with { Kind = ColumnKind.Peak } : c)];
    }

    private static bool LooksLikeName(string part) =>
        char.IsLetter(part[0]) && part.Count(char.IsLetter) > part.Count(char.IsAsciiDigit) && !NumberWords.IsNoNumber(part);

    private static HeaderColumn Column(Field field)
    {
        var (name, unit) = NameAndUnit(field.Text);
        var lower = name.ToLowerInvariant();
        var kind = s_peak.Contains(lower) ? ColumnKind.Peak
            : s_run.Contains(lower) ? ColumnKind.Run
            : s_void.Contains(lower) ? ColumnKind.Void
            : s_time.Contains(lower) && unit is not null && s_timeUnits.Contains(unit.ToLowerInvariant()) ? ColumnKind.Time
            : ColumnKind.Other;
        return new(name.Length == 0 && unit is not null ? ColumnKind.Peak : kind, unit, field);
    }

    /// <summary>Parts a header field: <c>peak_bar</c>, <c>peak [MPa]</c>, <c>Druck (bar)</c>, <c>pressure psi</c>, <c>p in kPa</c>, <c>p / bar</c>.</summary>
    private static (string Name, string? Unit) NameAndUnit(string text)
    {
        var open = text.IndexOfAny(['[', '(']);
        if (open >= 0 && text.IndexOfAny([']', ')'], open) is var close and > 0 && text[(open + 1)..close].Trim() is { Length: > 0 } bracketed)
            return (Joined(Words(text[..open])), bracketed);
        var words = Words(text);
        if (words.Count == 0 || !IsUnit(words[^1]) || (words.Count == 1 && ReadingUnits.Find(words[0]) is null))
            return (Joined(words), null);
        var unit = words[^1];
        words.RemoveAt(words.Count - 1);
        if (words.Count > 0 && words[^1].Equals("in", StringComparison.OrdinalIgnoreCase))
            words.RemoveAt(words.Count - 1);
        return (Joined(words), unit);
    }

    private static bool IsUnit(string word) => ReadingUnits.Find(word) is not null || s_timeUnits.Contains(word.ToLowerInvariant()) || s_otherUnits.Contains(word.ToLowerInvariant());

    private static List<string> Words(string text) => [.. text.Split([' ', '_', '-', '/', '.', ':', '#'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];

    private static string Joined(IEnumerable<string> words) => string.Join('-', words);
}
