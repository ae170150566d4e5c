using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Paper.Sheets;
using Ramwright.Proving;
using Ramwright.Proving.Reference;

namespace Ramwright.Paper.Tests.Saltmarsh;

/// <summary>Invented data: a proof series and its verdict, written down as the paper would be given them.</summary>
internal static class Proofs
{
    public static readonly double[] AsLeft = [701.2, 698.4, 703.0, 699.7, 700.6, 697.9, 702.1, 700.9, 699.1, 701.7, 698.8, 700.4];
    public static readonly double[] AsFound = [611.2, 613.0, 610.8];

    public static readonly ProofSeries Series = new()
    {
        Limits = House.Limits.Pressure,
        PlannedRuns = 12,
        Systematic = new(Pressure.FromBar(4), Pressure.FromBar(4.4), Pressure.FromBar(1)),
        Peaks = [.. AsLeft.Select(Pressure.FromBar)],
    };

    /// <summary>Mean and standard deviation follow from <see cref="AsLeft"/>; k 2.736 for n = 12, 95/95 one-sided, 3.162 two-sided (handbook figures, from memory).</summary>
    public static readonly Verdict Conforms = new()
    {
        Conformity = Conformity.Conforms,
        Reasons = [new Reason.BothClaimsHold()],
        Runs = 12,
        PlannedRuns = 12,
        Mean = Pressure.FromBar(AsLeft.Average()),
        StandardDeviation = Pressure.FromBar(1.574),
        GuardLow = Pressure.FromBar(683),
        GuardHigh = Pressure.FromBar(716.6),
        Claims =
        [
            new(LimitSide.Lower, Pressure.FromBar(679), Pressure.FromBar(683), 11.01, 0.999_97, true),
            new(LimitSide.Upper, Pressure.FromBar(721), Pressure.FromBar(716.6), 10.33, 0.999_95, true),
        ],
        OneSidedFactor = 2.736,
        ToleranceFactor = 3.162,
        Interval = new(Pressure.FromBar(695.3), Pressure.FromBar(705.3)),
    };

    /// <summary>2.8 bar / 2, 1.6 / √3 ... give 4 bar with k = 2, and the capture 0.4 bar upward, as the series has them.</summary>
    public static readonly ReferenceBudget Reference = new(ReferenceKind.ForceCell,
        [
            new("calibration", SpreadShape.Expanded, BudgetUnit.Force, 340, 2, 824.4, Pressure.FromBar(1.4015), Effect.Systematic),
            new("friction", SpreadShape.Rectangular, BudgetUnit.Force, 240, 1.7320508, 824.4, Pressure.FromBar(1.1423), Effect.Systematic),
            new("drift, as stated", SpreadShape.Rectangular, BudgetUnit.Force, 180, 1.7320508, 824.4, Pressure.FromBar(0.8567), Effect.Systematic),
            new("temperature", SpreadShape.Rectangular, BudgetUnit.Temperature, 4, 1.7320508, 4947, Pressure.FromBar(0.1142), Effect.Systematic),
            new("repeats", SpreadShape.Normal, BudgetUnit.Force, 61, 1, 824.4, Pressure.FromBar(0.5029), Effect.Random) { DegreesOfFreedom = 9 },
        ],
        2, Pressure.FromBar(0.4), 1e8)
    { Lateness = TimeSpan.FromMilliseconds(0.4), Remarks = [BudgetRemark.TemperatureNotStated] };

    public static ImmutableArray<RunLine> RunsWithOneVoid =>
    [
        .. AsLeft.Take(4).Select((bar, i) => Run(i + 1, bar)),
        Run(5, 512.6) with { VoidCause = "the jaw block slipped; seen and written down before the value was read" },
        .. AsLeft.Skip(4).Select((bar, i) => Run(i + 6, bar)),
    ];

    public static ProofReportInput Report => new()
    {
        Number = "SM-0409-P1",
        House = House.Header,
        Job = House.Job,
        Limits = House.Limits,
        Series = Series,
        Verdict = Conforms,
        Runs = RunsWithOneVoid,
        AsFound = [.. AsFound.Select((bar, i) => Run(i + 1, bar))],
        Device = new()
        {
            Kind = "force cell",
            Id = "FC-2, jaw block J85",
            Serial = "44-1207",
            Range = "0 to 120 kN",
            Response = "0.1 ms, sampled at 5 kHz",
            Calibrated = new(2026, 8, 27),
            CalibrationDue = new(2027, 2, 27),
            Certificate = "K 26-0831, Ridgeway Calibration",
        },
        Reference = Reference,
        OutputForce = ProofForce.Of(Reference, Conforms, new ForceConversion(Length.FromMillimetres(39.3), Length.FromMillimetres(0.05), Force.FromNewtons(1_690), Force.FromNewtons(169), Force.FromNewtons(600), Force.FromNewtons(240))),
        Risk = ProofRisk.Of(Series, Conforms, Pressure.FromBar(0.4), [.. Enumerable.Range(0, 12).Select(i => Pressure.FromBar(696 + (i % 5) * 2))]),
        Method = "peak of each full run by force cell between jaw blocks, force over ram area, spring and friction allowed for",
        Load = "dies closed on blocks",
        BenchTemperature = Temperature.FromCelsius(22),
        OilTemperatureFirst = Temperature.FromCelsius(31),
        OilTemperatureLast = Temperature.FromCelsius(38),
        WorkDone = ["ram seals and wiper renewed", "oil renewed, HEES 32", "relief set +38°, locked, checked once more"],
        Tested = new(2026, 11, 25),
        TestedBy = new("J. Fenn"),
        Issued = House.Noon,
        ReleasedBy = House.Lead,
        Ledger = House.Ledger,
        ModelFingerprint = House.Model.Fingerprint,
    };

    private static RunLine Run(int number, double bar) => new(number, Pressure.FromBar(bar));
}
