using System.Collections.Immutable;
using Ramwright.App.Devices;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;

namespace Ramwright.App.Demo;

/// <summary>
/// The made-up Saltmarsh Tool Service: people, customers, instruments, batches, settings. Everything here is invented; so are the makers
/// Corrie and Skerry. The instruments are calibrated relative to the day on which the house is set up.
/// </summary>
public static class SaltmarshHouse
{
    public static PersonId Lead { get; } = PersonId.Parse("m-orme");

    public static PersonId Technician { get; } = PersonId.Parse("j-teal");

    public static InstrumentId ForceCell { get; } = InstrumentId.Parse("FC-2");

    public static HouseSettings Settings { get; } = new()
    {
        ShopName = "Saltmarsh Tool Service",
        ShopAddress = "4 Creek Row\nSaltmarsh Quay",
        JobLetters = "SM",
        LabourPerHour = new(62, "EUR"),
        TaxRate = 0.20,
    };

    /// <summary>Forces at which the made-up laboratory compared the cell, newtons.</summary>
    private static readonly double[] CellReadings = [20_000, 40_000, 60_000, 80_000, 110_000, 145_000];

    /// <summary>Points of a made-up certificate: readings, and how much more the laboratory's standard showed.</summary>
    private static ImmutableArray<CalibrationPoint> Points(double[] readings, double[] more) => [.. readings.Zip(more, (x, m) => new CalibrationPoint(x, x + m))];

    /// <summary>Names of the made-up customers.</summary>
    public static ImmutableArray<string> Customers { get; } = ["Eelmarsh Lines", "Samphire Power", "Wrackford Rail"];

    /// <summary>The registers of the house on its first day.</summary>
    public static ImmutableArray<HouseEvent> Registers(DateOnly today) =>
    [
        new PersonRegistered(Lead, "M. Orme", "lead", MayAuthoriseRelease: true),
        new PersonRegistered(Technician, "J. Teal", "technician", MayAuthoriseRelease: false),
        new SettingsChanged(Settings),
        new CustomerRegistered(CustomerId.Parse("eelmarsh-lines"), "Eelmarsh Lines") { Contact = "R. Sedge", AgreedInterval = TimeSpan.FromDays(365) },
        new CustomerRegistered(CustomerId.Parse("samphire-power"), "Samphire Power") { Contact = "A. Dunlin" },
        new CustomerRegistered(CustomerId.Parse("wrackford-rail"), "Wrackford Rail") { Contact = "T. Brent" },
        new InstrumentRegistered(ForceCell, "force cell 150 kN with jaw block", InstrumentKind.ForceCell, MeasuredKind.Force)
        {
            Maker = "made here",
            SerialNumber = "22-0417",
            Range = MeasuredValue.Of(Force.FromNewtons(150_000)),
            Resolution = MeasuredValue.Of(Force.FromNewtons(10)),
            Response = TimeSpan.FromMilliseconds(0.1),
            SamplingInterval = TimeSpan.FromMilliseconds(0.2),
            Connection = SimulatedBench.Connection,
        },
        new InstrumentCalibrated(ForceCell, today.AddDays(-636), today.AddDays(-271), "K-1874", "Saltmarsh Harbour Calibration", MeasuredValue.Of(Force.FromNewtons(340)))
            { Points = Points(CellReadings, [18, 12, 30, 26, 44, 47]) },
        new InstrumentCalibrated(ForceCell, today.AddDays(-271), today.AddDays(94), "K-2231", "Saltmarsh Harbour Calibration", MeasuredValue.Of(Force.FromNewtons(340)))
        {
            AsFoundWithin = true, Adjusted = false, PerKelvin = MeasuredValue.Of(Force.FromNewtons(6)), Points = Points(CellReadings, [31, 40, 52, 70, 78, 95]),
        },
        new InstrumentRegistered(InstrumentId.Parse("PG-1"), "port gauge 1,000 bar", InstrumentKind.PortGauge, MeasuredKind.Pressure)
        {
            SerialNumber = "19-1188",
            Range = MeasuredValue.Of(Pressure.FromBar(1000)),
            Resolution = MeasuredValue.Of(Pressure.FromBar(0.5)),
            Response = TimeSpan.FromMilliseconds(2),
            SamplingInterval = TimeSpan.FromMilliseconds(1),
            Connection = SimulatedBench.Connection,
        },
        new InstrumentCalibrated(InstrumentId.Parse("PG-1"), today.AddDays(-150), today.AddDays(215), "K-2288", "Saltmarsh Harbour Calibration", MeasuredValue.Of(Pressure.FromBar(2.5)))
            { DriftPerYear = MeasuredValue.Of(Pressure.FromBar(0.8)), PerKelvin = MeasuredValue.Of(Pressure.FromBar(0.05)) },
        new InstrumentRegistered(InstrumentId.Parse("PH-3"), "peak-hold gauge", InstrumentKind.PeakHoldGauge, MeasuredKind.Pressure)
        {
            Range = MeasuredValue.Of(Pressure.FromBar(1000)),
            Response = TimeSpan.FromMilliseconds(20),
        },
        new InstrumentCalibrated(InstrumentId.Parse("PH-3"), today.AddDays(-380), today.AddDays(-15), "K-2090", "Saltmarsh Harbour Calibration", MeasuredValue.Of(Pressure.FromBar(5))),
        new InstrumentRegistered(InstrumentId.Parse("TW-1"), "torque wrench 20 to 120 N·m", InstrumentKind.TorqueWrench, MeasuredKind.Torque) { Range = MeasuredValue.Of(Torque.FromNewtonMetres(120)) },
        new InstrumentCalibrated(InstrumentId.Parse("TW-1"), today.AddDays(-60), today.AddDays(305), "K-2301", "Saltmarsh Harbour Calibration", MeasuredValue.Of(Torque.FromNewtonMetres(1.6))),
        new BatchReceived(BatchId.Parse("OIL-118"), BatchKind.Oil, "HEES 32", today.AddDays(-90), today.AddDays(640)) { Oil = Volume.FromCubicMetres(0.005), Material = "HEES 32" },
        new BatchReceived(BatchId.Parse("S-0719"), BatchKind.Seal, "ram seals NBR 70", today.AddDays(-200), today.AddDays(3000)) { Count = 24, Material = "NBR" },
        new BatchReceived(BatchId.Parse("S-0588"), BatchKind.Seal, "wipers AU 92", today.AddDays(-900), today.AddDays(-20)) { Count = 6, Material = "AU" },
    ];
}
