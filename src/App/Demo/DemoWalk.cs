using System.Collections.Immutable;
using System.Globalization;
using Ramwright.App.Devices;
using Ramwright.App.Installed;
using Ramwright.App.Papers;
using Ramwright.App.Stations.Arrive;
using Ramwright.App.Stations.Find;
using Ramwright.App.Stations.Plan;
using Ramwright.App.Stations.Price;
using Ramwright.App.Stations.Prove;
using Ramwright.App.Stations.Rebuild;
using Ramwright.App.Stations.Release;
using Ramwright.App.Stations.Set;
using Ramwright.App.Stations.Strip;
using Ramwright.App.Web.Pages;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.Records.Store;
using Ramwright.ServiceModels.Model;
using Ramwright.Setting;

namespace Ramwright.App.Demo;

/// <summary>Walks one made-up Corrie 85 through all nine stations, by the same acts that the pages call. Everything in it is invented.</summary>
public sealed class DemoWalk : IDisposable
{
    private const int MostTurns = 12;

    private readonly Bench _bench;
    private readonly PaperArchive _archive;
    private readonly SimulatedBench _devices;
    private readonly Action<string> _say;
    private readonly List<Station> _passed = [];
    private JobId _id;

    /// <param name="folder">Takes the ledger and the papers.</param>
    /// <param name="say">Hears a line for each station.</param>
    public DemoWalk(string folder, TimeProvider clock, Action<string> say)
    {
        _bench = new Bench(new Ledger(Path.Combine(folder, DataFolder.LedgerFile), clock), new ShopModels(Path.Combine(folder, "models"), BundledModels.Folder), clock);
        _archive = new PaperArchive(Path.Combine(folder, "papers"), _bench.Ledger);
        _devices = new SimulatedBench(clock, double.PositiveInfinity);
        _say = say;
    }

    public bool Released { get; private set; }

    public IReadOnlyList<Station> Passed => _passed;

    /// <summary>Walks the job; the state at its end.</summary>
    /// <exception cref="InvalidOperationException">An act was refused: a defect of the demo.</exception>
    public async Task<JobState> RunAsync(CancellationToken cancel)
    {
        await _bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead, [.. SaltmarshHouse.Registers(_bench.Today)]);
        await ArriveAsync();
        await FindAsync();
        await PlanAndPriceAsync();
        await StripAsync();
        await RebuildAsync();
        await SetAsync(cancel);
        await ProveAndReleaseAsync(cancel);
        return await JobAsync();
    }

    private async Task ArriveAsync()
    {
        var station = new ArriveStation(_bench);
        var opened = Must(await station.TakeInAsync(Sign(), new Intake
        {
            Tool = ToolSerial.Parse("2231"),
            ModelId = "corrie-85",
            Customer = "Eelmarsh Lines",
            Complaint = "weak, and oil at the ram",
            Condition = "complete, with pack; oil at the cap, no damage seen",
            Promised = _bench.Today.AddDays(3),
        }));
        _id = opened.Job ?? throw new InvalidOperationException("A job that was opened has a number.");
        foreach (var step in Isolation.Of(await ModelAsync()))
            Must(await station.SignSafeAsync(Sign(), _id, step.State));
        Pass(Station.Arrive, $"{_id}, a Corrie 85 of Eelmarsh Lines; pack off and pressure released, signed");
    }

    private async Task FindAsync()
    {
        var (station, model) = (new FindStation(_bench), await ModelAsync());
        Must(await station.RecordSeenAsync(Sign(), _id, [.. model.Symptoms.Take(1).Select(s => s.Id)], [], "oil at the ram"));
        var device = await DeviceAsync();
        var peaks = new List<Pressure>();
        for (var run = 0; run < 3; run++)
            peaks.Add((await device.RunAsync()).Peak);
        Must(await station.RecordAsFoundAsync(Sign(), _id, peaks, (await SimulatedAsync()).Facts.Instrument));
        Must(await station.DecideAsync(Sign(), _id, [new NodeId("seal-ram")], [], "the ram seals leak"));
        Pass(Station.Find, string.Create(CultureInfo.InvariantCulture, $"as found {peaks.Average(p => p.Bar):0} bar in three runs; the ram seals leak"));
    }

    private async Task PlanAndPriceAsync()
    {
        var plan = new PlanStation(_bench, _archive);
        Must(await plan.TakeOnAsync(Sign(), _id, ImmutableHashSet<NodeId>.Empty));
        var steps = (await JobAsync()).Strip!.Plan;
        Pass(Station.Plan, string.Create(CultureInfo.InvariantCulture, $"{steps.Steps.Length} steps, likely {steps.LikelyTime.TotalMinutes:0} min, safe {steps.SafeTime.TotalMinutes:0} min, {(steps.ProvenOptimal ? "proven cheapest" : "not proven")}"));
        var price = new PriceStation(_bench, _archive);
        Must(await price.NameAsync(Sign(), _id));
        Must(await price.AnswerAsync(Sign(), _id, accepted: true, "R. Sedge, by telephone", null, null));
        var quote = (await JobAsync()).Quote!.Made.What.Quote;
        Pass(Station.Price, $"firm {quote.FirmGross.Rounded()}, not to exceed {quote.NotToExceedGross.Rounded()}; the customer says yes");
    }

    private async Task StripAsync()
    {
        var (station, model) = (new StripStation(_bench), await ModelAsync());
        for (var job = await JobAsync(); ; job = await JobAsync())
        {
            if (StripStation.OpenInspections(job, model) is [var open, ..])
                Must(await station.InspectAsync(Sign(), _id, open.Part, open.Inspection.Id, good: true, null, null));
            else if (job.Strip!.Next is { } next)
                Must(await station.SignAsync(Sign(), _id, next, null, null));
            else
                break;
        }

        Must(await station.FinishAsync(Sign(), _id));
        var stripped = await JobAsync();
        Pass(Station.Strip, string.Create(CultureInfo.InvariantCulture, $"{stripped.Strip!.Signed.Count} steps and {stripped.Inspections.Count} inspections signed"));
        Must(await new PlanStation(_bench, _archive).PrintWorkSheetAsync(Sign(), _id));
    }

    private async Task RebuildAsync()
    {
        var station = new RebuildStation(_bench);
        var wrench = (await _bench.Ledger.HouseAsync()).InstrumentsById.Values.First(i => i.Facts.Kind == InstrumentKind.TorqueWrench && !i.IsDueOn(_bench.Today)).Facts.Instrument;
        for (var job = await JobAsync(); job.Rebuild!.Next is { } next; job = await JobAsync())
        {
            var torque = job.Rebuild.Plan.Steps[next].Torque?.Torque;
            Must(await station.SignAsync(Sign(), _id, next, torque, torque is null ? null : wrench, [], null));
        }

        var done = (await JobAsync()).Rebuild!;
        Must(await station.FinishAsync(Sign(), _id));
        Pass(Station.Rebuild, string.Create(CultureInfo.InvariantCulture, $"{done.Signed.Count} steps signed, {done.Signed.Values.Count(s => s.What.Applied is not null)} torques with the wrench named"));
    }

    private async Task SetAsync(CancellationToken cancel)
    {
        var (station, model, instrument) = (new SetStation(_bench), await ModelAsync(), (await SimulatedAsync()).Facts.Instrument);
        var limit = (await _bench.Ledger.HouseAsync(cancel)).Settings.ChancePastMaximum;
        for (var turn = 0; turn < MostTurns; turn++)
        {
            Must(await station.ReadAsync(Sign(), _id, (await (await DeviceAsync()).RunAsync(cancel)).Peak, instrument));
            var advice = SetStation.Advise(await JobAsync(), model, limit);
            if (advice.Outcome == SettingOutcome.In)
                break;
            if (advice.Outcome == SettingOutcome.Turn)
                Must(await station.TurnAsync(Sign(), _id, advice.Direction == TurnDirection.Clockwise ? advice.Turn : -advice.Turn));
        }

        Must(await station.LockAsync(Sign(), _id));
        Must(await station.ReadAsync(Sign(), _id, (await (await DeviceAsync()).RunAsync(cancel)).Peak, instrument));
        var setting = (await JobAsync()).Setting;
        Must(await station.FinishAsync(Sign(), _id));
        Pass(Station.Set, string.Create(CultureInfo.InvariantCulture, $"{setting.Turns.Count} turns, {setting.Screw.Degrees:+0;-0}° in all, last run {setting.Runs[^1].Run.Peak.Bar:0.0} bar, locked and checked"));
    }

    private async Task ProveAndReleaseAsync(CancellationToken cancel)
    {
        var station = new ProveStation(_bench);
        Must(await station.OpenAsync(Sign(), _id, new SeriesWish((await SimulatedAsync()).Facts.Instrument, "dies closed on nothing", Temperature.FromCelsius(21), null)));
        while ((await JobAsync()).OpenSeries is { IsFull: false })
            Must(await station.TakeRunsAsync(Sign(), _id, [new GivenRun((await (await DeviceAsync()).RunAsync(cancel)).Peak)]));
        Must(await station.CloseAsync(Sign(), _id));
        var closed = (await JobAsync()).StandingProof!.Closed!.What.Verdict;
        Must(await station.GoAsync(Sign(), _id, Station.Release, null));
        Pass(Station.Prove, string.Create(CultureInfo.InvariantCulture, $"{closed.Runs} runs, mean {closed.Mean?.Bar:0.0} bar, standard deviation {closed.StandardDeviation?.Bar:0.00} bar: {closed.Conformity}"));
        var release = new ReleaseStation(_bench, _archive);
        var end = closed.Conformity == Proving.Conformity.Conforms ? JobEnd.Released : JobEnd.NotProven;
        Must(await release.EndAsync(Sign(), _id, end, end == JobEnd.Released ? null : "the series did not show it"));
        Released = end == JobEnd.Released;
        Pass(Station.Release, Released ? "released with its proof report" : "ended as not proven, with its paper");
    }

    public void Dispose() => _bench.Ledger.Dispose();

    private void Pass(Station station, string what)
    {
        _passed.Add(station);
        _say(string.Create(CultureInfo.InvariantCulture, $"{(int)station + 1} {station,-8} {what}"));
    }

    private async Task<JobState> JobAsync() => await _bench.Ledger.ReadAsync(_id) ?? throw new InvalidOperationException($"Job {_id} is gone.");

    private async Task<ServiceModel> ModelAsync() => _bench.Models.Find((await JobAsync()).Opened!.What.ModelId)!.Model;

    private async Task<InstrumentState> SimulatedAsync() => DeviceChoice.Simulated(await _bench.Ledger.HouseAsync(), await ModelAsync()) ?? throw new InvalidOperationException("The made-up house has a simulated device.");

    private async Task<Instruments.Devices.IPeakDevice> DeviceAsync() =>
        _devices.DeviceFor(await JobAsync(), await ModelAsync(), await SimulatedAsync()) ?? throw new InvalidOperationException("The simulated device reads this tool.");

    private static Signature Sign() => new(SubmitToken.New(), SaltmarshHouse.Lead);

    private static ActAnswer.Done Must(ActAnswer answer) => DemoAct.Must(answer);
}
