using System.Collections.Immutable;
using Ramwright.App.Papers;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Quantities;
using Ramwright.Paper.Maps;
using Ramwright.Paper.Sheets;
using Ramwright.Planning;
using Ramwright.Planning.Map;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Plan;

/// <summary>What happens at Plan: the cheapest way to free the targets is computed and taken on.</summary>
public sealed class PlanStation(Bench bench, PaperArchive archive)
{
    /// <summary>The plan from where the job stands.</summary>
    /// <param name="kept">Targets that are only to be looked at: they are not renewed because they were asked for.</param>
    public static PlanProposal Propose(ServiceModel model, JobState job, Rates rates, IReadOnlySet<NodeId> kept)
    {
        if (job.Targets is not { What.Parts: { IsEmpty: false } targets })
            return new PlanProposal.NothingAsked();
        var answer = StripPlanner.Plan(new StripJob { Model = model, Rates = rates, Targets = targets, Done = job.Done, RenewalsOwed = job.RenewalsOwed });
        return answer switch
        {
            StripAnswer.Planned planned => new PlanProposal.Proposed(targets, job.Done, WithAsked(model, planned.Plan, targets.Where(t => !kept.Contains(t)), rates)),
            StripAnswer.NoWay none => new PlanProposal.NoWay(none.Targets),
            _ => throw new InvalidOperationException($"The planner answered with {answer.GetType().Name}."),
        };
    }

    /// <summary>How the tool goes together again after this plan.</summary>
    public static RebuildPlan? Rebuild(ServiceModel model, StripPlan plan, ImmutableHashSet<NodeId> start, Rates rates) =>
        RebuildPlanner.Plan(new RebuildJob
        {
            Model = model,
            Rates = rates,
            Done = start.Union(plan.Steps.Select(s => s.Node)),
            Renewals = plan.Renewals,
            WaysUsed = plan.Steps.Where(s => s.Way is not null).ToImmutableDictionary(s => s.Node, s => s.Way!.Value),
        }) is RebuildAnswer.Planned planned ? planned.Plan : null;

    /// <summary>Targets that the shop would renew when it has them in the hand: a remedy of the model renews them, or their rule says so.</summary>
    public static bool IsRenewedByUse(ServiceModel model, NodeId target) =>
        model.Remedies.Any(r => r.Renews.Contains(target)) || model.FindPart(target)?.Renew is RenewalRule.Always or RenewalRule.WhenDisturbed;

    /// <summary>Takes the plan on; it is computed anew, so that what is signed is what the model says now.</summary>
    public Task<ActAnswer> TakeOnAsync(Signature signature, JobId id, IReadOnlySet<NodeId> kept) => JobAtBench.ActAsync(bench, signature, id, Station.Plan, async at =>
    {
        var house = await bench.Ledger.HouseAsync();
        if (Propose(at.Model, at.Job, house.Settings.Rates, kept) is not PlanProposal.Proposed proposed)
            return ActAnswer.Refuse("", "There is no plan to take on.", "Choose what to work on first, or mend the model.");
        return await at.WriteAsync(signature,
            new StripPlanned(proposed.Targets, [.. proposed.Start.OrderBy(n => n.Value, StringComparer.Ordinal)], proposed.Plan),
            new StationReached(StationOrder.After(at.Shelved.Level, strips: true, Station.Plan), null));
    });

    /// <summary>Goes back to Find, to choose otherwise.</summary>
    public Task<ActAnswer> ChooseAgainAsync(Signature signature, JobId id) => JobAtBench.ActAsync(bench, signature, id, Station.Plan, at =>
        at.WriteAsync(signature, new StationReached(Station.Find, "other targets are to be chosen")));

    /// <summary>Prints the work sheet of the plan that stands, with how it goes together again.</summary>
    public async Task<ActAnswer> PrintWorkSheetAsync(Signature signature, JobId id)
    {
        if (await bench.Ledger.ReadAsync(id) is not { Opened: { } opened, Strip: { } strip } job || bench.Models.Find(opened.What.ModelId) is not { } shelved)
            return ActAnswer.Refuse("", "No plan was taken on yet.", "Take a plan on first: the work sheet is printed from it.");
        var house = await bench.Ledger.HouseAsync();
        var head = await bench.Ledger.HeadAsync();
        var source = new PaperSource(job, shelved.Model, house, head, bench.Clock);
        var start = strip.Planned.What.Start.ToImmutableHashSet();
        var input = PaperFiller.WorkSheet(source) with
        {
            Rebuild = job.Rebuild?.Plan ?? Rebuild(shelved.Model, strip.Plan, start, house.Settings.Rates),
            Map = StripMapPicture.Of(StripMap.Layout(shelved.Model, strip.Plan, start)),
        };
        var pdf = WorkSheet.Render(input, source.Size, source.Units);
        return await archive.IssueAsync(id, signature with { Seen = null }, ReportKind.WorkSheet, job.NextReportNumber(ReportKind.WorkSheet), pdf, head);
    }

    private static StripPlan WithAsked(ServiceModel model, StripPlan plan, IEnumerable<NodeId> asked, Rates rates)
    {
        ImmutableArray<Renewal> more =
        [
            .. asked.Where(t => IsRenewedByUse(model, t) && plan.Renewals.All(r => r.Part != t))
                .Select(model.FindPart).OfType<Part>().Select(p => new Renewal(p.Id, p.Count, RenewalCause.Asked, null)),
        ];
        if (more.IsEmpty)
            return plan;
        var price = more.Select(r => (r, model.FindPart(r.Part)!.Price)).Where(x => x.Price?.Currency == rates.LabourPerHour.Currency)
            .Aggregate(Money.Zero(rates.LabourPerHour.Currency), (sum, x) => sum + (x.r.Count * x.Price!.Value));
        return plan with
        {
            Renewals = [.. plan.Renewals, .. more],
            Cost = plan.Cost + price,
            CostParts = plan.CostParts with { Renewals = plan.CostParts.Renewals + price },
        };
    }
}
