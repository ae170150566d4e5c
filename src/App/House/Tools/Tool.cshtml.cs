using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;

namespace Ramwright.App.House.Tools;

/// <summary>One tool and its past.</summary>
public sealed class ToolPage(Bench bench) : BenchPage(bench)
{
    public ToolHistory History { get; private set; } = null!;

    public string ModelId => History.Registered?.ModelId ?? History.Jobs[0].ModelId;

    public string ToolName => Bench.Models.Find(ModelId)?.Model.Tool.Name ?? ModelId;

    public string Owner => House.NameOf(History.Registered?.Owner ?? History.Jobs[0].Customer);

    public RackPlace? Open => History.Jobs.FirstOrDefault(j => j.End is null);

    public override bool NeedsPerson => false;

    public override Sheet Sheet => new()
    {
        Title = $"{ToolName} no. {History.Tool}",
        Eyebrow = $"{Owner} · {(History.Jobs.Length == 1 ? "once" : $"{History.Jobs.Length} times")} in the house",
        Place = "tools",
        Wide = true,
        Block = [new("Tool", ToolName, "no. " + History.Tool), new("For", Owner), new("Built", History.Registered?.YearBuilt?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "not known", Less: true), DayField, PersonField],
    };

    protected override async Task<IActionResult?> PrepareAsync()
    {
        if (!ToolSerial.TryParse(RouteData.Values["serial"] as string, out var serial))
            return NotFound();
        History = await Bench.Ledger.ToolHistoryAsync(serial, HttpContext.RequestAborted);
        return History is { Registered: null, Jobs.IsEmpty: true } ? NotFound() : null;
    }
}
