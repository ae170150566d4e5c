using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.Records.Tests.Demo;

/// <summary>Who works there, for whom, and with what. All invented.</summary>
internal static class SaltmarshRegisters
{
    /// <summary>How far back the story begins, in days.</summary>
    public const int Beginning = 12;

    /// <summary>The last thing told: who has it told to the end.</summary>
    public static HouseEvent LastRegistration { get; } = new CustomerRegistered(CustomerId.Parse("private-customers"), "Private customers");

    public static BatchId SealBatch { get; } = BatchId.Parse("S-2291");
    public static BatchId OilBatch { get; } = BatchId.Parse("O-0347");

    public static HouseSettings Settings { get; } = new()
    {
        ShopName = "Saltmarsh Tool Service",
        ShopAddress = "4 Sluice Lane, Eelmarsh (a made-up shop)",
        JobLetters = "SM",
        FirstJobNumber = 412,
        LabourPerHour = new(68, "EUR"),
        TaxRate = 0.19,
        PressLimit = Force.FromKilonewtons(30),
    };

    public static void Tell(Telling t)
    {
        t.Registers("house 0", t.At(Beginning, 7, 0),
            new SettingsChanged(Settings),
            new PersonRegistered(SaltmarshHouse.Lead, "Ada Fenn", "workshop lead", MayAuthoriseRelease: true),
            new PersonRegistered(SaltmarshHouse.Technician, "Tom Sallow", "technician", MayAuthoriseRelease: false),
            new PersonRegistered(SaltmarshHouse.SecondTechnician, "Ines Holm", "technician", MayAuthoriseRelease: true),
            new CustomerRegistered(SaltmarshHouse.Eelmarsh, "Eelmarsh Lines") { Address = "11 Pylon Road, Eelmarsh", Contact = "Mr Reed", AgreedInterval = TimeSpan.FromDays(365) },
            new CustomerRegistered(SaltmarshHouse.Samphire, "Samphire Power") { Address = "2 Turbine Walk, Samphire Point", Contact = "Ms Dunlin" },
            new CustomerRegistered(SaltmarshHouse.Wrackford, "Wrackford Rail") { Address = "Depot 3, Wrackford", Contact = "Ms Carr" },
            new LotOpened(SaltmarshHouse.Lot, SaltmarshHouse.Wrackford, "yearly service, depot 3"));
        Instruments(t);
        Batches(t);
    }

    private static void Instruments(Telling t)
    {
        var day = t.Today;
        t.Registers("house 1", t.At(Beginning, 7, 10),
            new InstrumentRegistered(SaltmarshHouse.ForceCell, "force cell between jaw blocks, 100 kN", InstrumentKind.ForceCell, MeasuredKind.Force)
            {
                Maker = "made-up maker",
                SerialNumber = "71-3308",
                Range = MeasuredValue.Of(Force.FromKilonewtons(100)),
                Resolution = MeasuredValue.Of(Force.FromKilonewtons(0.01)),
                Response = TimeSpan.FromMilliseconds(0.5),
                SamplingInterval = TimeSpan.FromMilliseconds(0.2),
            },
            new InstrumentCalibrated(SaltmarshHouse.ForceCell, day.AddDays(-150), day.AddDays(215), "K-24-1187", "a made-up laboratory", MeasuredValue.Of(Force.FromNewtons(260))),
            new InstrumentRegistered(SaltmarshHouse.PortGauge, "gauge at the test port, 1000 bar", InstrumentKind.PortGauge, MeasuredKind.Pressure)
            {
                Maker = "made-up maker",
                SerialNumber = "5520",
                Range = MeasuredValue.Of(Pressure.FromBar(1000)),
                Resolution = MeasuredValue.Of(Pressure.FromBar(0.5)),
                Response = TimeSpan.FromMilliseconds(1),
                SamplingInterval = TimeSpan.FromMilliseconds(1),
            },
            new InstrumentCalibrated(SaltmarshHouse.PortGauge, day.AddDays(-90), day.AddDays(275), "K-25-0072", "a made-up laboratory", MeasuredValue.Of(Pressure.FromBar(2.5))),
            new InstrumentRegistered(SaltmarshHouse.SimulatedGauge, "simulated gauge, for practice", InstrumentKind.PortGauge, MeasuredKind.Pressure)
            {
                Maker = "this program",
                SerialNumber = "none",
                Range = MeasuredValue.Of(Pressure.FromBar(1000)),
                Resolution = MeasuredValue.Of(Pressure.FromBar(0.1)),
                Response = TimeSpan.FromMilliseconds(1),
                SamplingInterval = TimeSpan.FromMilliseconds(1),
                Connection = "simulated",
            },
            new InstrumentCalibrated(SaltmarshHouse.SimulatedGauge, day.AddDays(-30), day.AddDays(335), "SIM-1", "this program", MeasuredValue.Of(Pressure.FromBar(2))));
        t.Registers("house 2", t.At(Beginning, 7, 15),
            new InstrumentRegistered(SaltmarshHouse.TorqueWrench, "torque wrench 20 to 100 N·m", InstrumentKind.TorqueWrench, MeasuredKind.Torque) { Range = MeasuredValue.Of(Torque.FromNewtonMetres(100)) },
            new InstrumentCalibrated(SaltmarshHouse.TorqueWrench, day.AddDays(-200), day.AddDays(165), "K-24-0951", "a made-up laboratory", MeasuredValue.Of(Torque.FromNewtonMetres(2))),
            new InstrumentRegistered(SaltmarshHouse.Calliper, "calliper 150 mm", InstrumentKind.Calliper, MeasuredKind.Length) { Range = MeasuredValue.Of(Length.FromMillimetres(150)), Resolution = MeasuredValue.Of(Length.FromMillimetres(0.01)) },
            new InstrumentCalibrated(SaltmarshHouse.Calliper, day.AddDays(-380), day.AddDays(-15), "K-23-1502", "a made-up laboratory", MeasuredValue.Of(Length.FromMillimetres(0.03)))); // overdue, on purpose
    }

    private static void Batches(Telling t) => t.Registers("house 3", t.At(Beginning, 7, 20),
        new BatchReceived(SealBatch, BatchKind.Seal, "seal kits, HEES-proof", t.Today.AddDays(-60), t.Today.AddDays(1400)) { Material = "HNBR", Count = 10 },
        new BatchReceived(BatchId.Parse("S-2107"), BatchKind.Seal, "rod wipers", t.Today.AddDays(-900), t.Today.AddDays(40)) { Material = "AU", Count = 4 },
        new BatchReceived(OilBatch, BatchKind.Oil, "HEES 32", t.Today.AddDays(-45), t.Today.AddDays(680)) { Oil = Volume.FromMillilitres(5000), Material = "HEES 32" });
}
