using Ramwright.App.Devices;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving.Reference;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;
using Ramwright.Setting;

namespace Ramwright.App.Stations.Set;

/// <summary>What happens at Set: a full run is read, the screw is turned by the advised angle, locked, and the job goes on to Prove.</summary>
public sealed class SetStation(Bench bench)
{
    private const double MostTurns = 12;

    /// <summary>The advice after the runs so far, under the house's limit for passing the maximum.</summary>
    public static SettingAdvice Advise(JobState job, ServiceModel model, double largestChancePastMaximum) =>
        SettingAdvisor.Advise(model, [.. job.Setting.Runs.Select(r => r.Run with { Locked = r.Read.Number > job.Setting.Locked?.Number })], new SettingOptions { LargestChancePastMaximum = largestChancePastMaximum });

    /// <summary>A full run was read. Above the maximum the tool is quarantined with the same entry.</summary>
    /// <param name="shown">As the instrument shows it: corrected as a proof will be, so that what is set is what is proved.</param>
    public Task<ActAnswer> ReadAsync(Signature signature, JobId id, Pressure shown, InstrumentId? instrument) => AtSet(signature, id, async at =>
    {
        var correction = instrument is { } read ? await CorrectionOfAsync(at, read) : null;
        var peak = correction?.Correct(shown) ?? shown;
        if (ReadingCheck.Of(peak, at.Model.Limits) is ReadingCheck.Implausible(var what, var mend))
            return ActAnswer.Refuse("peak", Sentence(what), Sentence(mend));
        JobEvent[] events = [new SettingPeakRead(peak, instrument) { Shown = correction is null ? null : shown }];
        if (peak > at.Model.Limits.Maximum && at.Job.Quarantine is null)
            events = [.. events, new ToolQuarantined(peak, at.Model.Limits.Maximum)];
        return await at.WriteAsync(signature, events);
    });

    private async Task<ReadingCorrection?> CorrectionOfAsync(JobAtBench at, InstrumentId id) =>
        (await bench.Ledger.HouseAsync()).Find(id) is { } instrument && DeviceFit.Of(instrument, at.Model, bench.Today) is DeviceFit.Fits { Budget.Correction: { Changes: true } correction } ? correction : null;

    /// <summary>The screw was turned; clockwise is positive.</summary>
    public Task<ActAnswer> TurnAsync(Signature signature, JobId id, Angle turn) => AtSet(signature, id, at => turn.Radians == 0 || Math.Abs(turn.Turns) > MostTurns
        ? Refused("turn", "A turn is more than nothing and at most twelve full turns.", "Write how far the screw was really turned.")
        : at.WriteAsync(signature, new ReliefTurned(turn)));

    /// <summary>The screw was locked; a check run follows before the proof.</summary>
    public Task<ActAnswer> LockAsync(Signature signature, JobId id) => AtSet(signature, id, at => at.Job.Setting.Runs.IsEmpty
        ? Refused("", "No run was read yet.", "Run and read first: the setting is not known.")
        : at.WriteAsync(signature, new ReliefLocked()));

    /// <summary>On to Prove: only with the screw locked, one run read since, and no quarantine standing.</summary>
    public Task<ActAnswer> FinishAsync(Signature signature, JobId id) => AtSet(signature, id, at => at.Job switch
    {
        { Quarantine: not null } => Refused("", "The tool went above its maximum and is quarantined.", "Have the frame inspected and record it, or end the job."),
        { Setting.Locked: null } => Refused("", "The relief screw is not locked yet.", "Lock the screw and sign it, then run once more: locking may move the setting."),
        { Setting: { Locked: { } locked, Runs: var runs } } when !runs.Exists(r => r.Read.Number > locked.Number) => Refused("", "No run was read since the screw was locked.", "Run once more: locking may have moved the setting."),
        _ => at.WriteAsync(signature, new StationReached(Station.Prove, null)),
    });

    /// <summary>Back to Find, because the screw does not answer as it should.</summary>
    public Task<ActAnswer> BackToFindAsync(Signature signature, JobId id, string? why) => AtSet(signature, id, at => string.IsNullOrWhiteSpace(why)
        ? Refused("why", "No reason was given.", "Say in a few words why the job goes back.")
        : at.WriteAsync(signature, new StationReached(Station.Find, why.Trim())));

    /// <summary>The frame was inspected after a run above the maximum.</summary>
    public Task<ActAnswer> LiftQuarantineAsync(Signature signature, JobId id, string? inspection) => AtSet(signature, id, at => string.IsNullOrWhiteSpace(inspection)
        ? Refused("inspection", "What was inspected is not said.", "Write what was looked at and found: frame, head, latch, for cracks and set.")
        : at.WriteAsync(signature, new QuarantineLifted(inspection.Trim())));

    private Task<ActAnswer> AtSet(Signature signature, JobId id, Func<JobAtBench, Task<ActAnswer>> act) => JobAtBench.ActAsync(bench, signature, id, Station.Set, act);

    private static string Sentence(string words) => char.ToUpperInvariant(words[0]) + words[1..] + ".";

    private static Task<ActAnswer> Refused(string field, string what, string mend) => Task.FromResult(ActAnswer.Refuse(field, what, mend));
}
