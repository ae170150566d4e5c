using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Devices;
using Ramwright.App.Web.Pages;
using Ramwright.Proving.Reference;
using Ramwright.Proving.Text;
using Ramwright.Records.Events;

namespace Ramwright.App.Stations.Prove;

/// <summary>What could measure the proof of this tool, and what each reference may be off and why.</summary>
public sealed class ReferencePage(Bench bench) : StationPage(bench, Station.Prove)
{
    public ImmutableArray<ReferenceChoice> Choices { get; private set; } = [];

    public ReferenceChoice? Chosen { get; private set; }

    public BudgetView? Budget { get; private set; }

    public bool HasForceCell => RamForce.Of(Model) is not null && Choices.Any(c => c.Kind == ReferenceKind.ForceCell);

    /// <summary>The kinds that the house has, in the order of the form.</summary>
    public IEnumerable<IGrouping<ReferenceKind, ReferenceChoice>> Kinds => Choices.GroupBy(c => c.Kind).OrderBy(g => g.Key);

    protected override string Title => "What measures it";

    protected override string Eyebrow => $"Prove · limits {Words.Show(Model.Limits.Pressure)}, rise before the peak {BudgetText.Rise(Metrology.Quantities.Pressure.FromBar(ToolRise.BarPerSecond(Model)), Words.System)} {(ToolRise.IsKnown(Model) ? "by the model" : "as is usual")}";

    protected override Task<IActionResult?> DrawAsync()
    {
        Choices = References.Of(House, Job, Model, Bench.Today);
        var with = Request.Query["with"].ToString();
        Chosen = Choices.FirstOrDefault(c => c.Value == with) ?? Choices.FirstOrDefault(c => c.Fit is DeviceFit.Fits);
        if (Chosen is { Fit: DeviceFit.Fits fits })
            Budget = BudgetView.Of(Chosen.Name, fits.Budget, Model.Limits.Pressure, Words);
        return base.DrawAsync();
    }
}
