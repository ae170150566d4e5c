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
    private const int RunsPerBand = 12;

    /// <summary>Every run in the order taken, twelve to a band; a void one in its place, with its cause below.</summary>
    public static void Runs(Flow flow, string what, ImmutableArray<RunLine> runs, UnitSystem units)
    {
        var unit = QuantityText.Parts(Pressure.FromBar(0), units).Unit;
        ImmutableArray<Column> columns = [new(30, Fixed: true), .. Enumerable.Repeat(new Column(1, Right: true), RunsPerBand)];
        for (var from = 0; from < runs.Length; from += RunsPerBand)
        {
            var band = runs.Skip(from).Take(RunsPerBand).ToArray();
            var tag = new Tag(TagKind.Table);
            flow.Row(tag, columns, [new Span(from == 0 ? what : "", TextStyle.Label), .. band.Select(r => (Cell)new Span(r.Number.ToString(CultureInfo.InvariantCulture), TextStyle.Label))], Ink.Grid, keepWithNext: true, header: true);
            flow.Row(tag, columns, [new Span(unit, TextStyle.Quiet), .. band.Select(r => (Cell)new Span(Peak(r.Peak, units), r.VoidCause is null ? TextStyle.Body : TextStyle.Quiet))], Ink.Grid);
            if (band.Any(r => r.VoidCause is not null))
                flow.Row(tag, columns, ["", .. band.Select(r => (Cell)new Span(r.VoidCause is null ? "" : "void", TextStyle.Pencil with { Size = 7.4 }))], Ink.Grid);
        }

        foreach (var run in runs.Where(r => r.VoidCause is not null))
            flow.Paragraph(new Span($"Run {run.Number} void: ", TextStyle.SmallInk with { Bold = true }), new Span(SheetText.Sentence(run.VoidCause!), TextStyle.SmallInk));
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
        "≥ " + SheetText.Percent(claim.ShareShown, 2),
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

    /// <summary>What the device may be off, by cause.</summary>
    public static void Budget(Flow flow, ProofReportInput input, UnitSystem units)
    {
        var unit = QuantityText.Parts(Pressure.FromBar(0), units).Unit;
        ImmutableArray<Column> columns = [new(1), new(54, Right: true, Fixed: true), new(54, Right: true, Fixed: true)];
        var systematic = input.Series.Systematic;
        var rows = input.Budget.Select(l => (ImmutableArray<Cell>)[l.Random ? l.Name + " (random)" : l.Name, Part(l.Below, units), Part(l.Above, units)])
            .Append([new Span("together, systematic", TextStyle.Strong), new Span(Part(systematic.BelowLimit, units), TextStyle.Strong), new Span(Part(systematic.AboveLimit, units), TextStyle.Strong)]);
        flow.Table(columns, ["expanded, k = 2", $"below, {unit}", $"above, {unit}"], rows);
    }

    private static string Peak(Pressure p, UnitSystem units) => QuantityText.Parts(p, units, units == UnitSystem.Metric ? 1 : 0).Number;

    private static string Part(Pressure p, UnitSystem units) => QuantityText.Parts(p, units, units == UnitSystem.Metric ? 1 : 0).Number;
}
