using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Pages;
using Ramwright.Proving;

namespace Ramwright.Paper.Sheets.Proof;

/// <summary>The tables of a proof report.</summary>
internal static class ProofTables
{
    /// <summary>Every run in the order taken, in bands of equal length; a void one in its place, with its cause below.</summary>
    public static void Runs(Flow flow, ImmutableArray<RunLine> runs, UnitSystem units)
    {
        var unit = QuantityText.Parts(Pressure.FromBar(0), units).Unit;
        var most = units == UnitSystem.Metric ? 15 : 12;
        var bands = Math.Max(1, (runs.Length + most - 1) / most);
        var each = (runs.Length + bands - 1) / bands;
        ImmutableArray<Column> columns = [new(24, Fixed: true), .. Enumerable.Repeat(new Column(1, Right: true), Math.Max(each, 8))];
        foreach (var band in runs.Chunk(Math.Max(1, each)))
        {
            var tag = new Tag(TagKind.Table);
            flow.Row(tag, columns, [new Span("run", TextStyle.Label), .. band.Select(r => (Cell)new Span(r.Number.ToString(CultureInfo.InvariantCulture), TextStyle.Label))], Ink.Grid, keepWithNext: true, header: true, gutter: 3);
            flow.Row(tag, columns, [new Span(unit, TextStyle.Quiet), .. band.Select(r => (Cell)Value(r, units))], Ink.Grid, gutter: 3);
        }

        foreach (var run in runs.Where(r => r.VoidCause is not null))
        {
            flow.Space(2);
            flow.Whole(new Span($"Run {run.Number} void: ", TextStyle.SmallInk with { Bold = true, Tint = Tint.Pencil }), new Span(SheetText.Sentence(run.VoidCause!), TextStyle.SmallInk));
        }
    }

    private static Cell Value(RunLine run, UnitSystem units) => run.VoidCause is null
        ? new Span(Peak(run.Peak, units), TextStyle.Body)
        : Cell.Of(new Span(Peak(run.Peak, units), TextStyle.Quiet), Span.Break, new Span("void", TextStyle.Pencil with { Size = 7.4, Leading = 9 }));

    /// <summary>The runs as found, in a line.</summary>
    public static void AsFound(Flow flow, ProofReportInput input, UnitSystem units)
    {
        var words = input.AsFound.IsEmpty
            ? SheetText.Sentence(input.NoAsFound ?? "not measured")
            : string.Join(", ", input.AsFound.Select(r => Peak(r.Peak, units) + (r.VoidCause is null ? "" : $" (void: {r.VoidCause})"))) + " " + QuantityText.Parts(Pressure.FromBar(0), units).Unit + ".";
        flow.Whole(new Span("As found: ", TextStyle.SmallInk with { Bold = true }), new Span(words, TextStyle.SmallInk));
    }

    /// <summary>One line per limit: where it was moved, how far the mean keeps, what share is shown.</summary>
    public static void Claims(Flow flow, ProofReportInput input, UnitSystem units)
    {
        ImmutableArray<Column> columns = [new(1), new(66, Right: true, Fixed: true), new(78, Right: true, Fixed: true), new(62, Right: true, Fixed: true), new(84, Right: true, Fixed: true), new(70, Right: true, Fixed: true)];
        flow.Table(
            columns,
            ["limit", "moved to", "mean keeps", "wanted", "share shown", "claim"],
            input.Verdict.Claims.Select(c => Claim(c, input.Verdict, input.Series, units)));
        var verdict = input.Verdict;
        if (verdict.Claims.IsEmpty)
            flow.Paragraph(new Span("No claim can be made below two runs.", TextStyle.Body));
    }

    private static ImmutableArray<Cell> Claim(LimitClaim claim, Verdict verdict, ProofSeries series, UnitSystem units) =>
    [
        $"{(claim.Side == LimitSide.Lower ? "lower" : "upper")}, {QuantityText.Show(claim.Limit, units)}",
        QuantityText.Show(claim.Guarded, units),
        double.IsFinite(claim.DistanceInS) ? claim.DistanceInS.ToString("0.00", CultureInfo.InvariantCulture) + " s" : "no scatter seen",
        verdict.OneSidedFactor is { } k ? "≥ " + k.ToString("0.00", CultureInfo.InvariantCulture) + " s" : "",
        "≥ " + ShareText.AtLeast(claim.ShareShown),
        new Span(claim.Holds ? "holds" : $"{SheetText.Percent(series.Coverage)} not shown", TextStyle.Strong),
    ];

    /// <summary>What the runs say, beside the claims.</summary>
    public static IEnumerable<(string Label, string? Value)> Statistics(ProofReportInput input, UnitSystem units)
    {
        var verdict = input.Verdict;
        yield return ("valid runs", $"{verdict.Runs} of {verdict.PlannedRuns} planned");
        yield return ("mean", verdict.Mean is { } mean ? QuantityText.Show(mean, units, units == UnitSystem.Metric ? 1 : 0) : null);
        yield return ("standard deviation s", verdict.StandardDeviation is { } s ? $"{SheetText.Spread(s, units)} ({DecisionWords.Scatter(verdict)})" : null);
        yield return ($"two-sided interval", verdict.Interval is { } interval && verdict.ToleranceFactor is { } k
            ? $"{QuantityText.Show(interval, units)} ({SheetText.Percent(input.Series.Coverage)} of runs, {SheetText.Percent(input.Series.Confidence)} confidence, k = {SheetText.Factor(k)}, ISO 16269-6)"
            : null);
        yield return ("flags", verdict.Flags.IsEmpty ? "nothing flagged (screens flag, they delete nothing)" : string.Join("; ", verdict.Flags.Select(f => f.Text)));
    }

    private static string Peak(Pressure p, UnitSystem units) => QuantityText.Parts(p, units, units == UnitSystem.Metric ? 1 : 0).Number;
}
