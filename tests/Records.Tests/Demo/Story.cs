using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Parts;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Tests.Demo;

/// <summary>One job as it goes along: each act moves the time on and is written when the telling comes to it.</summary>
internal sealed class Story(Telling telling, string name, ServiceModel model, DateTimeOffset start)
{
    private DateTimeOffset at = start;
    private int acts;
    private JobId job;

    public ServiceModel Model { get; } = model;

    /// <summary>Time passes until the next act.</summary>
    public Story Later(double minutes)
    {
        at = at.AddMinutes(minutes);
        return this;
    }

    /// <summary>The next act happens on another day.</summary>
    public Story On(int daysBack, int hour, int minute = 0)
    {
        at = telling.At(daysBack, hour, minute);
        return this;
    }

    public Story Open(string serial, CustomerId owner, string complaint, string condition, int promisedIn, LotId? lot = null)
    {
        telling.Registers($"{name} tool", at, new ToolRegistered(ToolSerial.Parse(serial), Model.Tool.Id, owner) { YearBuilt = 2021 });
        var opened = new JobOpened
        {
            ModelId = Model.Tool.Id,
            ModelFingerprint = Model.Fingerprint,
            Tool = ToolSerial.Parse(serial),
            Customer = owner,
            Complaint = complaint,
            ConditionOnReceipt = condition,
            Promised = telling.Today.AddDays(promisedIn),
            Lot = lot,
        };
        telling.Happens(at, async () => job = Telling.Written(await telling.Ledger.OpenJobAsync(Telling.Token($"{name} open"), SaltmarshHouse.Technician, opened), name).Job!.Value);
        return Later(2);
    }

    /// <summary>Pack out, pressure off: the states that the model says make the tool safe.</summary>
    public Story Safe() => Signed(SaltmarshHouse.Technician, [.. Model.States.Where(s => s.Isolates).Select(s => new StateSigned(s.Id))]);

    public Story Signed(PersonId by, params JobEvent[] events) => Acts(by, _ => events);

    /// <summary>Events that depend on how the job stands.</summary>
    public Story Acts(PersonId by, Func<JobState, IReadOnlyList<JobEvent>> events)
    {
        var token = Telling.Token(string.Create(CultureInfo.InvariantCulture, $"{name} {acts++}"));
        telling.Happens(at, async () =>
        {
            var state = (await telling.Ledger.ReadAsync(job))!;
            // Told before and cut off later: the ledger gives the first result, whatever is sent now.
            var known = await telling.Ledger.FindAsync(token) is not null;
            if (!known && events(state) is { Count: > 0 } what)
                Telling.Written(await telling.Ledger.AppendOnceAsync(token, by, job, state.Version, what), name);
        });
        return Later(3);
    }

    public Story Goes(Station station, string? why = null) => Signed(SaltmarshHouse.Technician, new StationReached(station, why));

    public Story Planned(string why, params string[] parts)
    {
        NodeId[] targets = [.. parts.Select(p => new NodeId(p))];
        return Acts(SaltmarshHouse.Technician, state => StripPlanner.Plan(new()
        {
            Model = Model,
            Rates = SaltmarshRegisters.Settings.Rates,
            Targets = [.. targets],
            Done = state.Done,
            RenewalsOwed = state.RenewalsOwed,
        }) is StripAnswer.Planned planned
            ? [new TargetsChosen([.. targets], why), new StripPlanned([.. targets], [.. state.Done.OrderBy(n => n.Value, StringComparer.Ordinal)], planned.Plan)]
            : throw new InvalidOperationException($"{Model.Tool.Name}: nothing frees {string.Join(", ", parts)}."));
    }

    public Story Quoted() => Acts(SaltmarshHouse.Lead, state =>
    {
        var strip = state.Strip!.Plan;
        var settings = SaltmarshRegisters.Settings;
        var quote = QuoteMaker.Make(Model, strip, Rebuilding(state.Done.Union(strip.Steps.Select(s => s.Node)), strip), settings.Prices, new() { DoneBefore = state.Done });
        return [new QuoteMade(state.NextQuoteNumber(), quote, quote.Cover, DateOnly.FromDateTime(at.UtcDateTime).AddDays(30))];
    });

    public Story Answered(bool yes, string who, string? note = null) => Signed(SaltmarshHouse.Lead, new QuoteAnswered(yes, who, null, note));

    /// <summary>Signs strip steps, from the first open one, and the inspections that they allow.</summary>
    /// <param name="share">Part of the plan that is done by then, 0 to 1.</param>
    public Story Stripped(double share = 1)
    {
        Acts(SaltmarshHouse.Technician, state =>
        {
            var plan = state.Strip!.Plan;
            var last = (int)Math.Ceiling(share * plan.Steps.Length);
            List<JobEvent> events = [];
            for (var step = 0; step < last; step++)
            {
                events.Add(new StripStepSigned(step, plan.Steps[step].Node, null, null));
                events.AddRange(plan.Inspections.Where(i => i.AfterStep == step).Select(i => new InspectionAnswered(i.Inspection, i.Part, Good: true, null, null)));
            }

            return events;
        });
        return Later(25 * share);
    }

    public Story RebuildBegun() => Acts(SaltmarshHouse.Technician, state => [new RebuildPlanned([.. state.Done.OrderBy(n => n.Value, StringComparer.Ordinal)], Rebuilding(state.Done, state.Strip!.Plan))]);

    /// <summary>Signs rebuild steps with torque, wrench and batches.</summary>
    /// <param name="share">Part of the plan that is done by then, 0 to 1.</param>
    public Story Rebuilt(double share = 1)
    {
        Acts(SaltmarshHouse.Technician, state =>
        {
            var steps = state.Rebuild!.Plan.Steps;
            return [.. steps.Take((int)Math.Ceiling(share * steps.Length)).Select((step, i) => new RebuildStepSigned(
                i, step.Torque?.Torque, step.Torque is null ? null : SaltmarshHouse.TorqueWrench, [.. Batches(step)], null))];
        });
        return Later(30 * share);
    }

    public Story Ends(JobEnd end, string why) => Signed(SaltmarshHouse.Lead, new JobEnded(end, why));

    private static IEnumerable<BatchUse> Batches(RebuildStep step) =>
        step.NewParts.Where(p => p.Value.StartsWith("seal", StringComparison.Ordinal)).Select(p => new BatchUse(SaltmarshRegisters.SealBatch, p, 1, null))
            .Concat(step.Oil is { } oil ? [new BatchUse(SaltmarshRegisters.OilBatch, null, 0, oil)] : Array.Empty<BatchUse>());

    private RebuildPlan Rebuilding(IEnumerable<NodeId> done, StripPlan strip) => RebuildPlanner.Plan(new()
    {
        Model = Model,
        Rates = SaltmarshRegisters.Settings.Rates,
        Done = [.. done],
        Renewals = strip.Renewals,
        WaysUsed = strip.Steps.Where(s => s.Way is not null).ToImmutableDictionary(s => s.Node, s => s.Way!.Value),
    }) is RebuildAnswer.Planned planned
        ? planned.Plan
        : throw new InvalidOperationException($"{Model.Tool.Name}: it cannot be put together again.");
}
