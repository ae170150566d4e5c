using System.Collections.Immutable;
using Ramwright.Records.Events;
using Ramwright.Records.Ids;

namespace Ramwright.Records.House;

/// <summary>The registers and settings of the house as they stand; a fold of the house's entries. Customers' tools are asked for one by one.</summary>
public sealed record HouseState
{
    public static HouseState Empty { get; } = new();

    public EntryNumber Version { get; init; }
    public HouseSettings Settings { get; init; } = HouseSettings.Unset;

    /// <summary>Whether anybody has set the house up.</summary>
    public bool IsSetUp { get; init; }

    public ImmutableSortedDictionary<string, PersonRegistered> PeopleById { get; init; } = Register<PersonRegistered>.Empty;
    public ImmutableSortedDictionary<string, CustomerRegistered> CustomersById { get; init; } = Register<CustomerRegistered>.Empty;
    public ImmutableSortedDictionary<string, InstrumentState> InstrumentsById { get; init; } = Register<InstrumentState>.Empty;
    public ImmutableSortedDictionary<string, BatchReceived> BatchesById { get; init; } = Register<BatchReceived>.Empty;
    public ImmutableSortedDictionary<string, LotOpened> LotsById { get; init; } = Register<LotOpened>.Empty;

    public PersonRegistered? Find(PersonId id) => PeopleById.GetValueOrDefault(id.ToString());

    public CustomerRegistered? Find(CustomerId id) => CustomersById.GetValueOrDefault(id.ToString());

    public InstrumentState? Find(InstrumentId id) => InstrumentsById.GetValueOrDefault(id.ToString());

    public BatchReceived? Find(BatchId id) => BatchesById.GetValueOrDefault(id.ToString());

    public LotOpened? Find(LotId id) => LotsById.GetValueOrDefault(id.ToString());

    /// <summary>The person's name; the id where the register does not know it.</summary>
    public string NameOf(PersonId id) => Find(id)?.Name ?? id.ToString();

    /// <summary>The customer's name; the id where the register does not know it.</summary>
    public string NameOf(CustomerId id) => Find(id)?.Name ?? id.ToString();

    public static HouseState Fold(IEnumerable<Entry<HouseEvent>> entries) => entries.Aggregate(Empty, (state, entry) => state.After(entry));

    public HouseState After(Entry<HouseEvent> entry) => entry.What switch
    {
        PersonRegistered x => this with { PeopleById = PeopleById.SetItem(x.Person.ToString(), x) },
        CustomerRegistered x => this with { CustomersById = CustomersById.SetItem(x.Customer.ToString(), x) },
        InstrumentRegistered x => this with { InstrumentsById = InstrumentsById.SetItem(x.Instrument.ToString(), Known(x.Instrument) with { Facts = x }) },
        InstrumentCalibrated x => this with { InstrumentsById = InstrumentsById.SetItem(x.Instrument.ToString(), Known(x.Instrument).Calibrated(x)) },
        BatchReceived x => this with { BatchesById = BatchesById.SetItem(x.Batch.ToString(), x) },
        LotOpened x => this with { LotsById = LotsById.SetItem(x.Lot.ToString(), x) },
        SettingsChanged x => this with { Settings = x.Settings, IsSetUp = true },
        ToolRegistered => this,
        _ => throw new ArgumentException($"The fold does not know {entry.What.GetType().Name}.", nameof(entry)),
    } with
    { Version = entry.Number };

    private InstrumentState Known(InstrumentId id) => Find(id)
        ?? new(new InstrumentRegistered(id, id.ToString(), InstrumentKind.Other, MeasuredKind.Pressure), []);

    private static class Register<T>
    {
        public static readonly ImmutableSortedDictionary<string, T> Empty = ImmutableSortedDictionary.Create<string, T>(StringComparer.Ordinal);
    }
}

/// <summary>An instrument and its calibrations, the latest last.</summary>
public sealed record InstrumentState(InstrumentRegistered Facts, ImmutableList<InstrumentCalibrated> Calibrations)
{
    /// <summary>The calibration in force; null when it never had one.</summary>
    public InstrumentCalibrated? Calibration => Calibrations.Count > 0 ? Calibrations[^1] : null;

    /// <summary>The days whose readings are in doubt, because the latest calibration found it off; null when none are.</summary>
    public (DateOnly Since, DateOnly Until)? InDoubt => Calibrations is [.., var before, { AsFoundWithin: false } last] ? (before.On, last.On)
        : Calibrations is [{ AsFoundWithin: false } only] ? (DateOnly.MinValue, only.On)
        : null;

    /// <summary>Whether it must be calibrated before it is relied on that day.</summary>
    public bool IsDueOn(DateOnly day) => Calibration is not { } last || day > last.Due;

    internal InstrumentState Calibrated(InstrumentCalibrated calibration) =>
        this with { Calibrations = [.. Calibrations.Add(calibration).OrderBy(c => c.On)] };
}
