using System.Collections.Immutable;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Prove;

/// <summary>What happens at Prove: a series is opened with all that is fixed beforehand, runs are taken, voided for a cause, and the series is closed with its verdict.</summary>
public sealed class ProveStation(Web.Pages.Bench bench)
{
    /// <summary>Opens a series. An instrument that is overdue, out of its range or too slow for this tool opens none.</summary>
    public async Task<ActAnswer> OpenAsync(JobState job, ServiceModel model, HouseState house, Signature sign, SeriesWish wish)
    {
        if (job.OpenSeries is { } open)
            return ActAnswer.Refuse("", $"Series {open.Number} is open already.", "Take its runs and close it first.");
        if (job.Quarantine is not null)
            return ActAnswer.Refuse("", "The tool is quarantined: it went above its maximum.", "Have the frame inspected and record it at Set, or end the job.");
        if (house.Find(wish.Device) is not { } instrument)
            return ActAnswer.Refuse("Device", $"No instrument is called {wish.Device}.", "Choose one of the list.");
        if (DeviceFit.Of(instrument, model, bench.Today) is not DeviceFit.Fits fit)
            return ((DeviceFit.Unfit)DeviceFit.Of(instrument, model, bench.Today)).Refuse();
        return ActAnswer.Of(await bench.Ledger.AppendOnceAsync(sign.Token, sign.By, job.Id, sign.Seen, new SeriesOpened
        {
            Series = job.Series.Count + 1,
            PlannedRuns = model.Limits.ProofRuns,
            Limits = model.Limits.Pressure,
            Maximum = model.Limits.Maximum,
            Device = wish.Device,
            Systematic = fit.Systematic,
            Coverage = house.Settings.Coverage,
            Confidence = house.Settings.Confidence,
            Rule = model.Limits.Rule,
            Load = wish.Load,
            Room = wish.Room,
            Oil = wish.Oil,
        }));
    }

    /// <summary>A full run was taken. Above the maximum the tool is quarantined with the same entry.</summary>
    public async Task<ActAnswer> TakeRunAsync(JobState job, Signature sign, Pressure peak)
    {
        if (job.OpenSeries is not { } series)
            return ActAnswer.Refuse("", "No series is open.", "Open a series first: how many runs, against which limits, by which device.");
        if (series.IsFull)
            return ActAnswer.Refuse("", $"Series {series.Number} is full: {series.Opened.What.PlannedRuns} runs were planned, and none is added.", "Close the series.");
        if (peak.Bar is not (> 0 and <= 2000))
            return ActAnswer.Refuse("Peak", $"{peak.Bar:0.#} bar is no peak of such a tool.", "Write the peak that the device shows, above 0 and at most 2,000 bar.");
        var events = ImmutableArray.Create<JobEvent>(new RunTaken(series.Number, series.NextRun, peak, series.Opened.What.Device));
        if (peak > series.Opened.What.Maximum && job.Quarantine is null)
            events = events.Add(new ToolQuarantined(peak, series.Opened.What.Maximum));
        return ActAnswer.Of(await bench.Ledger.AppendOnceAsync(sign.Token, sign.By, job.Id, sign.Seen, events));
    }

    /// <summary>Several runs at once, from a file or typed; more than the series has places for are refused whole.</summary>
    public async Task<ActAnswer> TakeRunsAsync(JobState job, Signature sign, IReadOnlyList<Pressure> peaks)
    {
        if (job.OpenSeries is not { } series)
            return ActAnswer.Refuse("", "No series is open.", "Open a series first.");
        var free = series.Opened.What.PlannedRuns - series.Peaks.Length;
        if (peaks.Count == 0 || peaks.Count > free)
            return ActAnswer.Refuse("Readings", peaks.Count == 0 ? "No reading was given." : $"{peaks.Count} readings, and the series has {free} free places: none is dropped, so none was taken.", "Give the runs of this series, one a line.");
        var events = peaks.Select((peak, i) => (JobEvent)new RunTaken(series.Number, series.NextRun + i, peak, series.Opened.What.Device)).ToList();
        if (peaks.Any(p => p > series.Opened.What.Maximum) && job.Quarantine is null)
            events.Add(new ToolQuarantined(peaks.MaxBy(p => p.Pascals), series.Opened.What.Maximum));
        return ActAnswer.Of(await bench.Ledger.AppendOnceAsync(sign.Token, sign.By, job.Id, sign.Seen, events));
    }

    /// <summary>A run does not count, for a cause apart from its value.</summary>
    public async Task<ActAnswer> VoidAsync(JobState job, Signature sign, int run, string cause)
    {
        if (job.OpenSeries is not { } series)
            return ActAnswer.Refuse("", "No series is open; a closed one stays as it is.", "Open a new series.");
        if (!series.Runs.Any(r => r.Taken.What.Run == run && r.Void is null))
            return ActAnswer.Refuse("Run", $"Run {run} is not among the valid runs of series {series.Number}.", "Choose a run that was taken and counts.");
        if (string.IsNullOrWhiteSpace(cause) || cause.Trim().Length < 4)
            return ActAnswer.Refuse("Cause", "No cause was given.", "Write what happened apart from the reading: trigger released early, cable pulled, wrong die.");
        return ActAnswer.Of(await bench.Ledger.AppendOnceAsync(sign.Token, sign.By, job.Id, sign.Seen, new RunVoided(series.Number, run, cause.Trim())));
    }

    /// <summary>Closes the series with its verdict. A series that is not full may be closed: it is then undecided, unless it already does not conform.</summary>
    public async Task<ActAnswer> CloseAsync(JobState job, Signature sign)
    {
        if (job.OpenSeries is not { } series)
            return ActAnswer.Refuse("", "No series is open.", "Open a series first.");
        var verdict = ProofDecision.Decide(series.ToProofSeries());
        return ActAnswer.Of(await bench.Ledger.AppendOnceAsync(sign.Token, sign.By, job.Id, sign.Seen, new SeriesClosed(series.Number, verdict)));
    }

    /// <summary>On to Release with a closed series, or back to Set or Find after a failed one.</summary>
    public async Task<ActAnswer> GoAsync(JobState job, Signature sign, Station to, string? why)
    {
        if (to == Station.Release && job.StandingProof is null)
            return ActAnswer.Refuse("", "No closed series stands yet.", "Close the series first.");
        if (to < Station.Prove && string.IsNullOrWhiteSpace(why))
            return ActAnswer.Refuse("Why", "No reason was given.", "Say in a few words why the job goes back.");
        return ActAnswer.Of(await bench.Ledger.AppendOnceAsync(sign.Token, sign.By, job.Id, sign.Seen, new StationReached(to, why?.Trim())));
    }
}

/// <summary>What the person chose for a series.</summary>
/// <param name="Load">Against what the tool runs: dies closed, a connector.</param>
public sealed record SeriesWish(InstrumentId Device, string Load, Temperature? Room, Temperature? Oil);
