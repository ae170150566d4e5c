using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Text;
using Ramwright.Records.Events;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find;

/// <summary>One check of the model: its cautions, what it needs, and a button for each outcome.</summary>
public sealed class CheckPage(Bench bench, FindStation station, Diagnosing diagnosing) : StationPage(bench, Station.Find)
{
    public Check Check { get; private set; } = null!;

    public DiagnosisView Diagnosis { get; private set; } = null!;

    public string? Note { get; private set; }

    /// <summary>Outcome of the last time; null before.</summary>
    public string? Last => Job.Checks.Find(c => c.What.Check == Check.Id)?.What.Outcome;

    /// <summary>Parts and states it needs that are not there yet, by name.</summary>
    public ImmutableArray<string> Needs => [.. Check.Needs.Where(n => !Job.Done.Contains(n)).Select(Model.NameOf)];

    public Facts Facts => Facts.Of([
        new("Takes", TimeText.Show(Check.Time)),
        .. Check.Tool is { } tool ? [new Fact("With", Model.Tools.FirstOrDefault(t => t.Id == tool)?.Name ?? tool.Value)] : Array.Empty<Fact>(),
    ]);

    protected override string Title => Sentence.Head(Check.Name);

    protected override string Eyebrow => "Find · one check, one answer";

    public Task<IActionResult> OnPostAsync(string? outcome, string? note)
    {
        Note = note;
        return TakeAsync(signature => station.RecordCheckAsync(signature, Job.Id, Check.Id, outcome, note), PageOf(Station.Find));
    }

    protected override async Task<IActionResult?> PrepareAsync()
    {
        if (await base.PrepareAsync() is { } refused)
            return refused;
        if (Model.Checks.FirstOrDefault(c => c.Id.Value == RouteData.Values["check"] as string) is not { } check)
            return NotFound();
        Check = check;
        return null;
    }

    protected override async Task<IActionResult?> DrawAsync()
    {
        Diagnosis = new(Model, Job.Id, Words, diagnosing.Of(Model, Job, House.Settings.Rates));
        return IsHere ? await base.DrawAsync() : LocalRedirect(PageOf(Station.Find));
    }
}
