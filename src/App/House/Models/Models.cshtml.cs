using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;

namespace Ramwright.App.House.Models;

/// <summary>The service models on the shelf, and the files that do not read.</summary>
public sealed class ModelsPage(Bench bench) : BenchPage(bench)
{
    public override bool NeedsPerson => false;

    public override Sheet Sheet => new()
    {
        Title = "Service models",
        Eyebrow = "What is known of each tool family, and how far that carries",
        Place = "models",
        Wide = true,
        Counter = true,
        Block = [HouseField, DayField, new("Models", $"{Bench.Models.All.Length}"), PersonField, new("Sheet", "models", Less: true)],
    };
}
