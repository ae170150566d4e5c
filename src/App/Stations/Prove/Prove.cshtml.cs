using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Ramwright.App.Devices;
using Ramwright.App.Stations.Prove.Live;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Proving;
using Ramwright.Proving.Reference;
using Ramwright.Proving.Text;
using Ramwright.Records.Events;
using Ramwright.Records.Jobs;

namespace Ramwright.App.Stations.Prove;

/// <summary>Does this tool open within its limits, run after run, allowing for how well we measure.</summary>
public sealed class ProvePage(Bench bench, ProveStation station, SimulatedBench devices, SeriesRunner runner) : StationPage(bench, Station.Prove)
{
    private const int LargestUpload = 1_000_000;

    public string? Peak { get; private set; }
    public string? Load { get; private set; } = "dies closed on nothing";
    public string? Room { get; private set; }

    /// <summary>20 °C in the unit of the house.</summary>
    public string RoomAsUsual => QuantityText.Parts(OpenSeriesForm.UsualRoom, Words.System, 0).Number;

    /// <summary>The series shown: the open one, else the last.</summary>
    public SeriesState? Series => Job.Series is [.., var last] ? last : null;

    public bool IsOpen => IsHere && Job.OpenSeries is not null;

    /// <summary>Whether runs come by themselves now.</summary>
    public bool IsRunning => IsOpen && runner.Find(Job.Id) is not null;

    public Verdict? Verdict { get; private set; }

    public ProofPicture? Picture { get; private set; }

    /// <summary>What could measure this proof today.</summary>
    public ImmutableArray<Option> Choices => References.Options(References.Of(House, Job, Model, Bench.Today), Words);

    /// <summary>The reference chosen on the page of references, if one was.</summary>
    public string? With => Device ?? (Request.Query["with"].ToString() is { Length: > 0 } with ? with : null);

    public string? Device { get; private set; }

    /// <summary>Rise before the peak, as it was typed.</summary>
    public string? Rise { get; private set; }

    /// <summary>Where the rise comes from when nobody types one.</summary>
    public string RiseHint => $"Empty: {BudgetText.Rise(Pressure.FromBar(ToolRise.BarPerSecond(Model)), Words.System)}, {(ToolRise.IsKnown(Model) ? "by the model" : "as is usual")}. A recording may show another.";

    /// <summary>What the reference of the series may be off; null in series of an earlier program.</summary>
    public BudgetView? Budget => Series?.Opened.What is { Reference: { } reference } opened
        ? BudgetView.Of(reference.Kind == ReferenceKind.ToolMemory ? BudgetText.Of(reference.Kind) : opened.Device.Value, reference, opened.Limits, Words)
        : null;

    /// <summary>A force cell shows a force; everything else a pressure.</summary>
    public string PeakUnit => Job.OpenSeries?.Opened.What.Reference?.Kind == ReferenceKind.ForceCell ? Words.ForceUnit : Words.PressureUnit;

    /// <summary>Whether runs come from the tool's own memory.</summary>
    public bool FromMemory => Job.OpenSeries?.Opened.What.Reference?.Kind == ReferenceKind.ToolMemory;

    /// <summary>Whether the device of the open series is one that the bench can run by itself: simulated, or read live.</summary>
    public bool RunsHere => Job.OpenSeries is { } open && House.Find(open.Opened.What.Device) is { } device && LiveBench.Runs(device.Facts.Connection);

    public ImmutableArray<Option> ValidRuns => Series is { } s ? [.. s.Runs.Where(r => r.Void is null).Select(r => new Option(r.Taken.What.Run.ToString(CultureInfo.InvariantCulture), $"run {r.Taken.What.Run}, {Words.Show(r.Taken.What.Peak)}"))] : [];

    public AnswerMark Answer => new(Verdict!.Conformity, [.. VerdictText.Lines(Verdict, Series!.ToProofSeries(), Words.System)], Large: true);

    protected override string Title =>
        Job.OpenSeries is { } open ? (open.IsFull ? "Series full" : $"Waiting for run {open.NextRun}")
        : Job.StandingProof is not null ? "Series closed"
        : "Open a series";

    protected override string Eyebrow => Series is { } s
        ? $"Prove · series {s.Number}, opened {At(s.Opened.At)} · {s.Opened.What.Device}"
        : $"Prove · {Model.Limits.ProofRuns} full runs, limits {Words.Show(Model.Limits.Pressure)}";

    protected override ImmutableArray<BlockField> MoreBlock => Series is { } s ? [new("Series", $"{s.Number}, run {s.Peaks.Length} / {s.Places}", Less: true)] : [];

    public Facts Figures
    {
        get
        {
            var verdict = Verdict!;
            return Facts.Of(
                new Fact("Mean", verdict.Mean is { } mean ? Words.Show(mean) : "none yet"),
                new Fact("Scatter", verdict.StandardDeviation is { } s ? Words.Show(s) : "two runs are wanted", "standard deviation"));
        }
    }

    /// <summary>Further runs that may be declared before the series opens.</summary>
    public string? MoreRuns { get; private set; }

    /// <summary>How many other tools of the model have a full series behind them.</summary>
    public int EarlierSeries { get; private set; }

    /// <summary>Whose scatter may count.</summary>
    public ImmutableArray<Option> Scatters =>
    [
        new("own", "this tool's own"),
        .. EarlierSeries >= Proving.EarlierSeries.Fewest ? [new Option("moderated", $"moderated by {EarlierSeries} earlier series of the model")] : Array.Empty<Option>(),
    ];

    public Task<IActionResult> OnPostOpenAsync(OpenSeriesForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        (Device, Load, Room, MoreRuns, Rise) = (form.Device, form.Load, form.Room, form.More, form.Rise);
        var mistakes = new FormMistakes();
        var wish = form.Read(Words, mistakes);
        return TakeAsync(
            s => wish is null ? Task.FromResult(ActAnswer.Refuse(mistakes)) : station.OpenAsync(s, Job.Id, wish),
            PageOf(Station.Prove));
    }

    public Task<IActionResult> OnPostRunAsync() => TakeAsync(RunAsync, PageOf(Station.Prove));

    public Task<IActionResult> OnPostSeriesAsync() => TakeAsync(s => runner.StartAsync(s, Job.Id, PageOf(Station.Prove)), PageOf(Station.Prove));

    public Task<IActionResult> OnPostStopAsync()
    {
        runner.Stop(Job.Id);
        return TakeAsync(_ => Task.FromResult<ActAnswer>(new ActAnswer.Begun(PageOf(Station.Prove))), PageOf(Station.Prove));
    }

    public Task<IActionResult> OnPostReadAsync(string? peak)
    {
        Peak = peak;
        var mistakes = new FormMistakes();
        var read = TypedPeak.Read(peak, PeakUnit, Job.OpenSeries?.Opened.What.Reference?.Correction, mistakes);
        return TakeAsync(s => read is { } p ? station.TakeRunsAsync(s, Job.Id, [new GivenRun(p)]) : Task.FromResult(ActAnswer.Refuse(mistakes)), PageOf(Station.Prove));
    }

    public Task<IActionResult> OnPostFileAsync(IFormFile? file) => TakeAsync(
        async s =>
        {
            if (file is null || file.Length == 0)
                return ActAnswer.Refuse("file", "No file was chosen.", "Choose the CSV file with the runs of this series.");
            if (file.Length > LargestUpload)
                return ActAnswer.Refuse("file", "The file is larger than a megabyte; a series is a few lines.", "Choose the CSV file with the runs of this series.");
            using var bytes = new MemoryStream();
            await file.CopyToAsync(bytes, HttpContext.RequestAborted);
            var mistakes = new FormMistakes();
            var runs = UploadedRuns.Read(Path.GetFileName(file.FileName), bytes.ToArray(), Job.OpenSeries?.Opened.What, Model, mistakes);
            return mistakes.Count == 0 ? await station.TakeRunsAsync(s, Job.Id, runs) : ActAnswer.Refuse(mistakes);
        },
        PageOf(Station.Prove));

    public Task<IActionResult> OnPostVoidAsync(int run, string? cause) => TakeAsync(s => station.VoidAsync(s, Job.Id, run, cause), PageOf(Station.Prove));

    public Task<IActionResult> OnPostCloseAsync() => TakeAsync(s => station.CloseAsync(s, Job.Id), PageOf(Station.Prove));

    public Task<IActionResult> OnPostGoAsync(string? to, string? why) => TakeAsync(
        s => station.GoAsync(s, Job.Id, to switch { "set" => Station.Set, "find" => Station.Find, _ => Station.Release }, why),
        $"/jobs/{Job.Id}/now");

    protected override async Task<IActionResult?> DrawAsync()
    {
        if (IsHere && !IsOpen && Job.StandingProof is null)
            EarlierSeries = (await Bench.Ledger.EarlierProofsAsync(Model.Tool.Id, Job.Opened!.What.Tool, HttpContext.RequestAborted)).Length;
        if (Series is not { } series)
            return await base.DrawAsync();
        Verdict = series.Closed?.What.Verdict ?? ProofDecision.Decide(series.ToProofSeries());
        Picture = ProofPicture.Of(series, Verdict, Model, Words.System);
        return await base.DrawAsync();
    }

    private async Task<ActAnswer> RunAsync(Signature signature)
    {
        if (Job.OpenSeries is not { } open || House.Find(open.Opened.What.Device) is not { } instrument || devices.DeviceFor(Job, Model, instrument) is not { } device)
            return ActAnswer.Refuse("", "The device of this series is not one that the bench can run.", "Write the peak that it shows.");
        if (open.IsFull)
            return ActAnswer.Refuse("", "The series is full: no run is added to it.", "Close the series.");
        var reading = await device.RunAsync(HttpContext.RequestAborted);
        return await station.TakeRunsAsync(signature, Job.Id, [new GivenRun(reading.Peak, null, RunSource.Device)]);
    }
}
