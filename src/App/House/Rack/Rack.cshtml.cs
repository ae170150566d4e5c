using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.Records.Jobs;

namespace Ramwright.App.House.Rack;

/// <summary>The tools in the house, like places on a shelf.</summary>
public sealed class RackPage(Bench bench) : BenchPage(bench)
{
    /// <summary>Beyond so many tools the rack no longer says how far each one is.</summary>
    private const int MostWithDetail = 60;

    public ImmutableArray<RackShelf> Shelves { get; private set; } = [];

    public int Late => Shelves.Sum(s => s.Lines.Count(l => l.Late));

    public int Count => Shelves.Sum(s => s.Lines.Length);

    public override bool NeedsPerson => false;

    public override Sheet Sheet => new()
    {
        Title = "The rack",
        Eyebrow = Count switch { 0 => House.Settings.ShopName, 1 => $"{House.Settings.ShopName} · 1 tool in the house{LateWords}", _ => $"{House.Settings.ShopName} · {Count} tools in the house{LateWords}" },
        Place = "rack",
        Wide = true,
        Block = [HouseField, DayField, new("Tools", $"{Count}"), new("Late", $"{Late}", Less: true), PersonField, new("Sheet", "rack", Less: true)],
    };

    private string LateWords => Late == 0 ? "" : $", {Late} late";

    protected override async Task<IActionResult?> DrawAsync()
    {
        var places = await Bench.Ledger.JobsInHouseAsync(HttpContext.RequestAborted);
        var jobs = new Dictionary<string, JobState>(StringComparer.Ordinal);
        if (places.Length <= MostWithDetail)
        {
            foreach (var place in places)
            {
                if (await Bench.Ledger.ReadAsync(place.Job, HttpContext.RequestAborted) is { } job)
                    jobs[place.Job.Value] = job;
            }
        }

        Shelves = RackView.Of(places, jobs, House, Bench);
        return null;
    }
}
