using System.Collections.Immutable;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Pages;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Paper.Sheets.Work;

/// <summary>An inspection under its step: what to look at, what it takes to use the part again, boxes for the result.</summary>
internal static class InspectionRow
{
    private static readonly ImmutableArray<Column> Columns = [new(17, Fixed: true), new(12, Fixed: true), new(1), new(76, Fixed: true), new(42, Fixed: true), new(42, Fixed: true)];

    public static void Add(Flow flow, Tag table, Inspection inspection, UnitSystem units, bool last)
    {
        var unit = QuantityText.Parts(Metrology.Quantities.Length.FromMetres(0), units).Unit;
        flow.Row(
            table,
            Columns,
            [
                "",
                "",
                Cell.Of([new("Inspect: ", TextStyle.Strong), new(SheetText.Sentence(inspection.Look), TextStyle.Body), Span.Break, new("Use again: " + inspection.Reuse.TrimEnd('.') + Limits(inspection.Measure, units) + ".", TextStyle.Body)]),
                inspection.Measure is null ? "" : new Cell.Write("measured", unit),
                new Cell.Tick("reuse"),
                new Cell.Tick("renew"),
            ],
            last ? Ink.Rule : null,
            keepWithNext: !last);
    }

    private static string Limits(MeasuredCriterion? measure, UnitSystem units) => measure switch
    {
        null => "",
        { Least: { } low, Most: { } high } => $"; {measure.What} {QuantityText.Show(low, units)} to {QuantityText.Show(high, units)}",
        { Least: { } low } => $"; {measure.What} at least {QuantityText.Show(low, units)}",
        { Most: { } high } => $"; {measure.What} at most {QuantityText.Show(high, units)}",
        _ => "",
    };
}
