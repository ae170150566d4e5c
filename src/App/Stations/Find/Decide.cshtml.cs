using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Records.Events;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find;

/// <summary>What is worked on: remedies of the model, single parts, or nothing.</summary>
public sealed class DecidePage(Bench bench, FindStation station, Diagnosing diagnosing) : StationPage(bench, Station.Find)
{
    public ImmutableArray<RemedyChoice> Remedies { get; private set; } = [];

    /// <summary>Remedies that are advised, chosen, or mend something with 10 % or more; all of them where nothing was weighed.</summary>
    public ImmutableArray<RemedyChoice> Likely => [.. Remedies.Where(IsLikely)];

    public ImmutableArray<RemedyChoice> Unlikely => [.. Remedies.Where(r => !IsLikely(r))];

    /// <summary>Parts that can be asked for: those with a way off.</summary>
    public ImmutableArray<Part> Parts => Shelved.Level >= 2 ? [.. Model.Parts.Where(p => !p.WaysOff.IsEmpty && !p.IsFastener)] : [];

    public ImmutableHashSet<string> Chosen { get; private set; } = [];

    public string? Why { get; private set; }

    public DiagnosisView Diagnosis { get; private set; } = null!;

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
        var diagnosed = diagnosing.Of(Model, Job, House.Settings.Rates);
        Diagnosis = new(Model, Job.Id, Words, diagnosed);
        Remedies = FindView.Remedies(Model, Job, diagnosed);
        if (HttpMethods.IsGet(Request.Method))
            Propose(Request.Query["remedy"]);
        return IsHere ? await base.DrawAsync() : LocalRedirect(PageOf(Station.Find));
    }

    /// <summary>What the advice came with stands ticked, with words for the report: one press carries it into the plan.</summary>
    private void Propose(string? remedy)
    {
        var proposed = Remedies.Where(r => r.Advised || r.Remedy.Id.Value == remedy).ToList();
        Chosen = [.. proposed.Select(r => r.Remedy.Id.Value)];
        if (proposed.Count > 0)
            Why = string.Join(", ", Diagnosis.Faults.Take(2).Where(f => f.Width >= 30).Select(f => $"{Sentence.Tail(f.Name)} ({f.Percent})"));
    }

    private bool IsLikely(RemedyChoice choice) => choice.Mends is null or >= 0.1 || choice.Advised || Chosen.Contains(choice.Remedy.Id.Value);
}
