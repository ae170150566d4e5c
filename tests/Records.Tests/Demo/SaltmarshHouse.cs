using Ramwright.Records.Ids;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Tests.Demo;

/// <summary>
/// The Saltmarsh Tool Service: a made-up shop with made-up people, customers, tools and jobs at every station, for practice.
/// Everything in it is written through the ledger like anybody's work; days count back from today, figures are the same every time.
/// </summary>
internal static class SaltmarshHouse
{
    public static PersonId Lead { get; } = PersonId.Parse("ada-fenn");
    public static PersonId Technician { get; } = PersonId.Parse("tom-sallow");
    public static PersonId SecondTechnician { get; } = PersonId.Parse("ines-holm");
    public static CustomerId Eelmarsh { get; } = CustomerId.Parse("eelmarsh-lines");
    public static CustomerId Samphire { get; } = CustomerId.Parse("samphire-power");
    public static CustomerId Wrackford { get; } = CustomerId.Parse("wrackford-rail");
    public static InstrumentId ForceCell { get; } = InstrumentId.Parse("FC-2");
    public static InstrumentId PortGauge { get; } = InstrumentId.Parse("PG-1");
    public static InstrumentId SimulatedGauge { get; } = InstrumentId.Parse("SIM-1");
    public static InstrumentId TorqueWrench { get; } = InstrumentId.Parse("TW-4");
    public static InstrumentId Calliper { get; } = InstrumentId.Parse("CA-3");
    public static LotId Lot { get; } = LotId.Parse("L-0012");

    /// <summary>Fills an empty ledger. A house that somebody else began is left alone; a filling that was cut off is taken up where it stopped.</summary>
    /// <param name="path">The ledger's file. No other door to it may be writing meanwhile.</param>
    /// <param name="clock">Gives today.</param>
    /// <param name="models">The models to make jobs of; the stories know <c>corrie-85</c>, <c>corrie-120</c> and <c>skerry-52</c>, those not given are left out.</param>
    /// <returns>True when the house is the Saltmarsh house.</returns>
    public static async Task<bool> FillAsync(string path, TimeProvider clock, IEnumerable<ServiceModel> models)
    {
        var telling = new Telling(path, clock.GetUtcNow(), models.ToDictionary(m => m.Tool.Id, StringComparer.Ordinal));
        using var ledger = telling.Ledger;
        if (await ledger.FindAsync(telling.LastToken) is not null)
            return true;
        if ((await ledger.HeadAsync()).Number > EntryNumber.None && await ledger.FindAsync(telling.FirstToken) is null)
            return false;
        SaltmarshRegisters.Tell(telling);
        SaltmarshJobs.Tell(telling);
        await telling.RunAsync();
        return true;
    }

}
