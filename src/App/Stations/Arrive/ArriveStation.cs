using Ramwright.App.Web.Pages;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Arrive;

/// <summary>What happens at Arrive: the tool is taken in, then made safe.</summary>
public sealed class ArriveStation(Bench bench)
{
    /// <summary>Opens the job; registers the customer and the tool where the house does not know them yet.</summary>
    public async Task<ActAnswer> TakeInAsync(Signature signature, Intake intake)
    {
        if (await bench.Ledger.FindAsync(signature.Token) is { } first)
            return ActAnswer.Of(first);
        if (bench.Models.Find(intake.ModelId) is not { } shelved)
            return ActAnswer.Refuse("ModelId", "Say which tool it is.");
        var house = await bench.Ledger.HouseAsync();
        var known = CustomerIds.Known(house, intake.Customer);
        var customer = known?.Customer ?? CustomerIds.Of(intake.Customer)
            ?? throw new ArgumentException("A customer's name has a letter or digit in it.", nameof(intake));

        List<HouseEvent> registers = [];
        if (known is null && house.Find(customer) is null)
            registers.Add(new CustomerRegistered(customer, intake.Customer));
        var history = await bench.Ledger.ToolHistoryAsync(intake.Tool);
        if (history.Registered is not { } before || before.ModelId != intake.ModelId || before.Owner != customer)
            registers.Add(new ToolRegistered(intake.Tool, intake.ModelId, customer) { YearBuilt = history.Registered?.YearBuilt, Note = history.Registered?.Note });
        if (history.Jobs.FirstOrDefault(j => j.End is null) is { } open)
            return ActAnswer.Refuse("Serial", $"Tool {intake.Tool} is in the house already, as {open.Job} at {open.Station}.", "Go on with that job, or look at the number again.");
        if (intake.Lot is { } lot && house.Find(lot) is null)
            registers.Add(new LotOpened(lot, customer, "opened with its first tool"));
        if (registers.Count > 0 && ActAnswer.Of(await bench.Ledger.AppendOnceAsync(signature.ForPart(1).Token, signature.By, registers)) is not ActAnswer.Done and var refused)
            return refused;

        return ActAnswer.Of(await bench.Ledger.OpenJobAsync(signature.Token, signature.By, new JobOpened
        {
            ModelId = intake.ModelId,
            ModelFingerprint = shelved.Model.Fingerprint,
            Tool = intake.Tool,
            Customer = customer,
            Complaint = intake.Complaint,
            ConditionOnReceipt = intake.Condition,
            Promised = intake.Promised,
            Lot = intake.Lot,
            CustomerReference = intake.Reference,
        }));
    }

    /// <summary>Signs one safe state; with the last of them the job goes on.</summary>
    public Task<ActAnswer> SignSafeAsync(Signature signature, JobId id, NodeId state) => JobAtBench.ActAsync(bench, signature, id, Station.Arrive, async at =>
    {
        var steps = Isolation.Of(at.Model);
        if (steps.All(s => s.State != state))
            return ActAnswer.Refuse("", $"'{state}' is no state that makes this tool safe.", "Load the page again.");
        var isLast = steps.All(s => s.State == state || at.Job.SafeStates.Exists(e => e.What.State == s.State));
        List<JobEvent> events = [new StateSigned(state)];
        if (isLast)
            events.Add(new StationReached(StationOrder.After(at.Shelved.Level, at.Job, Station.Arrive), null));
        return await at.WriteAsync(signature, events);
    });
}
