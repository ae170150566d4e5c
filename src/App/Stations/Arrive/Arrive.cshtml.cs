using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Records.Events;

namespace Ramwright.App.Stations.Arrive;

/// <summary>The tool is made safe, one signature after the other; later the page tells how it came in.</summary>
public sealed class ArrivePage(Bench bench, ArriveStation station) : StationPage(bench, Station.Arrive)
{
    public SafetyStep? Next => IsHere ? Isolation.Next(Model, Job) : null;

    public JobOpened Opened => Job.Opened!.What;

    protected override string Title => Next?.Act ?? "Taken in and made safe";

    protected override string Eyebrow => Next is { } next
        ? $"Arrive · make it safe, {Isolation.Of(Model).IndexOf(next) + 1} of {Isolation.Of(Model).Length}"
        : $"Arrive · {At(Job.Opened!.At)}, by {House.NameOf(Job.Opened.By)}";

    public Facts Receipt => new(
    [
        new("Said to be wrong", Opened.Complaint.Length == 0 ? "nothing, it is due" : Opened.Complaint),
        new("Condition on receipt", Opened.ConditionOnReceipt),
        new("Promised for", Opened.Promised is { } day ? Words.Day(day) : "no day"),
        new("Reference", Opened.CustomerReference ?? "none", Opened.Lot is { } lot ? $"lot {lot}" : null),
    ]);

    public Task<IActionResult> OnPostAsync(string state) =>
        TakeAsync(signature => station.SignSafeAsync(signature, Job.Id, new(state ?? "")), PageAfter);

    /// <summary>The page of the station where the job is once this was signed.</summary>
    private string PageAfter(ActAnswer.Done done)
    {
        var steps = Isolation.Of(Model);
        var signed = steps.Count(s => Job.SafeStates.Exists(e => e.What.State == s.State));
        return signed + 1 >= steps.Length ? $"/jobs/{Job.Id}/now" : PageOf(Station.Arrive);
    }
}
