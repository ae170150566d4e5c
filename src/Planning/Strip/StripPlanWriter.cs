using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Strip.Ways;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Strip;

/// <summary>Writes out a plan from the ways chosen, in order: steps with their reasons, and all that follows from them.</summary>
internal sealed class StripPlanWriter(StripJob job, EffectiveWays ways)
{
    private readonly List<StripStep> steps = [];
    private readonly List<WorkTime> times = [];
    private readonly HashSet<NodeId> renewed = [.. job.RenewalsOwed];
    private readonly HashSet<NodeId> done = [.. job.Done, .. ways.Given];
    private readonly Dictionary<NodeId, HashSet<NodeId>> allBefore = [];
    private ToolId? tool = job.ToolInHand;
    private PostureId? posture = job.Posture;

    public StripPlan Write(ImmutableArray<EffectiveWay> order, WayPlan found)
    {
        foreach (var way in order)
            allBefore[way.Node] = [.. way.Needs, .. way.Needs.SelectMany(n => allBefore.GetValueOrDefault(n, []))];
        for (var i = 0; i < order.Length; i++)
            steps.Add(Step(order[i], order.AsSpan()[(i + 1)..]));
        var estimate = TimeEstimate.Of(times, job.Rates.SharedSpread);
        var cost = CostOf(order);
        return new StripPlan
        {
            Steps = [.. steps],
            Renewals = [.. steps.SelectMany(s => s.Renewals)],
            Inspections = [.. steps.SelectMany((s, i) => s.Inspections.Select(id => new PassedInspection(s.Node, id, i)))],
            Tools = [.. steps.Select(s => s.Tool).OfType<ToolId>().Distinct()],
            States = [.. steps.Where(s => s.Way is null).Select(s => s.Node)],
            OilLost = Volume.FromMillilitres(order.Sum(w => job.Model.FindState(w.Node)?.Loses?.Millilitres ?? 0)),
            LikelyTime = estimate.Likely,
            SafeTime = estimate.Safe,
            Cost = cost.Labour + cost.Renewals + cost.Risk,
            CostParts = cost,
            ProvenOptimal = found.LowerBound >= found.Cost,
            Gap = Amount(CostScale.Amount(found.Cost - found.LowerBound)),
            StatesSearched = found.States,
        };
    }

    private StripStep Step(EffectiveWay way, ReadOnlySpan<EffectiveWay> later)
    {
        var part = job.Model.FindPart(way.Node);
        var change = TimeSpan.Zero;
        if (way.Tool is { } taken && taken != tool)
            change += job.Rates.ChangeTime(job.Model, (tool = taken).Value);
        if (way.Posture is { } turned && turned != posture)
            change += job.Rates.ChangeTime(job.Model, (posture = turned).Value);
        var laidOpen = LaidOpenBy(way.Node);
        times.Add(new WorkTime(way.Time, way.TimeSpread ?? job.Rates.StepSpread));
        times.Add(new WorkTime(change, job.Rates.StepSpread));
        return new StripStep
        {
            Node = way.Node,
            Way = way.Index,
            Operation = way.Index is { } index ? OperationText.Off(part!, part!.WaysOff[index])
                : OperationText.Capital(job.Model.FindState(way.Node)!.Reach!.Text),
            Tool = way.Tool,
            Posture = way.Posture,
            Time = way.Time,
            ChangeTime = change,
            Cautions = way.Cautions,
            Why = ReasonFor(way.Node, later),
            Renewals = [.. way.Renews.Concat(laidOpen).Where(r => renewed.Add(r.Part))],
            Inspections = part is null ? [] : [.. part.Inspections.Select(i => i.Id)],
        };
    }

    /// <summary>Parts always renewed that this step lays open, in place still.</summary>
    private List<Renewal> LaidOpenBy(NodeId node)
    {
        done.Add(node);
        return [.. from part in ways.LaidOpen
                   where !done.Contains(part.Renewal.Part) && part.Needs.Contains(node) && part.Needs.All(done.Contains)
                   select part.Renewal with { By = node }];
    }

    private StepReason ReasonFor(NodeId node, ReadOnlySpan<EffectiveWay> later)
    {
        if (job.Targets.Contains(node))
            return new StepReason.Target();
        var freed = ImmutableArray.CreateBuilder<NodeId>();
        foreach (var way in later)
        {
            if (way.Needs.Contains(node) && !way.Needs.Any(n => allBefore.GetValueOrDefault(n, []).Contains(node)))
                freed.Add(way.Node);
        }

        return new StepReason.InTheWayOf(freed.DrainToImmutable());
    }

    private PlanCost CostOf(ImmutableArray<EffectiveWay> order) => new(
        job.Rates.CostOf(steps.Aggregate(TimeSpan.Zero, (sum, s) => sum + s.Time + s.ChangeTime)),
        Amount(steps.SelectMany(s => s.Renewals).Sum(r => ways.PriceOf(r.Part))),
        Amount(order.Sum(w => w.Risk is { } risk ? (decimal)risk.Chance * risk.Damages.Sum(ways.PriceOf) : 0m)));

    private Money Amount(decimal amount) => new(amount, job.Rates.LabourPerHour.Currency);
}
