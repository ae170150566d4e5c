using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Ramwright.Instruments.PeakLists;
using Ramwright.Metrology.Quantities;

namespace Ramwright.App.Verbs;

/// <summary>What a splice answers, in words and as an object.</summary>
internal static class SpliceText
{
    /// <summary>How the lists were joined, one line each.</summary>
    public static string Joins(Spliced.Whole whole)
    {
        var lines = whole.Places.Select((p, i) => i == 0
            ? $"  {p.Name}: runs {p.FirstRun} to {p.LastRun}"
            : $"  {p.Name}: runs {p.FirstRun} to {p.LastRun}, {p.NewRuns} new, {p.Shared} shared{(p.Shared == 1 ? ": the join rests on one reading, which may agree by chance" : p.Shared <= 0 ? ": the join rests on the number stated" : "")}");
        return $"{Runs(whole.Series.Length)} from {Lists(whole.Places.Length)}, read as {Kebab.Of(whole.Order)}\n{string.Join('\n', lines)}";
    }

    public static string Of(Spliced spliced, ImmutableArray<PeakList> lists) => spliced switch
    {
        Spliced.Ambiguous a => $"not certain: {Or(a.PossibleNewRuns)} runs may be new in {lists[a.List].Name}, for its readings fit in each place\n  the series could have {Or(a.Lengths)} runs\n  count the runs made between the lists and give them as --new",
        Spliced.OrderOpen => "not certain: the lists fit whichever end is the latest run\n  say which: --order newest-first or --order oldest-first",
        Spliced.Contradicts c => $"contradiction: {lists[c.List].Name} is not what was there before\n  with {c.NewRuns} new, {Readings(c.Agreeing)} agree and {c.Differing.Length} differ{string.Concat(c.Differing.Take(10).Select(Line))}\n  look at the tool again; a memory that was cleared begins a new series",
        Spliced.Apart a => $"apart: {lists[a.List].Name} shares too little with the lists before it\n  runs between them may be in no list; read the memory out more often, or give the number of new runs as --new",
        Spliced.Gap g => $"gap: {Runs(g.MissingRuns)} between {lists[g.List - 1].Name} and {lists[g.List].Name} stand in no list\n  a series with runs left out looks better than it was: make a new one",
        Spliced.NotWholeMemory n => $"not a whole memory: {lists[n.List].Name} has {Readings(n.Readings)}, and the tool keeps {n.Depth}; a list is as long as the one before it or longer\n  give whole lists, or leave --depth out",
        Spliced.TooManyWays t => $"not certain: the lists up to {lists[t.List].Name} fit in more ways than are followed\n  give the number of new runs as --new",
        _ => throw new ArgumentOutOfRangeException(nameof(spliced), spliced, "A whole series has no words of refusal."),
    };

    public static JsonObject Json(Spliced spliced, ImmutableArray<PeakList> lists) => spliced switch
    {
        Spliced.Whole w => new JsonObject
        {
            ["answer"] = "whole",
            ["order"] = Kebab.Of(w.Order),
            ["peaksBar"] = new JsonArray([.. w.Series.Select(p => JsonValue.Create(Math.Round(p.Bar, 4)))]),
            ["lists"] = new JsonArray([.. w.Places.Select(p => new JsonObject { ["name"] = p.Name, ["firstRun"] = p.FirstRun, ["lastRun"] = p.LastRun, ["newRuns"] = p.NewRuns, ["shared"] = p.Shared })]),
        },
        Spliced.Ambiguous a => new JsonObject { ["answer"] = "ambiguous", ["list"] = lists[a.List].Name, ["possibleNewRuns"] = Numbers(a.PossibleNewRuns), ["lengths"] = Numbers(a.Lengths) },
        Spliced.OrderOpen => new JsonObject { ["answer"] = "order-open" },
        Spliced.Contradicts c => new JsonObject
        {
            ["answer"] = "contradicts",
            ["list"] = lists[c.List].Name,
            ["newRuns"] = c.NewRuns,
            ["agreeing"] = c.Agreeing,
            ["differing"] = new JsonArray([.. c.Differing.Select(d => new JsonObject { ["position"] = d.Position, ["beforeBar"] = Math.Round(d.Before.Bar, 4), ["nowBar"] = Math.Round(d.Now.Bar, 4) })]),
        },
        Spliced.Apart a => new JsonObject { ["answer"] = "apart", ["list"] = lists[a.List].Name },
        Spliced.Gap g => new JsonObject { ["answer"] = "gap", ["list"] = lists[g.List].Name, ["missingRuns"] = g.MissingRuns },
        Spliced.NotWholeMemory n => new JsonObject { ["answer"] = "not-whole-memory", ["list"] = lists[n.List].Name, ["readings"] = n.Readings, ["depth"] = n.Depth },
        Spliced.TooManyWays t => new JsonObject { ["answer"] = "too-many-ways", ["list"] = lists[t.List].Name },
        _ => throw new ArgumentOutOfRangeException(nameof(spliced), spliced, "No such answer."),
    };

    private static string Line(Difference d) => string.Create(CultureInfo.InvariantCulture, $"\n  position {d.Position}: {Bar(d.Now)} bar, where {Bar(d.Before)} bar stood");

    private static string Bar(Pressure p) => p.Bar.ToString("0.####", CultureInfo.InvariantCulture);

    private static string Or(ImmutableArray<int> numbers) => numbers switch
    {
        [var one] => one.ToString(CultureInfo.InvariantCulture),
        { Length: > 4 } => $"{numbers[0]} to {numbers[^1]}",
        _ => $"{string.Join(", ", numbers[..^1])} or {numbers[^1]}",
    };

    private static string Runs(int count) => count == 1 ? "1 run" : string.Create(CultureInfo.InvariantCulture, $"{count} runs");

    private static string Lists(int count) => count == 1 ? "1 list" : string.Create(CultureInfo.InvariantCulture, $"{count} lists");

    private static string Readings(int count) => count == 1 ? "1 reading" : string.Create(CultureInfo.InvariantCulture, $"{count} readings");

    private static JsonArray Numbers(ImmutableArray<int> numbers) => new([.. numbers.Select(n => JsonValue.Create(n))]);
}
