using System.Collections.Immutable;
using Ramwright.App.Web.Pages;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Strip;

/// <summary>What happens at Strip: steps are signed in their order, parts inspected, the plan made anew where an inspection goes badly, and the way back planned.</summary>
public sealed class StripStation(Bench bench)
{
    /// <summary>The next step was done.</summary>
    /// <param name="step">0-based; another than the next is refused: the page was drawn before somebody else signed.</param>
    public Task<ActAnswer> SignAsync(Signature signature, JobId id, int step, MeasuredValue? value, string? note) => AtStrip(signature, id, at =>
    {
        if (at.Job.Strip is not { Next: { } next } strip)
            return Refused("Every step of the plan is signed.", "Go on to Rebuild.");
        if (OpenInspections(at.Job, at.Model).FirstOrDefault() is { } open)
            return Refused($"An inspection waits: {open.Inspection.Look}.", "Answer it first: its outcome may change what comes off next.");
        return step != next
            ? Refused($"Step {next + 1} is the next, not step {step + 1}.", "Look at the page as it stands now.")
            : at.WriteAsync(signature, new StripStepSigned(step, strip.Plan.Steps[step].Node, value, Trimmed(note)));
    });

    /// <summary>A part was looked at. A bad outcome is recorded together with the plan that follows from it.</summary>
    public Task<ActAnswer> InspectAsync(Signature signature, JobId id, NodeId part, InspectionId inspection, bool good, MeasuredValue? measured, string? note) => AtStrip(signature, id, async at =>
    {
        if (!OpenInspections(at.Job, at.Model).Any(o => o.Part == part && o.Inspection.Id == inspection))
            return ActAnswer.Refuse("", "That inspection is answered already, or not due yet.", "Look at the page as it stands now.");
        var answered = new InspectionAnswered(inspection, part, good, measured, Trimmed(note));
        if (good)
            return await at.WriteAsync(signature, answered);
        var settings = (await bench.Ledger.HouseAsync()).Settings;
        var job = new StripJob
        {
            Model = at.Model,
            Rates = settings.Rates,
            Targets = at.Job.Strip!.Planned.What.Targets,
            Done = at.Job.Done,
            RenewalsOwed = at.Job.RenewalsOwed,
        };
        var after = Replan.AfterInspection(job, [], part, inspection).Job;
        return StripPlanner.Plan(after) switch
        {
            StripAnswer.Planned planned => await at.WriteAsync(signature, answered, new StripPlanned(after.Targets, [.. after.Done], planned.Plan)),
            StripAnswer.NoWay none => ActAnswer.Refuse("", $"Nothing frees {string.Join(", ", none.Targets.Select(t => at.Model.NameOf(t.Target)))}.", "Write a note, and end the job as the customer agrees."),
            _ => throw new InvalidOperationException("An answer is a plan or none."),
        };
    });

    /// <summary>The last signed step no longer counts; both entries stay readable.</summary>
    public Task<ActAnswer> UndoAsync(Signature signature, JobId id, string? why) => AtStrip(signature, id, at =>
        at.Job.Strip is not { Signed: { Count: > 0 } signed }
            ? Refused("No step of this plan is signed yet.", "There is nothing to undo.")
            : at.WriteAsync(signature, new EntryCorrected(signed.Values.MaxBy(e => e.Number)!.Number, Trimmed(why) ?? "signed by mistake")));

    /// <summary>A note for the next technician.</summary>
    public Task<ActAnswer> NoteAsync(Signature signature, JobId id, string? text) => AtStrip(signature, id, at =>
        Trimmed(text) is { } words ? at.WriteAsync(signature, new NoteWritten(Station.Strip, words)) : Refused("The note is empty.", "Write what the next technician should know."));

    /// <summary>Every step signed and every inspection answered: the way back is planned and the job goes to Rebuild.</summary>
    public Task<ActAnswer> FinishAsync(Signature signature, JobId id) => AtStrip(signature, id, async at =>
    {
        if (at.Job.Strip is { Next: { } next })
            return ActAnswer.Refuse("", $"Step {next + 1} is not signed yet.", "Sign it, or undo and plan anew.");
        if (OpenInspections(at.Job, at.Model).FirstOrDefault() is { } open)
            return ActAnswer.Refuse("", $"An inspection waits: {open.Inspection.Look}.", "Answer it first.");
        var settings = (await bench.Ledger.HouseAsync()).Settings;
        return RebuildPlanner.Plan(WayBack.Of(at.Job, at.Model, settings.Rates)) switch
        {
            RebuildAnswer.Planned planned => await at.WriteAsync(signature, new RebuildPlanned([.. at.Job.Done], planned.Plan), new StationReached(Station.Rebuild, null)),
            RebuildAnswer.Circle circle => ActAnswer.Refuse("", $"The model gives no order in which these go back: {string.Join(", ", circle.Nodes.Select(at.Model.NameOf))}.", "Mend the fits of the model, then finish again."),
            _ => throw new InvalidOperationException("An answer is a plan or a circle."),
        };
    });

    /// <summary>Inspections that the signed steps have made possible and nobody has answered yet, in the order of the steps.</summary>
    public static ImmutableArray<OpenInspection> OpenInspections(JobState job, ServiceModel model)
    {
        if (job.Strip is not { } strip)
            return [];
        var answered = job.Inspections.Select(i => i.What.Inspection).ToHashSet();
        return
        [
            .. strip.Signed.Keys.Where(i => i < strip.Plan.Steps.Length)
                .SelectMany(i => strip.Plan.Inspections.Where(p => p.AfterStep == i))
                .Where(p => !answered.Contains(p.Inspection))
                .Select(p => (p.Part, Inspection: model.FindPart(p.Part)?.Inspections.FirstOrDefault(x => x.Id == p.Inspection)))
                .Where(p => p.Inspection is not null)
                .Select(p => new OpenInspection(p.Part, p.Inspection!)),
        ];
    }

    private Task<ActAnswer> AtStrip(Signature signature, JobId id, Func<JobAtBench, Task<ActAnswer>> act) => JobAtBench.ActAsync(bench, signature, id, Station.Strip, act);

    private static Task<ActAnswer> Refused(string what, string mend) => Task.FromResult(ActAnswer.Refuse("", what, mend));

    private static string? Trimmed(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}

/// <summary>An inspection that waits for its answer.</summary>
public sealed record OpenInspection(NodeId Part, Inspection Inspection);
