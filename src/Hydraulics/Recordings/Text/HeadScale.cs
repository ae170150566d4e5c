using System.Text.RegularExpressions;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Input.Tables;

namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>Finds a sensor's scale in the lines above the rows: <c>100 bar/V</c>, <c>10 mV per A</c>, <c>1 V = 100 bar</c>, <c>0.5 V = 0 bar, 4.5 V = 1000 bar</c>, <c>4-20 mA: 0-1000 bar</c>.</summary>
internal static partial class HeadScale
{
    private const int LinesLookedAt = 60;

    /// <summary>A scale, the unit its signal is written in, and the line it stands on.</summary>
    internal readonly record struct Found(SensorScale Scale, Unit Signal, int Line);

    /// <summary>The first scale that leads to a pressure or to a current; null where there is none.</summary>
    public static Found? Find(IReadOnlyList<TextLine> head, int firstRow, Dimension measured)
    {
        foreach (var line in head.Take(Math.Min(firstRow, LinesLookedAt)))
        {
            if (line.Text.Length <= 400 && In(line.Text, measured) is var (scale, signal))
                return new(scale, signal, line.Number);
        }

        return null;
    }

    private static (SensorScale Scale, Unit Signal)? In(string line, Dimension measured)
    {
        foreach (Match range in Range().Matches(line))
        {
            if (Units(range, measured) is var (value, signal) && Number(range, "s1") is { } s1 && Number(range, "s2") is { } s2 && Number(range, "v1") is { } v1 && Number(range, "v2") is { } v2
                && Line(signal, value, s1, v1, s2, v2) is { } scale)
                return (scale, signal);
        }

        var points = Point().Matches(line).Select(p => (Units: Units(p, measured), Signal: Number(p, "s1"), Value: Number(p, "v1"))).Where(p => p.Units is not null && p.Signal is not null && p.Value is not null).ToList();
        if (points.Count > 0 && points[0] is { Units: var (unit, first) })
        {
            var (s2, v2) = points.Count > 1 ? (points[1].Signal!.Value, points[1].Value!.Value) : (0, 0); // one point: the line goes through zero
            if (Line(first, unit, points[0].Signal!.Value, points[0].Value!.Value, s2, v2) is { } scale)
                return (scale, first);
        }

        foreach (Match per in Per().Matches(line))
        {
            if (RecordingUnits.Find(per.Groups["above"].ValueSpan) is not { Unit: var above } || RecordingUnits.Find(per.Groups["below"].ValueSpan) is not { Unit: var below } || Number(per, "n") is not (> 0 and var number))
                continue;
            if (above.Dimension == measured && IsSignal(below, measured))
                return (new(below.Dimension, measured, number * above.Factor / below.Factor, 0), below);
            if (below.Dimension == measured && IsSignal(above, measured))
                return (new(above.Dimension, measured, below.Factor / (number * above.Factor), 0), above);
        }

        return null;
    }

    private static SensorScale? Line(Unit signal, Unit value, double s1, double v1, double s2, double v2)
    {
        if (s1 == s2 || v1 == v2)
            return null;
        var slope = (v2 - v1) * value.Factor / ((s2 - s1) * signal.Factor);
        return new(signal.Dimension, value.Dimension, slope, (s1 * signal.Factor) - (v1 * value.Factor / slope));
    }

    private static (Unit Value, Unit Signal)? Units(Match match, Dimension measured) =>
        RecordingUnits.Find(match.Groups["signal"].ValueSpan) is { Unit: var signal } && RecordingUnits.Find(match.Groups["value"].ValueSpan) is { Unit: var value } && value.Dimension == measured && IsSignal(signal, measured)
            ? (value, signal)
            : null;

    private static bool IsSignal(Unit unit, Dimension measured) => unit.Dimension == Dimension.Voltage || (unit.Dimension == Dimension.Current && measured == Dimension.Pressure);

    private static double? Number(Match match, string group) =>
        Cells.TryNumber(match.Groups[group].ValueSpan, match.Groups[group].Value.Contains(',', StringComparison.Ordinal) ? DecimalMark.Comma : DecimalMark.Point, out var number) ? number : null;

    private const string N = @"[-+]?[0-9]+(?:[.,][0-9]+)?", S = "mV|V|mA", Q = @"[A-Za-z]{1,4}(?:/[A-Za-z]{1,3}[2²])?", To = @"\s*(?:-|–|\.{2,3}|…|to|bis)\s*", Is = @"\s*(?:=|:|->|→|is|for|equals|entspricht|corresponds\s+to|,|;)?\s*";

    [GeneratedRegex($@"(?<s1>{N})\s*(?:{S})?{To}(?<s2>[0-9]+(?:[.,][0-9]+)?)\s*(?<signal>{S})\b{Is}(?<v1>{N})\s*(?:{Q})?{To}(?<v2>[0-9]+(?:[.,][0-9]+)?)\s*(?<value>{Q})\b", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 100)]
    private static partial Regex Range();

    [GeneratedRegex($@"(?<s1>{N})\s*(?<signal>{S})\s*(?:=|->|→|is|equals|entspricht|corresponds\s+to)\s*(?<v1>{N})\s*(?<value>{Q})\b", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 100)]
    private static partial Regex Point();

    [GeneratedRegex($@"(?<n>{N})\s*(?<above>[A-Za-z]{{1,4}})\s*(?:/|per|pro|je)\s*(?<below>[A-Za-z]{{1,4}})\b", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 100)]
    private static partial Regex Per();
}
