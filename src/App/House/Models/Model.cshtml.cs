using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Text;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.House.Models;

/// <summary>One service model, readable.</summary>
public sealed class ModelPage(Bench bench) : BenchPage(bench)
{
    public ShelvedModel Shelved { get; private set; } = null!;

    public ServiceModel Model => Shelved.Model;

    public string? Map { get; private set; }

    public override bool NeedsPerson => false;

    public override Sheet Sheet => new()
    {
        Title = Model.Tool.Name,
        Eyebrow = $"Service model · {Model.Tool.Kind.ToString().ToLowerInvariant()} tool{(Model.Tool.Maker is { } maker ? $" by {maker}" : "")} · level {Shelved.Level}, {Shelved.LevelName}",
        Place = "models",
        Counter = true,
        Block =
        [
            new("Model", Model.Tool.Id), new("Level", $"{Shelved.Level} of 3"), new("Parts", $"{Model.Parts.Length}"),
            new("Revision", Model.Tool.Revision ?? "not counted", Less: true), new("File", Model.Fingerprint[..12], Less: true), PersonField,
        ],
    };

    public Facts Limits => new(
    [
        new("Pressure", Words.Show(Model.Limits.Pressure), $"set for {Words.Show(Model.Limits.Nominal)}"),
        new("Never above", Words.Show(Model.Limits.Maximum), "then the frame is inspected"),
        new("Force", Model.Limits.Force is { } force ? Words.Show(force) : "not stated"),
        new("Proof", $"{Model.Limits.ProofRuns} full runs", $"rest {TimeText.Show(Model.Limits.Rest)} between"),
        new("Oil", Model.Fluid is { } oil ? $"{oil.Class}{(oil.Grade is { } grade ? $" {grade}" : "")}" : "not stated", Model.Fluid?.Capacity is { } volume ? $"takes {Words.Show(volume)}" : null),
        new("Mass", Model.Tool.Mass is { } mass ? Words.Show(mass) : "not stated"),
    ]);

    /// <summary>Things that a hand would get wrong: left-hand threads, adhesive, loose parts, parts that do not survive.</summary>
    public IReadOnlyList<ModelTrap> Traps => ModelTrap.Of(Model);

    protected override Task<IActionResult?> PrepareAsync()
    {
        if (Bench.Models.Find(RouteData.Values["id"] as string ?? "") is not { } shelved)
            return Task.FromResult<IActionResult?>(NotFound());
        Shelved = shelved;
        if (shelved.Level >= 2)
            Map = ScreenMap.Of(Model);
        return base.PrepareAsync();
    }
}
