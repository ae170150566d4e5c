using System.Collections.Immutable;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;
using Ramwright.Setting;

namespace Ramwright.App.Stations.Set;

/// <summary>What happens at Set: a full run is read, the screw is turned by the advised angle, locked, and the job goes on to Prove.</summary>
public sealed class SetStation(Web.Pages.Bench bench)
{
    private const double LargestTurnTurns = 3;

    /// <summary>The advice after the runs so far, under the house's limit for passing the maximum.</summary>
    public static SettingAdvice Advise(JobState job, ServiceModel model, double largestChancePastMaximum) =>
        SettingAdvisor.Advise(model, [.. job.Setting.Runs.Select(r => r.Run)], new SettingOptions { LargestChancePastMaximum = largestChancePastMaximum });

    /// <summary>A full run was read. Above the maximum the tool is quarantined with the same entry.</summary>
    public async Task<ActAnswer> ReadAsync(JobState job, ServiceModel model, Signature sign, Pressure peak, InstrumentId? instrument)
    {
        if (peak.Bar is not (> 0 and <= 2000))
            return ActAnswer.Refuse("Peak", $"{peak.Bar:0.#} bar is no peak of such a tool.", "Write the peak that the device shows, above 0 and at most 2,000 bar.");
        var events = ImmutableArray.Create<JobEvent>(new SettingPeakRead(peak, instrument));
        if (peak > model.Limits.Maximum)
            events = events.Add(new ToolQuarantined(peak, model.Limits.Maximum));
        return ActAnswer.Of(await bench.Ledger.AppendOnceAsync(sign.Token, sign.By, job.Id, sign.Seen, events));
    }

    /// <summary>The screw was turned; clockwise is positive.</summary>
    public async Task<ActAnswer> TurnAsync(JobState job, Signature sign, Angle turn)
    {
        if (turn.Radians == 0 || Math.Abs(turn.Turns) > LargestTurnTurns)
            return ActAnswer.Refuse("Turn", "A turn is more than nothing and at most three full turns.", "Write how far the screw was really turned, in degrees or twelfths.");
        return ActAnswer.Of(await bench.Ledger.AppendOnceAsync(sign.Token, sign.By, job.Id, sign.Seen, new ReliefTurned(turn)));
    }

    /// <summary>The screw was locked; a check run follows before the proof.</summary>
    public async Task<ActAnswer> LockAsync(JobState job, Signature sign) =>
        ActAnswer.Of(await bench.Ledger.AppendOnceAsync(sign.Token, sign.By, job.Id, sign.Seen, new ReliefLocked()));

    /// <summary>On to Prove: only with the screw locked and no quarantine standing.</summary>
    public async Task<ActAnswer> FinishAsync(JobState job, Signature sign)
    {
        if (job.Quarantine is not null)
            return ActAnswer.Refuse("", "The tool went above its maximum and is quarantined.", "Have the frame inspected and record it, or end the job.");
        if (job.Setting.Locked is null)
            return ActAnswer.Refuse("", "The relief screw is not locked yet.", "Lock the screw and sign it, then run once more: locking may move the setting.");
        return ActAnswer.Of(await bench.Ledger.AppendOnceAsync(sign.Token, sign.By, job.Id, sign.Seen, new StationReached(Station.Prove, null)));
    }

    /// <summary>Back to Find, because the screw does not answer as it should.</summary>
    public async Task<ActAnswer> BackToFindAsync(JobState job, Signature sign, string why) => string.IsNullOrWhiteSpace(why)
        ? ActAnswer.Refuse("Why", "No reason was given.", "Say in a few words why the job goes back.")
        : ActAnswer.Of(await bench.Ledger.AppendOnceAsync(sign.Token, sign.By, job.Id, sign.Seen, new StationReached(Station.Find, why.Trim())));

    /// <summary>The frame was inspected after a run above the maximum.</summary>
    public async Task<ActAnswer> LiftQuarantineAsync(JobState job, Signature sign, string inspection) => string.IsNullOrWhiteSpace(inspection)
        ? ActAnswer.Refuse("Inspection", "What was inspected is not said.", "Write what was looked at and found: frame, head, latch, for cracks and set.")
        : ActAnswer.Of(await bench.Ledger.AppendOnceAsync(sign.Token, sign.By, job.Id, sign.Seen, new QuarantineLifted(inspection.Trim())));
}
