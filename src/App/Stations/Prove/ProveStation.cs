using System.Collections.Immutable;
using System.Globalization;
using Ramwright.App.Devices;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving;
using Ramwright.Proving.Reference;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;

namespace Ramwright.App.Stations.Prove;

/// <summary>What happens at Prove: a series is opened with all that is fixed beforehand, runs are taken, voided for a cause, and the series is closed with its verdict.</summary>
public sealed class ProveStation(Bench bench)
{
    /// <summary>Opens a series. An instrument that is overdue, out of its range or too slow for this tool opens none.</summary>
    public Task<ActAnswer> OpenAsync(Signature signature, JobId id, SeriesWish wish) => AtProve(signature, id, async at =>
    {
        if (at.Job.OpenSeries is { } open)
            return ActAnswer.Refuse("", $"Series {open.Number} is open already.", "Take its runs and close it first.");
        if (at.Job.Quarantine is not null)
            return ActAnswer.Refuse("", "The tool is quarantined: it went above its maximum.", "Have the frame inspected and record it at Set, or end the job.");
        var house = await bench.Ledger.HouseAsync();
        var instrument = wish.Device is { } id ? house.Find(id) : null;
        if (wish.Device is not null && instrument is null)
            return ActAnswer.Refuse("device", $"No instrument is called {wish.Device}.", "Choose one of the list.");
        var stands = new Circumstances { Room = wish.Room, RiseBarPerSecond = wish.RiseBarPerSecond, Friction = at.Job.Friction?.What.Examine() as FrictionLoop.Shown };
        var fit = instrument is null ? MemoryFit.Of(at.Job, at.Model, stands) : DeviceFit.Of(instrument, at.Model, bench.Today, stands);
        if (fit is not DeviceFit.Fits fits)
            return ActAnswer.Refuse("device", ((DeviceFit.Unfit)fit).What, instrument is null ? "Compare the tool's sensor first, or choose another reference." : "Choose another reference, or have this one calibrated.");
        ImmutableArray<EarlierScatter>? earlier = wish.Moderated ? [.. (await bench.Ledger.EarlierProofsAsync(at.Model.Tool.Id, at.Job.Opened!.What.Tool)).Select(p => p.Scatter)] : null;
        return await at.WriteAsync(signature, new SeriesOpened
        {
            Series = at.Job.Series.Count + 1,
            PlannedRuns = at.Model.Limits.ProofRuns,
            Limits = at.Model.Limits.Pressure,
            Maximum = at.Model.Limits.Maximum,
            Device = wish.Device ?? at.Job.Comparison!.What.Reference,
            Systematic = fits.Budget.Systematic,
            Reference = fits.Budget,
            Coverage = house.Settings.Coverage,
            Confidence = house.Settings.Confidence,
            Rule = at.Model.Limits.Rule,
            MoreRuns = wish.MoreRuns,
            Earlier = earlier,
            Resolution = instrument is null ? at.Job.Comparison!.What.Resolution : InstrumentDevice.Describe(instrument, at.Model)?.Resolution,
            Load = wish.Load,
            Room = wish.Room,
            Oil = wish.Oil,
        });
    });

    /// <summary>Full runs were taken, one or several in their order, void ones with their causes. More than the series has places for are refused whole; above the maximum the tool is quarantined with the same entry.</summary>
    public Task<ActAnswer> TakeRunsAsync(Signature signature, JobId id, IReadOnlyList<GivenRun> runs) => AtProve(signature, id, async at =>
    {
        if (at.Job.OpenSeries is not { } series)
            return ActAnswer.Refuse("", "No series is open.", "Open a series first: how many runs, against which limits, by which device.");
        var opened = series.Opened.What;
        if (await ExpiredAsync(opened) is { } expired)
            return ActAnswer.Refuse("", expired, "Close the series, and open another with a reference that may be relied on.");
        var free = series.Places - series.Peaks.Length;
        var count = runs.Count(r => r.VoidCause is null);
        if (runs.Count == 0)
            return ActAnswer.Refuse("readings", "No reading was given.", "Write the peak of the run.");
        if (count > free)
            return ActAnswer.Refuse("readings", string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? "reading" : "readings")}, and the series has {free} free places: none is dropped, so none was taken."), free == 0 ? "Close the series." : "Give the runs of this series alone.");
        if (runs.FirstOrDefault(r => r.Peak.Bar is not (> 0 and <= 2000)) is { Peak: var absurd })
            return ActAnswer.Refuse("readings", $"{absurd.Bar.ToString("0.#", CultureInfo.InvariantCulture)} bar is no peak of such a tool.", "Write the peak that the device shows, above 0 and at most 2,000 bar.");
        var first = series.NextRun;
        List<JobEvent> events = [];
        var highest = Pressure.FromPascals(0); // a void run above the maximum has strained the frame as well
        foreach (var (i, run) in runs.Index())
        {
            var correction = opened.Reference?.Correction is { Changes: true } changing ? changing : null;
            var peak = correction?.Correct(run.Peak) ?? run.Peak;
            events.Add(new RunTaken(series.Number, first + i, peak, opened.Device) { Shown = correction is null ? null : run.Peak, Source = run.Source });
            if (run.VoidCause is { } cause)
                events.Add(new RunVoided(series.Number, first + i, cause));
            highest = peak > highest ? peak : highest;
        }

        if (highest > opened.Maximum && at.Job.Quarantine is null)
            events.Add(new ToolQuarantined(highest, opened.Maximum));
        return await at.WriteAsync(signature, events);
    });

    /// <summary>Why the reference of an open series may not be read on today; null when it may. The tool's memory rests on the comparison of this visit.</summary>
    private async Task<string?> ExpiredAsync(SeriesOpened opened) =>
        opened.Reference?.Kind != ReferenceKind.ToolMemory && (await bench.Ledger.HouseAsync()).Find(opened.Device) is { } instrument ? DeviceFit.WhyNot(instrument, bench.Today) : null;

    /// <summary>A run does not count, for a cause apart from its value.</summary>
    public Task<ActAnswer> VoidAsync(Signature signature, JobId id, int run, string? cause) => AtProve(signature, id, at =>
    {
        if (at.Job.OpenSeries is not { } series)
            return Refused("", "No series is open; a closed one stays as it is.", "Open a new series.");
        if (!series.Runs.Exists(r => r.Taken.What.Run == run && r.Void is null))
            return Refused("run", $"Run {run} is not among the valid runs of series {series.Number}.", "Choose a run that was taken and counts.");
        return string.IsNullOrWhiteSpace(cause) || cause.Trim().Length < 4
            ? Refused("cause", "No cause was given.", "Write what happened apart from the reading: trigger released early, cable pulled, wrong die.")
            : at.WriteAsync(signature, new RunVoided(series.Number, run, cause.Trim()));
    });

    /// <summary>Closes the series with its verdict. A series that is not full may be closed: it is then undecided, unless it already does not conform.</summary>
    public Task<ActAnswer> CloseAsync(Signature signature, JobId id) => AtProve(signature, id, async at =>
    {
        if (at.Job.OpenSeries is not { } series)
            return ActAnswer.Refuse("", "No series is open.", "Open a series first.");
        var earlier = await bench.Ledger.EarlierProofsAsync(at.Model.Tool.Id, at.Job.Opened!.What.Tool);
        return await at.WriteAsync(signature, new SeriesClosed(series.Number, ProofDecision.Decide(series.ToProofSeries() with { EarlierPeaks = [.. earlier.Select(p => p.Peaks)] })));
    });

    /// <summary>On to Release with a closed series, or back to Set or Find with a reason.</summary>
    public Task<ActAnswer> GoAsync(Signature signature, JobId id, Station to, string? why) => AtProve(signature, id, at =>
    {
        if (to == Station.Release)
        {
            return at.Job.StandingProof is null
                ? Refused("", "No closed series stands.", "Close the series first.")
                : at.WriteAsync(signature, new StationReached(Station.Release, null));
        }

        if (to is not (Station.Set or Station.Find))
            return Refused("", "From Prove a job goes on to Release, or back to Set or Find.", "Choose one of these.");
        return string.IsNullOrWhiteSpace(why)
            ? Refused("why", "No reason was given.", "Say in a few words why the job goes back.")
            : at.WriteAsync(signature, new StationReached(to, why.Trim()));
    });

    private Task<ActAnswer> AtProve(Signature signature, JobId id, Func<JobAtBench, Task<ActAnswer>> act) => JobAtBench.ActAsync(bench, signature, id, Station.Prove, act);

    private static Task<ActAnswer> Refused(string field, string what, string mend) => Task.FromResult(ActAnswer.Refuse(field, what, mend));
}

/// <summary>What the person chose for a series.</summary>
/// <param name="Device">The instrument that reads the peaks; null: the tool's own memory.</param>
/// <param name="Load">Against what the tool runs: dies closed, a connector.</param>
/// <param name="MoreRuns">An extension: so many more runs if the planned ones leave the series undecided.</param>
/// <param name="Moderated">Whether the earlier series of the model moderate this one's scatter.</param>
/// <param name="RiseBarPerSecond">Rise before the peak as a recording shows it; null: the model's, or the usual one.</param>
public sealed record SeriesWish(InstrumentId? Device, string Load, Temperature? Room, Temperature? Oil, int? MoreRuns = null, bool Moderated = false, double? RiseBarPerSecond = null);
