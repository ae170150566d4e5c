using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Pages;
using Ramwright.Records.Events;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find;

/// <summary>What is to be seen, heard and felt; what that makes likely, and what to do next.</summary>
public sealed class FindPage(Bench bench, FindStation station, Diagnosing diagnosing) : StationPage(bench, Station.Find)
{
    public ImmutableArray<SymptomGroup> Groups { get; private set; } = [];

    /// <summary>What was written in free words, kept when the post was refused.</summary>
    public string? Text { get; private set; }

    public DiagnosisView Diagnosis { get; private set; } = null!;

    /// <summary>Whether anything is written down that diagnosis weighs.</summary>
    public bool AnythingFound => Diagnosis.Answer is not Diagnosed.NoNetwork && Job.Findings.Count + Job.Measurements.Count + Job.Checks.Count + Job.Strokes.Count > 0;

    /// <summary>Whether the page says what to do next: then that is its main act.</summary>
    public bool HasNext => AnythingFound && Diagnosis.Next is { Link: not null };

    public bool TakesRecordings => Shelved.Level >= 3;

    protected override string Title => IsHere ? "What is to be seen?" : "What was found";

    protected override string Eyebrow => Job.Opened!.What.Complaint is { Length: > 0 } complaint ? $"Find · said to be wrong: {complaint}" : "Find · sent in because it is due";

    public Task<IActionResult> OnPostAsync(string? text)
    {
        Text = text;
        return TakeAsync(signature => station.RecordSeenAsync(signature, Job.Id, Marked("seen"), Marked("not"), text), PageOf(Station.Find));
    }

    protected override Task<IActionResult?> DrawAsync()
    {
        Groups = FindView.Groups(Model, Job);
        Diagnosis = new(Model, Job.Id, Words, diagnosing.Of(Model, Job, House.Settings.Rates));
        return base.DrawAsync();
    }

    private ImmutableArray<SymptomId> Marked(string answer) => [.. Model.Symptoms.Where(s => Request.Form["s:" + s.Id] == answer).Select(s => s.Id)];
}
