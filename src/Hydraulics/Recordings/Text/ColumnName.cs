using System.Collections.Frozen;
using Ramwright.Metrology.Input;

namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>A column as its header names it.</summary>
/// <param name="Text">The header's whole cell.</param>
/// <param name="Says">What the words of the name say; null when nothing.</param>
/// <param name="Unit">The unit that the header names; null when none, or none known here.</param>
/// <param name="UnitText">The unit as written in brackets, known or not; empty when there is none.</param>
internal sealed record ColumnName(string Text, RecordingSignal? Says, WrittenUnit? Unit, string UnitText)
{
    private static readonly FrozenSet<string> s_time = Words("time t zeit temps tiempo tempo tijd elapsed timestamp datetime uhrzeit zeitstempel clock seconds sec");
    private static readonly FrozenSet<string> s_pressure = Words("pressure pressures press p druck druk pression presion presión pressione");
    private static readonly FrozenSet<string> s_current = Words("current currents i amps amp strom motorstrom batteriestrom stroom courant corriente corrente");

    /// <summary>Parts a header's cell into name and unit: <c>p_bar</c>, <c>Druck [bar]</c>, <c>pressure (psi)</c>, <c>p / MPa</c>, <c>time in ms</c>, <c>CH1, A</c>.</summary>
    public static ColumnName Of(string text)
    {
        text = text.Trim().Trim('"', '#').Trim();
        var open = text.IndexOfAny(['[', '(', '<', '{']);
        if (open >= 0 && text.IndexOfAny([']', ')', '>', '}'], open) is var close and > 0 && !text.AsSpan(open + 1, close - open - 1).Trim().IsEmpty)
        {
            var inside = text[(open + 1)..close].Trim();
            // "bar(g)": the unit stands before its bracket.
            if (inside is "g" or "a" or "abs" or "G" && Split(text[..open]) is { Count: > 0 } before && RecordingUnits.Find(before[^1] + inside) is { } whole)
                return new(text, Role(before[..^1]), whole, before[^1]);
            return new(text, Role(Split(text[..open])), RecordingUnits.Find(inside), inside);
        }

        var words = Split(text);
        if (words.Count == 0)
            return new(text, null, null, "");
        var last = words[^1];
        var role = Role(words);
        if (RecordingUnits.Find(last) is { } unit && (last.Length > 1 || role is not null || words.Count == 1 || text.Contains('_', StringComparison.Ordinal) || text.Contains('/', StringComparison.Ordinal)))
            return new(text, Role(words[..^1]) ?? (words.Count == 1 && last.Length == 1 ? role : null), unit, last);
        return new(text, role, null, "");
    }

    /// <summary>The column with a unit from a line of units below the names.</summary>
    public ColumnName WithUnit(string written) => written.Trim(' ', '[', ']', '(', ')') is { Length: > 0 } bare && Unit is null ? this with { Unit = RecordingUnits.Find(written), UnitText = bare } : this;

    /// <summary>What the column holds, by its words and its unit; null when they say nothing, or something else.</summary>
    public RecordingSignal? Signal => (Says, Unit?.Unit.Dimension) switch
    {
        (_, Dimension.Time) => RecordingSignal.Time,
        (_, Dimension.Pressure) => RecordingSignal.Pressure,
        (RecordingSignal.Pressure, Dimension.Current or Dimension.Voltage) => RecordingSignal.Pressure,
        (_, Dimension.Current) => RecordingSignal.Current,
        (RecordingSignal.Current, Dimension.Voltage) => RecordingSignal.Current,
        (_, not null) => null,
        _ => UnitText.Length == 0 || Says != RecordingSignal.Time ? Says : null, // a pressure in an unknown unit is a mistake; a t in °C is no time
    };

    private static RecordingSignal? Role(List<string> words)
    {
        foreach (var word in words)
        {
            var bare = word.TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9').ToLowerInvariant();
            var signal = s_pressure.Contains(bare) ? RecordingSignal.Pressure : s_current.Contains(bare) ? RecordingSignal.Current : s_time.Contains(bare) ? RecordingSignal.Time : (RecordingSignal?)null;
            if (signal is not null)
                return signal;
        }

        return null;
    }

    private static List<string> Split(string text)
    {
        var words = text.Split([' ', '_', ',', ':', '-', '\t', '"'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .SelectMany(w => RecordingUnits.Find(w) is not null ? [w] : w.Split('/', StringSplitOptions.RemoveEmptyEntries)).ToList();
        if (words.Count > 2 && words[^2].Equals("in", StringComparison.OrdinalIgnoreCase))
            words.RemoveAt(words.Count - 2);
        return words;
    }

    private static FrozenSet<string> Words(string words) => words.Split(' ').ToFrozenSet(StringComparer.Ordinal);
}
