using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;

namespace Ramwright.App.Stations.Arrive;

/// <summary>A tool is taken in.</summary>
public sealed class NewPage(Bench bench, ArriveStation station) : BenchPage(bench)
{
    [BindProperty]
    public IntakeForm Form { get; set; } = new();

    public override Sheet Sheet => new()
    {
        Title = "Take a tool in",
        Eyebrow = "Arrive · whose it is, what is said to be wrong, how it looks",
        Place = "rack",
        Route = StationOrder.Unopened,
        Wide = true,
        Counter = true,
        Block = [HouseField, DayField, PersonField, new("Station", "1 Arrive", Less: true), new("Job", "not opened yet", Less: true)],
    };

    public ImmutableArray<Option> Models => [new("", "choose"), .. Bench.Models.All.Select(m => new Option(m.Model.Tool.Id, $"{m.Model.Tool.Name} ({m.Model.Tool.Id})"))];

    public ImmutableArray<string> Customers => [.. House.CustomersById.Values.Select(c => c.Name)];

    public string Today => Bench.Today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public Task<IActionResult> OnPostAsync()
    {
        var intake = Form.Read(Bench, Mistakes);
        return TakeAsync(
            signature => intake is null ? Task.FromResult(ActAnswer.Refuse(new FormMistakes())) : station.TakeInAsync(signature, intake),
            done => $"/jobs/{done.Job}/arrive");
    }

    /// <summary>Serial, model and customer may come with the address: from a tool's own page.</summary>
    protected override Task<IActionResult?> DrawAsync()
    {
        Form.Serial ??= Request.Query["tool"];
        Form.ModelId ??= Request.Query["model"];
        Form.Customer ??= Request.Query["customer"];
        return base.DrawAsync();
    }
}
