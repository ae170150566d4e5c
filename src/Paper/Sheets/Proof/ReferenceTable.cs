using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Lettering;
using Ramwright.Paper.Pages;
using Ramwright.Proving;
using Ramwright.Proving.Reference;
using Ramwright.Proving.Text;

namespace Ramwright.Paper.Sheets.Proof;

/// <summary>The reference's budget on a report: one row for each contribution, then what follows from them.</summary>
internal static class ReferenceTable
{
    public static void Fill(Flow flow, ReferenceBudget? budget, ProofSeries series, UnitSystem units)
    {
        ImmutableArray<Column> columns = [new(1), new(62, Right: true, Fixed: true), new(84, Fixed: true), new(40, Right: true, Fixed: true), new(84, Right: true, Fixed: true), new(66, Right: true, Fixed: true)];
        if (budget is not null)
        {
            flow.Table(columns, BudgetText.Heads.Select((h, i) => (Cell)(i == 5 ? "standard unc." : h)), BudgetText.Rows(budget, units).Select(r => (ImmutableArray<Cell>)[Small(r.What), Small(r.Given), Small(r.Shape), Small(r.Divisor), Small(r.Sensitivity), Small(r.Standard)]));
            flow.SmallFacts(100,
                ("together", BudgetText.Combined(budget, units)),
                ("peak capture", BudgetText.Capture(budget, units)),
                ("guard bands", Guards(series.Systematic, units)),
                ("correction", BudgetText.Correction(budget, series.Limits.Middle, units) is { } correction ? SheetText.Sentence(correction) : null),
                ("known of it", budget.Remarks.IsEmpty ? null : string.Join(" ", budget.Remarks.Select(r => SheetText.Sentence(BudgetText.Of(r))))));
            return;
        }

        flow.SmallFacts(100, ("guard bands", Guards(series.Systematic, units)), ("budget", "not kept with this series"));
    }

    private static string Guards(SystematicUncertainty systematic, UnitSystem units) =>
        $"lower limit up by {Show(systematic.BelowLimit, units)}, upper limit down by {Show(systematic.AboveLimit, units)}{(systematic.RandomExpanded.Pascals > 0 ? $"; the random part ({Show(systematic.RandomExpanded, units)}, k = 2) is in the scatter" : "")}";

    private static Cell Small(string words) => new Span(words, TextStyle.SmallInk);

    private static string Show(Pressure p, UnitSystem units) => QuantityText.Show(p, units);
}
