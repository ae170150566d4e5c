using System.Collections.Immutable;
using Ramwright.Planning;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.Records.Events;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Strip;

/// <summary>From where the rebuild starts, gathered from all plans that this opening of the tool went through.</summary>
public static class WayBack
{
    public static RebuildJob Of(JobState job, ServiceModel model, Rates rates)
    {
        ArgumentNullException.ThrowIfNull(job);
        var renewals = new Dictionary<NodeId, Renewal>();
        var ways = ImmutableDictionary.CreateBuilder<NodeId, int>();
        StripPlan? plan = null;
        foreach (var entry in job.History.Where(e => !job.Corrected.Contains(e.Number)))
        {
            if (entry.What is StripPlanned planned)
                plan = planned.Plan;
            else if (entry.What is StripStepSigned signed && plan is not null && signed.Step < plan.Steps.Length)
                Take(plan.Steps[signed.Step], renewals, ways);
            else if (entry.What is InspectionAnswered { Good: false } bad)
                Renew(model, bad, renewals);
        }

        foreach (var renewal in plan?.Renewals.Where(r => r.By is null) ?? [])
            renewals.TryAdd(renewal.Part, renewal);
        return new RebuildJob
        {
            Model = model,
            Rates = rates,
            Done = job.Done,
            Renewals = [.. renewals.Values],
            WaysUsed = ways.ToImmutable(),
        };
    }

    private static void Take(StripStep step, Dictionary<NodeId, Renewal> renewals, ImmutableDictionary<NodeId, int>.Builder ways)
    {
        foreach (var renewal in step.Renewals)
            renewals.TryAdd(renewal.Part, renewal);
        if (step.Way is { } way)
            ways[step.Node] = way;
    }

    private static void Renew(ServiceModel model, InspectionAnswered bad, Dictionary<NodeId, Renewal> renewals)
    {
        var inspection = model.FindPart(bad.Part)?.Inspections.FirstOrDefault(i => i.Id == bad.Inspection);
        ImmutableArray<NodeId> parts = inspection is { RenewsWhenBad: { IsEmpty: false } named } ? named : [bad.Part];
        foreach (var part in parts)
            renewals.TryAdd(part, new Renewal(part, model.FindPart(part)?.Count ?? 1, RenewalCause.FailedInspection, bad.Part));
    }
}
