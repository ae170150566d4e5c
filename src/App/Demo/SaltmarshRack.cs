using System.Collections.Immutable;
using Ramwright.App.Papers;
using Ramwright.App.Stations.Arrive;
using Ramwright.App.Stations.Find;
using Ramwright.App.Stations.Plan;
using Ramwright.App.Stations.Price;
using Ramwright.App.Stations.Strip;
using Ramwright.App.Web.Pages;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Demo;

/// <summary>Puts tools on the rack of the made-up house: each is carried to its station by the same acts that the pages call.</summary>
public sealed class SaltmarshRack(Bench bench, PaperArchive archive)
{
    private static readonly InstrumentId PortGauge = InstrumentId.Parse("PG-1");

    private readonly ArriveStation arrive = new(bench);
    private readonly FindStation find = new(bench);
    private readonly PlanStation plan = new(bench, archive);
    private readonly PriceStation price = new(bench, archive);
    private readonly StripStation strip = new(bench);
    private readonly SaltmarshProofs proofs = new(bench);

    /// <summary>Sets the house up and fills its rack, when nobody has set it up before.</summary>
    public async Task FillAsync()
    {
        if ((await bench.Ledger.HouseAsync()).IsSetUp)
            return;
        await bench.Ledger.AppendOnceAsync(SubmitToken.New(), SaltmarshHouse.Lead, [.. SaltmarshHouse.Registers(bench.Today)]);
        await CarryAsync("2231", "corrie-85", "Eelmarsh Lines", "weak, oil at the cap", 0, Station.Strip, "reseal-ram", steps: 6);
        await CarryAsync("2304", "corrie-85", "Eelmarsh Lines", "does not go back", 1, Station.Strip, "renew-springs", steps: 0);
        await CarryAsync("0611", "skerry-52", "Wrackford Rail", "cuts slowly", 2, Station.Price, null, steps: 0);
        var low = await CarryAsync("5120", "corrie-120", "Samphire Power", "", -1, Station.Set, null, steps: 0);
        await proofs.ReadAsFoundAsync(low, 612, PortGauge);
        await CarryAsync("1987", "corrie-85", "Samphire Power", "", 0, Station.Set, null, steps: 0);
        await CarryAsync("5133", "corrie-120", "Eelmarsh Lines", "leaks at the hose", 1, Station.Find, null, steps: 0);
        await CarryAsync("0640", "skerry-52", "Samphire Power", "stops before the end", 5, Station.Arrive, null, steps: 0);
        await ProveAsync("2188", "corrie-85", "Samphire Power", today: 0, runs: 7);
        await ProveAsync("0588", "skerry-52", "Wrackford Rail", today: 1, runs: 15);
    }

    private async Task ProveAsync(string serial, string modelId, string customer, int today, int runs)
    {
        var id = await CarryAsync(serial, modelId, customer, "", today, Station.Set, null, steps: 0);
        await proofs.ProveAsync(id, Model(modelId), SaltmarshHouse.ForceCell, runs);
    }


    private ServiceModel Model(string id) =>
        bench.Models.Find(id)?.Model ?? throw new InvalidOperationException($"The demo needs the model {id}, which is not on the shelf or does not read.");

    private async Task<JobId> CarryAsync(string serial, string modelId, string customer, string complaint, int promisedIn, Station to, string? remedy, int steps)
    {
        var model = Model(modelId);
        var today = bench.Today;
        var opened = DemoAct.Must(await arrive.TakeInAsync(Sign(), new Intake
        {
            Tool = ToolSerial.Parse(serial),
            ModelId = modelId,
            Customer = customer,
            Complaint = complaint,
            Condition = "complete, with pack, no damage seen",
            Promised = today.AddDays(promisedIn),
        }));
        var id = opened.Job ?? throw new InvalidOperationException("A job that was opened has a number.");
        if (to == Station.Arrive)
            return id;
        foreach (var step in Isolation.Of(model))
            DemoAct.Must(await arrive.SignSafeAsync(Sign(), id, step.State));
        if (model.Symptoms is [var first, ..])
            DemoAct.Must(await find.RecordSeenAsync(Sign(), id, [first.Id], [], null));
        if (to == Station.Find)
            return id;
        ImmutableArray<RemedyId> remedies = remedy is null ? [] : [new RemedyId(remedy)];
        DemoAct.Must(await find.DecideAsync(Sign(), id, [], remedies, remedy is null ? complaint.Length == 0 ? "due: set and prove" : "set and prove first" : complaint));
        if (remedy is not null)
            DemoAct.Must(await plan.TakeOnAsync(Sign(), id, ImmutableHashSet<NodeId>.Empty));
        DemoAct.Must(await price.NameAsync(Sign(), id));
        if (to == Station.Price)
            return id;
        DemoAct.Must(await price.AnswerAsync(Sign(), id, accepted: true, "R. Sedge, by telephone", null, null));
        for (var step = 0; step < steps; step++)
            await SignStepAsync(id, step, model);
        return id;
    }

    private async Task SignStepAsync(JobId id, int step, ServiceModel model)
    {
        DemoAct.Must(await strip.SignAsync(Sign(), id, step, null, null));
        var job = await bench.Ledger.ReadAsync(id) ?? throw new InvalidOperationException($"Job {id} is gone.");
        foreach (var open in StripStation.OpenInspections(job, model))
            DemoAct.Must(await strip.InspectAsync(Sign(), id, open.Part, open.Inspection.Id, good: true, null, null));
    }

    private static Signature Sign() => new(SubmitToken.New(), SaltmarshHouse.Lead);
}
