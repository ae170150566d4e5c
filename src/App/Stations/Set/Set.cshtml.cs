using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Devices;
using Ramwright.App.Stations.Prove;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Quantities;
using Ramwright.Paper.Charts;
using Ramwright.Paper.Drawing;
using Ramwright.Proving.Reference;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Setting;

namespace Ramwright.App.Stations.Set;

/// <summary>Run, read, turn by the advised angle, run again; lock, and check once more.</summary>
public sealed class SetPage(Bench bench, SetStation station, SimulatedBench devices) : StationPage(bench, Station.Set)
{
    public SettingAdvice Advice { get; private set; } = null!;

    public string? Peak { get; private set; }

    public string? Turn { get; private set; }

    public string? Chart { get; private set; }

    public bool IsLocked => Job.Setting.Locked is not null;

    public bool CheckedSinceLock => Job.Setting.Locked is { } locked && Job.Setting.Runs.Exists(r => r.Read.Number > locked.Number);

    /// <summary>What the bench waits for: a run, a turn, the lock, the check run, or to go on.</summary>
    public bool WantsRun => Advice.Outcome == SettingOutcome.RunFirst || !RanSinceTurn || (IsLocked && !CheckedSinceLock);

    private bool RanSinceTurn => Job.Setting.Runs is [.., var last] && (Job.Setting.Turns is not [.., var turn] || last.Read.Number > turn.Number);

    public string AdvisedDegrees => Advice.Turn.Degrees.ToString("0", CultureInfo.InvariantCulture);

    public ImmutableArray<Option> Instruments => DeviceChoice.Of(House, Model, Bench.Today);

    public bool HasSimulated => DeviceChoice.Simulated(House, Model) is not null;

    protected override string Title =>
        !IsHere ? "Set, as it was done"
        : Job.Quarantine is not null ? "Quarantined"
        : WantsRun ? (IsLocked ? "Check once more" : Job.Setting.Runs.IsEmpty ? "Run, and read the peak" : "Run again")
        : IsLocked && Advice.Outcome != SettingOutcome.Turn ? "Set and locked"
        : Advice.Outcome switch
        {
            SettingOutcome.In => "Stop: lock the screw",
            SettingOutcome.GoToFind => "The screw does not answer",
            SettingOutcome.ScatterTooLarge => "The scatter is too large",
            SettingOutcome.NoTurnHelps => "No turn helps",
            SettingOutcome.AskBack => "A reading must be looked at",
            _ => $"Turn {SettingWords.Way(Advice.Direction)} {AdvisedDegrees}°",
        };

    protected override string Eyebrow => $"Set · wants {Words.Show(Model.Limits.Nominal)}, limits {Words.Show(Model.Limits.Pressure)}, maximum {Words.Show(Model.Limits.Maximum)}";

    protected override ImmutableArray<BlockField> MoreBlock => [new("Runs", $"{Job.Setting.Runs.Count}", Less: true)];

    public Facts AdviceFacts => new(
    [
        .. TurnFact,
        new("Expected mean", Advice.PredictedMean is { } mean ? Words.Show(mean) : "not known", Advice.PredictedInterval is { } interval ? $"95 % within {Words.Show(interval)}" : null),
        new("In the window", Advice.ChanceInWindow is { } inside ? Words.Chance(inside) : "not known", Advice.NextRun is { } run ? $"a single run reads {Words.Show(run)}" : null),
        new("Past the maximum", Advice.ChancePastMaximum is { } past ? Words.Chance(past) : "not known"),
    ]);

    /// <summary>How far to turn, as a workshop counts it; nothing where the screw stays.</summary>
    private IEnumerable<Fact> TurnFact
    {
        get
        {
            if (Advice.Direction != TurnDirection.Stop)
                yield return new("Turn", $"{SettingWords.Way(Advice.Direction)} {Twelfths.Text(Advice.Turn)}");
        }
    }

    /// <summary>Where to put the screw before the first run, when the tool was rebuilt; null otherwise.</summary>
    public string? FirstTurn => Job.Setting.Runs.IsEmpty && Job.Rebuild is not null
        ? SettingWords.First(FirstSetting.AfterRebuild(Model.Limits, Model.Behaviour?.Relief, new SettingOptions { LargestChancePastMaximum = House.Settings.ChancePastMaximum }), Words.System)
        : null;

    public Task<IActionResult> OnPostReadAsync(string? peak, string? instrument)
    {
        Peak = peak;
        var mistakes = new FormMistakes();
        InstrumentId? device = InstrumentId.TryParse(instrument, out var id) && House.Find(id) is not null ? id : null;
        var cell = device is { } chosen && House.Find(chosen)!.Facts.Kind == InstrumentKind.ForceCell ? ReadingCorrection.Of(null, RamForce.Of(Model)) : null;
        var read = TypedPeak.Read(peak, Words.PressureUnit, cell, mistakes);
        return TakeAsync(s => read is { } p ? station.ReadAsync(s, Job.Id, p, device) : Task.FromResult(ActAnswer.Refuse(mistakes)), PageOf(Station.Set));
    }

    public Task<IActionResult> OnPostRunAsync() => TakeAsync(
        async s =>
        {
            if (DeviceChoice.Simulated(House, Model) is not { } instrument || devices.DeviceFor(Job, Model, instrument) is not { } device)
                return ActAnswer.Refuse("", "No simulated device reads this tool.", "Write the peak that your own device shows.");
            var reading = await device.RunAsync(HttpContext.RequestAborted);
            return await station.ReadAsync(s, Job.Id, reading.Peak, instrument.Facts.Instrument);
        },
        PageOf(Station.Set));

    public Task<IActionResult> OnPostTurnAsync(string? turn, string? direction)
    {
        Turn = turn;
        var sign = direction == "anticlockwise" ? -1 : 1;
        return TakeAsync(
            s => double.TryParse(turn?.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var degrees) && double.IsFinite(degrees)
                ? station.TurnAsync(s, Job.Id, Angle.FromDegrees(sign * degrees))
                : Task.FromResult(ActAnswer.Refuse("turn", "That is no angle.", "Write the degrees that the screw was turned, such as 35.")),
            PageOf(Station.Set));
    }

    public Task<IActionResult> OnPostLockAsync() => TakeAsync(s => station.LockAsync(s, Job.Id), PageOf(Station.Set));

    public Task<IActionResult> OnPostFinishAsync() => TakeAsync(s => station.FinishAsync(s, Job.Id), $"/jobs/{Job.Id}/now");

    public Task<IActionResult> OnPostBackAsync(string? why) => TakeAsync(s => station.BackToFindAsync(s, Job.Id, why), $"/jobs/{Job.Id}/now");

    public Task<IActionResult> OnPostLiftAsync(string? inspection) => TakeAsync(s => station.LiftQuarantineAsync(s, Job.Id, inspection), PageOf(Station.Set));

    protected override Task<IActionResult?> DrawAsync()
    {
        Advice = SetStation.Advise(Job, Model, House.Settings.ChancePastMaximum);
        Chart = Svg.Write(ReliefChart.Of(new ReliefChartInput
        {
            Window = Model.Limits.Pressure,
            Nominal = Model.Limits.Nominal,
            Maximum = Model.Limits.Maximum,
            Runs = [.. Job.Setting.Runs.Select(r => r.Run)],
            Advice = Advice,
            Units = Words.System,
            Width = 430,
            Height = 340,
            LabelSize = 15,
        }));
        return base.DrawAsync();
    }
}
