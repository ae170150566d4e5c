using System.Collections.Immutable;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving.Reference;
using Ramwright.Proving.Text;

namespace Ramwright.App.Stations.Prove;

/// <summary>A reference's budget as the pages show it.</summary>
/// <param name="Name">What it is called: <c>PG-1</c>, <c>the tool's own memory</c>.</param>
public sealed record BudgetView(string Name, ImmutableArray<BudgetRow> Rows, ImmutableArray<string> Notes)
{
    public static BudgetView Of(string name, ReferenceBudget budget, PressureWindow limits, Words words)
    {
        ArgumentNullException.ThrowIfNull(budget);
        ArgumentNullException.ThrowIfNull(words);
        var (units, systematic) = (words.System, budget.Systematic);
        return new(name, [.. BudgetText.Rows(budget, units).Select(r => r with { Given = Unbroken(r.Given), Sensitivity = Unbroken(r.Sensitivity), Standard = Unbroken(r.Standard) })],
        [
            Sentence.Of(Sentence.Head(BudgetText.Combined(budget, units))),
            Sentence.Of("Peak capture " + BudgetText.Capture(budget, units)),
            $"So the lower limit moves up by {words.Show(systematic.BelowLimit)} and the upper one down by {words.Show(systematic.AboveLimit)}.",
            .. BudgetText.Correction(budget, limits.Middle, units) is { } correction ? [Sentence.Of(Sentence.Head(correction))] : Array.Empty<string>(),
            .. budget.Remarks.Select(r => Sentence.Of(Sentence.Head(BudgetText.Of(r)))),
        ]);
    }

    private static string Unbroken(string figure) => figure.Replace(' ', '\u00a0');
}
