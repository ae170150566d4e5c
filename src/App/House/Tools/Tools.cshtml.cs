using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.App.House.Tools;

/// <summary>Customers' tools that the house knows, and a field to find one.</summary>
public sealed class ToolsPage(Bench bench) : BenchPage(bench)
{
    private const int Most = 500;

    public ImmutableArray<ToolRegistered> Tools { get; private set; } = [];

    public string Asked { get; private set; } = "";

    public override bool NeedsPerson => false;

    public override Sheet Sheet => new()
    {
        Title = "Tools",
        Eyebrow = Asked.Length == 0 ? "Every tool that was in the house" : $"Tools with '{Asked}' in number, model or owner",
        Place = "tools",
        Wide = true,
        Counter = true,
        Block = [HouseField, DayField, new("Shown", $"{Tools.Length}"), PersonField, new("Sheet", "tools", Less: true)],
    };

    protected override async Task<IActionResult?> DrawAsync()
    {
        Asked = ((string?)Request.Query["find"] ?? "").Trim();
        if (Asked.Length > 60)
            Asked = Asked[..60];
        var all = await Bench.Ledger.ToolsAsync(Most, HttpContext.RequestAborted);
        Tools = [.. all.Where(t => Asked.Length == 0 || Has(t.Tool.Value) || Has(t.ModelId) || Has(House.NameOf(t.Owner)))];

        // A number typed or scanned in full leads straight to the tool; a job's number to the job.
        if (JobId.TryParse(Asked, out var job))
            return LocalRedirect($"/jobs/{job}/now");
        return Tools.Length == 1 && Tools[0].Tool.Value.Equals(Asked, StringComparison.OrdinalIgnoreCase) ? LocalRedirect($"/tools/{Uri.EscapeDataString(Tools[0].Tool.Value)}") : null;

        bool Has(string text) => text.Contains(Asked, StringComparison.OrdinalIgnoreCase);
    }
}
