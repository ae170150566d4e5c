using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Strip;

/// <summary>The job as it stands after an inspection went badly, and what must be renewed because of it.</summary>
public sealed record Replanned(StripJob Job, ImmutableArray<Renewal> Renewals);

/// <summary>Turns what was found on the bench into a new job from where the tool stands.</summary>
public static class Replan
{
    /// <summary>The same job once the first steps of its plan are done: parts off, renewals they brought about, tool in hand, posture.</summary>
    /// <param name="stepsDone">How many steps of <paramref name="plan"/> are done, from the first; 0 to all of them.</param>
    public static StripJob AfterSteps(StripJob job, StripPlan plan, int stepsDone)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(stepsDone);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(stepsDone, plan.Steps.Length);
        var steps = plan.Steps.AsSpan(0, stepsDone).ToArray();
        return job with
        {
            Done = job.Done.Union(steps.Select(s => s.Node)),
            RenewalsOwed = job.RenewalsOwed.Union(steps.SelectMany(s => s.Renewals).Select(r => r.Part)),
            ToolInHand = steps.LastOrDefault(s => s.Tool is not null)?.Tool ?? job.ToolInHand,
            Posture = steps.LastOrDefault(s => s.Posture is not null)?.Posture ?? job.Posture,
        };
    }

    /// <summary>The job that is left after an inspection with a bad outcome.</summary>
    /// <param name="job">The job that was being worked on; <see cref="AfterSteps"/> brings it up to date.</param>
    /// <param name="done">Parts off and states reached by now, beyond those of the job.</param>
    /// <param name="part">The part inspected.</param>
    /// <param name="bad">Its inspection that came out badly.</param>
    /// <exception cref="ArgumentException">The model has no such part or inspection: a bug in the caller.</exception>
    public static Replanned AfterInspection(StripJob job, ImmutableHashSet<NodeId> done, NodeId part, InspectionId bad)
    {
        var inspected = job.Model.FindPart(part) ?? throw new ArgumentException($"The model has no part '{part}'.", nameof(part));
        var inspection = inspected.Inspections.FirstOrDefault(i => i.Id == bad)
            ?? throw new ArgumentException($"'{part}' has no inspection '{bad}'.", nameof(bad));
        var renews = inspection.RenewsWhenBad is [] ? [part] : inspection.RenewsWhenBad;
        var renewals = renews.Distinct().Where(id => !job.RenewalsOwed.Contains(id))
            .Select(id => new Renewal(id, job.Model.FindPart(id)?.Count ?? 1, RenewalCause.FailedInspection, part));
        return new Replanned(
            job with
            {
                Done = job.Done.Union(done),
                Targets = [.. job.Targets.Concat(inspection.AddsWhenBad).Distinct()],
                RenewalsOwed = job.RenewalsOwed.Union(renews),
            },
            [.. renewals]);
    }
}
