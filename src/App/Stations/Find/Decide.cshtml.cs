using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Pages;
using Ramwright.Records.Events;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find;

/// <summary>What is worked on: remedies of the model, single parts, or nothing.</summary>
public sealed class DecidePage(Bench bench, FindStation station) : StationPage(bench, Station.Find)
{
    public ImmutableArray<RemedyChoice> Remedies { get; private set; } = [];

    /// <summary>Parts that can be asked for: those with a way off.</summary>
    public ImmutableArray<Part> Parts => Shelved.Level >= 2 ? [.. Model.Parts.Where(p => !p.WaysOff.IsEmpty && !p.IsFastener)] : [];

    public ImmutableHashSet<string> Chosen { get; private set; } = [];

    public string? Why { get; private set; }

    protected override string Title => "What to work on?";

    protected override string Eyebrow => "Find · the plan follows from what is chosen here";

    public Task<IActionResult> OnPostAsync(string[] remedy, string[] part, string? why)
    {
        (Chosen, Why) = ([.. remedy, .. part], why);
        return TakeAsync(
            signature => station.DecideAsync(signature, Job.Id, [.. part.Select(p => new NodeId(p))], [.. remedy.Select(r => new RemedyId(r))], why),
            $"/jobs/{Job.Id}/now");
    }

    public Task<IActionResult> OnPostNothingAsync(string? why)
    {
        Why = why;
        return TakeAsync(signature => station.DecideAsync(signature, Job.Id, [], [], string.IsNullOrWhiteSpace(why) ? "set and prove only" : why), $"/jobs/{Job.Id}/now");
    }

    protected override async Task<IActionResult?> DrawAsync()
    {
        Remedies = FindView.Remedies(Model, Job);
        return IsHere ? await base.DrawAsync() : LocalRedirect(PageOf(Station.Find));
    }
}
