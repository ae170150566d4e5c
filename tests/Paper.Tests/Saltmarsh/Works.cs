using Ramwright.Metrology.Quantities;
using Ramwright.Paper.Sheets;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;
using static Ramwright.Paper.Tests.Saltmarsh.House;

namespace Ramwright.Paper.Tests.Saltmarsh;

/// <summary>Invented data: plans as a planner would give them.</summary>
internal static class Works
{
    private static readonly Caution Spring = new(CautionLevel.Warning, "stored-spring-energy", "1,450 N push the ram out at the last thread; hold the cap with the press cup and keep out of the axis");

    public static StripPlan Strip => new()
    {
        Steps =
        [
            Step("battery-removed", "take the pack off", 0.3),
            Step("pressure-released", "press the return lever until the ram is home", 0.2),
            Step("cap-nut", "unscrew the cap nut", 2.5) with
            {
                Way = 0, Tool = new("hook-wrench-62"), Posture = new("upright-in-vice"), Cautions = [Spring], Why = new StepReason.InTheWayOf([Id("ram"), Id("seal-ram")]),
                Renewals = [new(Id("wiper"), 1, RenewalCause.Destroyed, Id("cap-nut"))],
            },
            Step("ram", "draw the ram", 1.2) with { Way = 0, Posture = new("upright-in-vice"), Inspections = [new("ram-rod")], Why = new StepReason.InTheWayOf([Id("seal-ram")]) },
            Step("seal-ram", "pick out the ram seals", 1) with
            {
                Way = 0, Tool = new("seal-pick"), Posture = new("flat"), Renewals = [new(Id("seal-ram"), 2, RenewalCause.Disturbed, Id("seal-ram"))],
            },
        ],
        Renewals = [new(Id("wiper"), 1, RenewalCause.Destroyed, Id("cap-nut")), new(Id("seal-ram"), 2, RenewalCause.Disturbed, Id("seal-ram"))],
        Inspections = [new(Id("ram"), new("ram-rod"), 3)],
        Tools = [new("hook-wrench-62"), new("seal-pick")],
        States = [Id("battery-removed"), Id("pressure-released")],
        OilLost = Volume.FromMillilitres(95),
        LikelyTime = TimeSpan.FromMinutes(8.5),
        SafeTime = TimeSpan.FromMinutes(11.4),
        Cost = Euro(38.2m),
        CostParts = new(Euro(12), Euro(26.2m), Euro(0)),
        ProvenOptimal = true,
        Gap = Euro(0),
        StatesSearched = 61,
    };

    public static RebuildPlan Rebuild => new()
    {
        Steps =
        [
            Fit("seal-ram", "fit the ram seals", 2) with
            {
                Tool = new("seal-pick"), Posture = new("flat"), Lubricant = "clean oil of the fill", Orientation = "lip towards the pressure", NewParts = [Id("seal-ram")],
            },
            Fit("ram", "enter the ram", 1.5) with { Parts = [Id("ram"), Id("seal-ram")], Posture = new("upright-in-vice") },
            Fit("cap-nut", "screw the cap nut home", 3) with
            {
                Tool = new("hook-wrench-62"), Posture = new("upright-in-vice"), Torque = new(Torque.FromNewtonMetres(85), 0.05), Hand = ThreadHand.Left,
                Lubricant = "thread grease", Cautions = [Spring], NewParts = [Id("wiper")],
            },
            Fit("oil", "fill with oil", 4) with { Kind = RebuildKind.Fill, Node = null, Oil = Volume.FromMillilitres(95) },
        ],
        Tools = [new("seal-pick"), new("hook-wrench-62")],
        LikelyTime = TimeSpan.FromMinutes(14),
        SafeTime = TimeSpan.FromMinutes(19),
        Labour = Euro(17),
        OilFilled = Volume.FromMillilitres(95),
    };

    public static WorkSheetInput Sheet => new()
    {
        House = Header,
        Job = Job,
        Model = Model,
        Strip = Strip,
        Rebuild = Rebuild,
        Cover = Quotes.Quote.Cover,
        PrintedAt = Noon,
        PlannedBy = Lead,
        Ledger = Ledger,
        Purpose = "renew the ram seals: oil at the cap",
    };

    /// <summary>A plan of so many steps with long words, for page breaks.</summary>
    public static StripPlan Long(int steps) => Strip with
    {
        Steps =
        [
            .. Enumerable.Range(1, steps).Select(i => Step("ram", $"take away piece {i} of the long row of pieces that this invented tool has along its axis, and lay it out in order", 1) with
            {
                Cautions = i % 4 == 0 ? [Spring] : [], Inspections = i % 5 == 0 ? [new("ram-rod")] : [], Why = new StepReason.InTheWayOf([Id("seal-ram"), Id("wiper")]),
            }),
        ],
    };

    private static StripStep Step(string node, string operation, double minutes) => new()
    {
        Node = Id(node),
        Operation = operation,
        Time = TimeSpan.FromMinutes(minutes),
        ChangeTime = TimeSpan.Zero,
        Cautions = [],
        Why = new StepReason.Target(),
        Renewals = [],
        Inspections = [],
    };

    private static RebuildStep Fit(string node, string operation, double minutes) => new()
    {
        Kind = RebuildKind.FitPart,
        Node = Id(node),
        Parts = [Id(node)],
        Operation = operation,
        Time = TimeSpan.FromMinutes(minutes),
        ChangeTime = TimeSpan.Zero,
    };
}
