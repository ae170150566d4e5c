using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Planning.Strip;
using Ramwright.Proving;
using Ramwright.Proving.Reference;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.Records.Ids;
using Ramwright.Records.Store;
using Ramwright.Records.Tests.Jobs;
using Ramwright.Records.Tests.Store;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Tests.Wire;

/// <summary>One event of every kind with every field filled, all invented: what the stored texts are compared with.</summary>
internal static class EventSamples
{
    private static readonly InstrumentId Gauge = InstrumentId.Parse("PG-1");

    public static IEnumerable<object> All() => [.. JobEvents(), .. ProofEvents(), .. HouseEvents()];

    private static IEnumerable<object> JobEvents() =>
    [
        LedgerBench.Opening() with { Lot = LotId.Parse("L-0012"), CustomerReference = "PO 7781 – Öl" },
        new StateSigned(new("battery-removed")),
        new FindingRecorded(new SymptomId("oil-at-rod"), null, Seen: false),
        new MeasurementRecorded("held after one minute", MeasuredValue.Of(Pressure.FromBar(512.5)), Gauge, "oil 31 °C"),
        new MeasurementRecorded("trigger to dies closed", MeasuredValue.Of(TimeSpan.FromSeconds(4.1)), null, null) { Reading = "advance-time" },
        new CheckMade(new("hold"), "falls", "60 bar in a minute"),
        new StrokeRecorded("stroke-3.csv", new('d', 64), TimeSpan.FromMilliseconds(4))
        {
            PressureColumn = "p2", PressureScale = "100 bar/V",
            Figures = [new("reliefOpening", 698.5, 696.25, 700.75, "bar"), new("pumpFill", 0.75, 0.74, 0.76, "")],
            Faults = [new(new("low-fill"), 0.97, 400)], Shows = [new("slow")], Measures = ["advance-time"],
        },
        new AsFoundRead([Pressure.FromBar(650), Pressure.FromBar(651.5)], Gauge, null),
        new TargetsChosen([new("seal-ram")], "pressure falls at rest"),
        new StripPlanned([new("ram")], [new("battery-removed")], Plan()),
        new QuoteMade("SM-0417-Q1", SampleQuote.Made(), SampleQuote.Made().Cover, new(2026, 4, 1)),
        new QuoteAnswered(Accepted: true, "Mr Reed", new Money(200.50m, "EUR"), "by telephone"),
        new StripStepSigned(3, new("cap-nut"), MeasuredValue.Of(Torque.FromNewtonMetres(85)), "left-hand thread"),
        new InspectionAnswered(new("rod-diameter"), new("ram-rod"), Good: true, MeasuredValue.Of(Length.FromMillimetres(24.98)), null),
        new RebuildPlanned([new("ram")], JobScriptEvents.RebuildPlan("seal-ram! ram")),
        new RebuildStepSigned(4, Torque.FromNewtonMetres(85.2), InstrumentId.Parse("TW-4"), [new(BatchId.Parse("S-2291"), new NodeId("seal-ram"), 2, null), new(BatchId.Parse("O-0347"), null, 0, Volume.FromMillilitres(95))], null),
        new NoteWritten(Station.Strip, "the ball is loose"),
        new ReportIssued(ReportKind.ProofReport, "SM-0417-P1", new('b', 64), new LedgerHead(new(120), new('c', 64))),
        new StationReached(Station.Set, "mean low"),
        new JobEnded(JobEnd.ReturnedUnrepaired, "quote declined"),
        new EntryCorrected(new(17), "wrong tool on the bench"),
    ];

    private static IEnumerable<object> ProofEvents() =>
    [
        new SettingPeakRead(Pressure.FromBar(724), Gauge),
        new ReliefTurned(Angle.FromTurns(-0.5)),
        new ReliefLocked(),
        new SeriesOpened
        {
            Series = 1, PlannedRuns = 12, Limits = new(Pressure.FromBar(679), Pressure.FromBar(721)), Maximum = Pressure.FromBar(735), Device = Gauge,
            Systematic = new(Pressure.FromBar(2.5), Pressure.FromBar(4), Pressure.FromBar(0.6)), Coverage = 0.95, Confidence = 0.9, Rule = DecisionRule.OneSidedPerLimit,
            Load = "die-close stop", Room = Temperature.FromCelsius(20.5), Oil = Temperature.FromCelsius(31),
        },
        new SeriesOpened
        {
            Series = 2, PlannedRuns = 12, Limits = new(Pressure.FromBar(679), Pressure.FromBar(721)), Maximum = Pressure.FromBar(735), Device = Gauge,
            Systematic = new(Pressure.FromBar(2.5), Pressure.FromBar(4), Pressure.FromBar(0.6)), Coverage = 0.95, Confidence = 0.9, Rule = DecisionRule.OneSidedPerLimit,
            Earlier = [new(Pressure.FromBar(2), 12), new(Pressure.FromBar(1.5), 8)], Resolution = Pressure.FromBar(0.1),
        },
        new RunTaken(1, 2, Pressure.FromBar(699.5), Gauge),
        new SeriesOpened
        {
            Series = 3, PlannedRuns = 12, Limits = new(Pressure.FromBar(679), Pressure.FromBar(721)), Maximum = Pressure.FromBar(735), Device = Gauge,
            Systematic = new(Pressure.FromBar(2.5), Pressure.FromBar(4), Pressure.FromBar(0.6)), Coverage = 0.95, Confidence = 0.9, Rule = DecisionRule.OneSidedPerLimit,
            Reference = new ReferenceBudget(ReferenceKind.ForceCell,
                [
                    new("calibration line", SpreadShape.Normal, BudgetUnit.Force, 150, 1, 824.4, Pressure.FromBar(1.2366), Effect.Systematic) { DegreesOfFreedom = 4 },
                    new("temperature", SpreadShape.Rectangular, BudgetUnit.Temperature, 10, 1.75, 4946, Pressure.FromBar(0.25), Effect.Random),
                ],
                2.25, Pressure.FromBar(1.5), 1e8)
            {
                DegreesOfFreedom = 8.5, Lateness = TimeSpan.FromMilliseconds(1.5),
                Correction = new ReadingCorrection(75_000, [60, 0.0005], Area.FromSquareMetres(0.001213), Force.FromNewtons(2_300)),
                Remarks = [BudgetRemark.DriftAssumed, BudgetRemark.TemperatureNotStated],
            },
        },
        new RunTaken(3, 1, Pressure.FromBar(699.5), Gauge) { Shown = Pressure.FromBar(699), Source = RunSource.Memory },
        new SettingPeakRead(Pressure.FromBar(724), Gauge) { Shown = Pressure.FromBar(723.5) },
        new SensorCompared(Gauge, Pressure.FromBar(1.25), Pressure.FromBar(7), Pressure.FromBar(1), [new(0, 2e7, 2.01e7, true), new(0, 2e7, 2.02e7, false)]),
        new FrictionLooped(InstrumentId.Parse("FC-2"), [new(Force.FromNewtons(61_100), Force.FromNewtons(61_400))]),
        new RunVoided(1, 2, "trigger let go"),
        new SeriesClosed(1, Verdict()),
        new ToolQuarantined(Pressure.FromBar(738), Pressure.FromBar(735)),
        new QuarantineLifted("frame inspected by dye, no crack"),
    ];

    private static IEnumerable<object> HouseEvents() =>
    [
        new PersonRegistered(LedgerBench.Ada, "Ada Fenn", "workshop lead", MayAuthoriseRelease: true),
        new CustomerRegistered(CustomerId.Parse("eelmarsh-lines"), "Eelmarsh Lines") { Address = "11 Pylon Road", Contact = "Mr Reed", AgreedInterval = TimeSpan.FromDays(365) },
        new ToolRegistered(ToolSerial.Parse("C85-20417"), "corrie-85", CustomerId.Parse("eelmarsh-lines")) { YearBuilt = 2021, Note = "own grip" },
        new LotOpened(LotId.Parse("L-0012"), CustomerId.Parse("wrackford-rail"), "yearly service"),
        new BatchReceived(BatchId.Parse("O-0347"), BatchKind.Oil, "HEES 32", new(2026, 1, 5), new(2028, 1, 5)) { PartNumber = "C85-3300", Oil = Volume.FromMillilitres(5000), Material = "HEES 32", Count = 1 },
        new InstrumentRegistered(Gauge, "gauge at the test port", InstrumentKind.PortGauge, MeasuredKind.Pressure)
        {
            Maker = "made-up maker", SerialNumber = "5520", Range = MeasuredValue.Of(Pressure.FromBar(1000)), Resolution = MeasuredValue.Of(Pressure.FromBar(0.5)),
            Response = TimeSpan.FromMilliseconds(1), SamplingInterval = TimeSpan.FromMilliseconds(2), Connection = "simulated", InUse = false,
        },
        new InstrumentCalibrated(Gauge, new(2025, 12, 1), new(2026, 12, 1), "K-25-0072", "a made-up laboratory", MeasuredValue.Of(Pressure.FromBar(2.5)))
            { DriftPerYear = MeasuredValue.Of(Pressure.FromBar(0.4)), PerKelvin = MeasuredValue.Of(Pressure.FromBar(0.05)) },
        new InstrumentCalibrated(Gauge, new(2026, 12, 1), new(2027, 12, 1), "K-26-0072", "a made-up laboratory", MeasuredValue.Of(Pressure.FromBar(2.5)))
        {
            AsFoundWithin = true, Adjusted = false, Curve = CurveForm.Quadratic,
            Points = [new(2e7, 2.01e7), new(4e7, 4.01e7, 50_000)],
        },
        new SettingsChanged(new()
        {
            ShopName = "Saltmarsh Tool Service", ShopAddress = "4 Sluice Lane", JobLetters = "SM", FirstJobNumber = 412, LabourPerHour = new(68, "EUR"), TaxRate = 0.19,
            Units = UnitSystem.Imperial, Paper = PaperSize.Letter, ChancePastMaximum = 0.01, PressLimit = Force.FromKilonewtons(30),
        }),
    ];

    private static StripPlan Plan()
    {
        var plan = JobScriptEvents.StripPlan("cap-nut ram+seal-ram");
        var first = plan.Steps[0] with
        {
            Way = 0,
            Tool = new ToolId("hook-wrench-62"),
            Posture = new PostureId("flat"),
            Why = new StepReason.InTheWayOf([new("ram")]),
            Cautions = [new(CautionLevel.Warning, "stored-spring-energy", "hold it with the press cup")],
            Inspections = [new("thread")],
        };
        return plan with { Steps = plan.Steps.SetItem(0, first), Inspections = [new(new("cap-nut"), new("thread"), 0)], Renewals = plan.Steps[1].Renewals };
    }

    private static Verdict Verdict() => new()
    {
        Conformity = Conformity.Undecided,
        Reasons =
        [
            new Reason.RunOutside(3, Pressure.FromBar(730), LimitSide.Upper, Pressure.FromBar(721), Pressure.FromBar(4)),
            new Reason.ShareTooSmall(LimitSide.Lower, Pressure.FromBar(675), 0.9), new Reason.BothClaimsHold(), new Reason.NoRun(), new Reason.TooFewRuns(1, 12),
            new Reason.CentreOff(Pressure.FromBar(690), Pressure.FromBar(700)), new Reason.ScatterTooLarge(Pressure.FromBar(8), Pressure.FromBar(6)),
            new Reason.DeviceTooCoarse(Pressure.FromBar(50), Pressure.FromBar(42)), new Reason.LongerSeriesWouldDecide(24, 0.8), new Reason.NoSeriesWouldDecide(60),
            new Reason.EqualReadings(Pressure.FromBar(700)), new Reason.RuleNotMet("two-sided-interval"),
        ],
        Runs = 1,
        PlannedRuns = 12,
        Mean = Pressure.FromBar(699.5),
        StandardDeviation = Pressure.FromBar(1.75),
        ScatterFrom = ScatterSource.Own,
        GuardLow = Pressure.FromBar(681.5),
        GuardHigh = Pressure.FromBar(717),
        Claims = [new(LimitSide.Lower, Pressure.FromBar(679), Pressure.FromBar(681.5), double.PositiveInfinity, 0.999, Holds: true)],
        OneSidedFactor = 2.736,
        ToleranceFactor = 3.162,
        Interval = new(Pressure.FromBar(690), Pressure.FromBar(709)),
        Flags = [new("trend", null, 0.03, "the peaks rise")],
    };
}
