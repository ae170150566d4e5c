using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Records.Events;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Plan;

/// <summary>How far to strip, in which order, and what it renews.</summary>
public sealed class PlanPage(Bench bench, PlanStation station) : StationPage(bench, Station.Plan)
{
    /// <summary>What is shown: the plan taken on where there is one and the job is past, else the proposal.</summary>
    public PlanProposal Proposal { get; private set; } = new PlanProposal.NothingAsked();

    public PlanProposal.Proposed? Proposed => Proposal as PlanProposal.Proposed;

    /// <summary>Targets that are looked at and go back in.</summary>
    public ImmutableHashSet<NodeId> Kept { get; private set; } = [];

    public string? Map { get; private set; }

    protected override string Title => Proposal switch
    {
        PlanProposal.Proposed p => $"{p.Plan.Steps.Length} steps, about {Words.Show(TimeSpan.FromMinutes(Math.Round(p.Plan.LikelyTime.TotalMinutes)))}",
        PlanProposal.NoWay => "Nothing frees it",
        _ => "Nothing to strip",
    };

    protected override string Eyebrow => "Plan · " + (Job.Targets?.What.Why ?? "nothing was decided");

    protected override ImmutableArray<BlockField> MoreBlock => Proposed is { } p ? [new("Steps", $"{p.Plan.Steps.Length}", Less: true)] : [];

    public Task<IActionResult> OnPostAsync(string[] keep)
    {
        Kept = [.. keep.Select(k => new NodeId(k))];
        return TakeAsync(signature => station.TakeOnAsync(signature, Job.Id, Kept), $"/jobs/{Job.Id}/now");
    }

    public Task<IActionResult> OnPostAgainAsync() => TakeAsync(signature => station.ChooseAgainAsync(signature, Job.Id), PageOf(Station.Find) + "/decide");

    public Task<IActionResult> OnPostSheetAsync() => TakeAsync(signature => station.PrintWorkSheetAsync(signature, Job.Id), $"/jobs/{Job.Id}");

    protected override Task<IActionResult?> DrawAsync()
    {
        Proposal = !IsHere && Job.Strip is { } strip
            ? new PlanProposal.Proposed(strip.Planned.What.Targets, [.. strip.Planned.What.Start], strip.Plan)
            : PlanStation.Propose(Model, Job, House.Settings.Rates, Kept);
        if (Proposed is { } proposed)
            Map = ScreenMap.Of(Model, proposed.Plan, proposed.Start);
        return base.DrawAsync();
    }
}
