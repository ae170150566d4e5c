using System.Collections.Immutable;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Quantities;
using Ramwright.Planning.Rebuild;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.App.Stations.Rebuild;

/// <summary>What happens at Rebuild: steps are signed in their order; where a torque is asked the figure applied and the wrench are the answer.</summary>
public sealed class RebuildStation(Bench bench)
{
    /// <summary>The next step was done.</summary>
    /// <param name="step">0-based.</param>
    /// <param name="applied">The torque that was applied, where the step has one.</param>
    /// <param name="wrench">With which wrench; an overdue one signs nothing.</param>
    public Task<ActAnswer> SignAsync(Signature signature, JobId id, int step, Torque? applied, InstrumentId? wrench, ImmutableArray<BatchUse> batches, string? note) => AtRebuild(signature, id, async at =>
    {
        if (at.Job.Rebuild is not { Next: { } next } rebuild)
            return ActAnswer.Refuse("", "Every step of the plan is signed.", "Go on to Set.");
        if (step != next)
            return ActAnswer.Refuse("", $"Step {next + 1} is the next, not step {step + 1}.", "Look at the page as it stands now.");
        var house = await bench.Ledger.HouseAsync();
        if (TorqueRefused(rebuild.Plan.Steps[step], applied, wrench, house, bench.Today) is { } refused)
            return refused;
        if (batches.Select(b => house.Find(b.Batch)).FirstOrDefault(b => b?.Expires is { } last && last < bench.Today) is { } expired)
            return ActAnswer.Refuse("Batch", $"Batch {expired.Batch} expired on {expired.Expires:d MMM yyyy}.", "Take one that has not expired; scrap this one.");
        return await at.WriteAsync(signature, new RebuildStepSigned(step, applied, wrench, batches, string.IsNullOrWhiteSpace(note) ? null : note.Trim()));
    });

    /// <summary>The last signed step no longer counts; both entries stay readable.</summary>
    public Task<ActAnswer> UndoAsync(Signature signature, JobId id, string? why) => AtRebuild(signature, id, at =>
        at.Job.Rebuild is not { Signed: { Count: > 0 } signed }
            ? Task.FromResult(ActAnswer.Refuse("", "No step of this plan is signed yet.", "There is nothing to undo."))
            : at.WriteAsync(signature, new EntryCorrected(signed.Values.MaxBy(e => e.Number)!.Number, string.IsNullOrWhiteSpace(why) ? "signed by mistake" : why.Trim())));

    /// <summary>A note for the next technician.</summary>
    public Task<ActAnswer> NoteAsync(Signature signature, JobId id, string? text) => AtRebuild(signature, id, at => string.IsNullOrWhiteSpace(text)
        ? Task.FromResult(ActAnswer.Refuse("Note", "The note is empty.", "Write what the next technician should know."))
        : at.WriteAsync(signature, new NoteWritten(Station.Rebuild, text.Trim())));

    /// <summary>Every step signed: on to Set.</summary>
    public Task<ActAnswer> FinishAsync(Signature signature, JobId id) => AtRebuild(signature, id, at => at.Job.Rebuild is { Next: { } next }
        ? Task.FromResult(ActAnswer.Refuse("", $"Step {next + 1} is not signed yet.", "Sign it first: the tool is not run half built."))
        : at.WriteAsync(signature, new StationReached(Station.Set, null)));

    private static ActAnswer? TorqueRefused(RebuildStep step, Torque? applied, InstrumentId? wrench, HouseState house, DateOnly today)
    {
        if (step.Torque is not { } asked)
            return null;
        var words = new Words(house.Settings.Units);
        var band = asked.Tolerance * asked.Torque;
        if (applied is not { } torque)
            return ActAnswer.Refuse("applied", "This step is answered by the torque applied.", $"Write the figure that the wrench showed; {words.Show(asked.Torque)} is asked.");
        if (torque < asked.Torque - band || torque > asked.Torque + band)
            return ActAnswer.Refuse("applied", $"{words.Show(torque)} lies outside {words.Show(asked.Torque - band)} to {words.Show(asked.Torque + band)}.", "Loosen it, tighten it again, and write what the wrench shows then.");
        if (wrench is not { } id || house.Find(id) is not { } instrument)
            return ActAnswer.Refuse("wrench", "Which torque wrench was used is not said.", "Choose it from the list of instruments.");
        return instrument switch
        {
            { Facts.Kind: not InstrumentKind.TorqueWrench } => ActAnswer.Refuse("wrench", $"{id} is no torque wrench.", "Choose the wrench that was used."),
            { Facts.InUse: false } => ActAnswer.Refuse("wrench", $"Wrench {id} is withdrawn from use: a torque signed with it is void.", "Use one whose calibration is valid, and tighten again."),
            _ when instrument.IsDueOn(today) => ActAnswer.Refuse("wrench", $"Wrench {id} is overdue for calibration: a torque signed with it is void.", "Use one whose calibration is valid, and tighten again."),
            { Facts.Range: { AsTorque: { } range } } when torque > range => ActAnswer.Refuse("wrench", $"Wrench {id} ends at {words.Show(range)}: beyond its range its torque is void.", "Use a larger one, and tighten again."),
            _ => null,
        };
    }

    private Task<ActAnswer> AtRebuild(Signature signature, JobId id, Func<JobAtBench, Task<ActAnswer>> act) => JobAtBench.ActAsync(bench, signature, id, Station.Rebuild, act);
}
