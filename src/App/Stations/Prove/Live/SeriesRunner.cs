using System.Collections.Concurrent;
using Ramwright.App.Devices;
using Ramwright.App.Web.Pages;
using Ramwright.Instruments.Devices;
using Ramwright.Instruments.Runs;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.Records.Store;

namespace Ramwright.App.Stations.Prove.Live;

/// <summary>
/// Runs a proof series on a device of the bench until it is full. Each run goes into the ledger before anybody sees it as taken; when the
/// program stops on the way, the runs taken stay and the series waits for the next one.
/// </summary>
public sealed class SeriesRunner(Bench bench, ProveStation station, SimulatedBench devices, IHostApplicationLifetime life)
{
    private readonly ConcurrentDictionary<JobId, LiveSeries> _running = new();

    /// <summary>The series of this job that runs now; null when none does.</summary>
    public LiveSeries? Find(JobId job) => _running.TryGetValue(job, out var live) && !live.IsOver ? live : null;

    /// <summary>Starts the open series of a job, or leaves it running when it does already.</summary>
    /// <param name="signature">Who signs the runs; the n-th run bears the n-th part of the token, so a repeated start takes none twice.</param>
    public async Task<ActAnswer> StartAsync(Signature signature, JobId id, string next)
    {
        ArgumentNullException.ThrowIfNull(signature);
        if (Find(id) is not null)
            return new ActAnswer.Begun(next);
        if (await bench.Ledger.ReadAsync(id) is not { IsOpen: true, OpenSeries: { } open } job || DeviceOf(job, (await bench.Ledger.HouseAsync()).Find(open.Opened.What.Device)) is not { } device)
            return ActAnswer.Refuse("", "The device of this series is not one that the bench can run.", "Write the peaks that it shows.");
        if (open.IsFull)
            return ActAnswer.Refuse("", "The series is full: no run is added to it.", "Close the series.");
        if (job.Quarantine is not null)
            return ActAnswer.Refuse("", "The tool is quarantined: it went above its maximum.", "Close the series; then have the frame inspected.");
        var live = new LiveSeries(open.Peaks.Length);
        if (_running.TryAdd(id, live))
            _ = Task.Run(() => RunAsync(live, signature, id, device), CancellationToken.None);
        return new ActAnswer.Begun(next);
    }

    /// <summary>Takes no further run; one that is under way is finished by the tool but not taken.</summary>
    public void Stop(JobId job) => Find(job)?.Stop();

    private async Task RunAsync(LiveSeries live, Signature signature, JobId id, IPeakDevice device)
    {
        string? why = null;
        try
        {
            using var stop = CancellationTokenSource.CreateLinkedTokenSource(live.Stopped, life.ApplicationStopping);
            await foreach (var happening in device.WatchAsync(stop.Token))
            {
                if (happening is PeakEvent.Peaked peaked)
                    why = await TakeAsync(live, signature, id, peaked.Reading);
                else
                    live.Become(live.Now.State with { Moment = MomentOf(happening) });
                if (why is not null || await IsDoneAsync(id))
                    break;
            }
        }
        catch (OperationCanceledException)
        {
            // Stopped by hand or with the program: what was taken is in the ledger.
        }
        catch (LedgerUnavailableException fault)
        {
            why = $"The last run was not written: {fault.Message} {fault.Remedy}";
        }
        finally
        {
            _running.TryRemove(id, out _);
            live.Become(live.Now.State with { Moment = new LiveMoment.Over(why) });
        }
    }

    /// <summary>Puts the run into the ledger; the reason when it was not taken.</summary>
    private async Task<string?> TakeAsync(LiveSeries live, Signature signature, JobId id, PeakReading reading)
    {
        var taken = live.Now.State.Taken + 1;
        switch (await station.TakeRunsAsync(signature.ForPart((ushort)taken), id, [new GivenRun(reading.Peak, null, RunSource.Device)]))
        {
            case ActAnswer.Done:
                live.Become(new LiveState(taken, new LiveMoment.Waiting()));
                return null;
            case ActAnswer.Refused refused:
                return refused.Mistakes[0].What;
            default:
                return "Somebody else signed at this job.";
        }
    }

    private async Task<bool> IsDoneAsync(JobId id) =>
        await bench.Ledger.ReadAsync(id) is not { IsOpen: true, Quarantine: null, OpenSeries: { IsFull: false } };

    private LiveMoment MomentOf(PeakEvent happening) => happening switch
    {
        PeakEvent.Rising rising => new LiveMoment.Rising(rising.Pressure),
        PeakEvent.NotTaken not => new LiveMoment.NotTaken(RunWords.Of(not.Why)),
        PeakEvent.Unreadable file => new LiveMoment.NotTaken($"{file.File}: {file.What}"),
        PeakEvent.Lost lost => new LiveMoment.Away(lost.What),
        PeakEvent.Resting resting => new LiveMoment.Resting(bench.Clock.GetUtcNow() + resting.For),
        _ => new LiveMoment.Waiting(),
    };

    private IPeakDevice? DeviceOf(JobState job, Records.House.InstrumentState? instrument) =>
        instrument is not null && bench.Models.Find(job.Opened!.What.ModelId) is { } shelved
            ? devices.DeviceFor(job, shelved.Model, instrument) ?? LiveBench.DeviceFor(job, shelved.Model, instrument, bench.Clock)
            : null;
}
