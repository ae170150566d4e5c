using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Pages;
using Ramwright.Records.Events;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find;

/// <summary>What is to be seen, heard and felt.</summary>
public sealed class FindPage(Bench bench, FindStation station) : StationPage(bench, Station.Find)
{
    public ImmutableArray<SymptomGroup> Groups { get; private set; } = [];

    /// <summary>What was written in free words, kept when the post was refused.</summary>
    public string? Text { get; private set; }

    protected override string Title => IsHere ? "What is to be seen?" : "What was found";

    protected override string Eyebrow => Job.Opened!.What.Complaint is { Length: > 0 } complaint ? $"Find · said to be wrong: {complaint}" : "Find · sent in because it is due";

    public Task<IActionResult> OnPostAsync(string? text)
    {
        Text = text;
        ImmutableArray<SymptomId> seen = [.. Model.Symptoms.Where(s => Request.Form["s:" + s.Id] == "seen").Select(s => s.Id)];
        ImmutableArray<SymptomId> notSeen = [.. Model.Symptoms.Where(s => Request.Form["s:" + s.Id] == "not").Select(s => s.Id)];
        return TakeAsync(signature => station.RecordSeenAsync(signature, Job.Id, seen, notSeen, text), PageOf(Station.Find));
    }

    protected override Task<IActionResult?> DrawAsync()
    {
        Groups = FindView.Open(Model, Job);
        return base.DrawAsync();
    }
}
