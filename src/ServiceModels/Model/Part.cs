using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;

namespace Ramwright.ServiceModels.Model;

/// <summary>When a part is renewed: as its inspection says; when it comes off or is disturbed; besides as soon as work lays it open; never by rule.</summary>
public enum RenewalRule { OnCondition, WhenDisturbed, Always, Never }

/// <summary>A part, or one group of identical parts with a count.</summary>
public sealed record Part
{
    public required NodeId Id { get; init; }
    public required string Name { get; init; }

    /// <summary>The number it is ordered by; null when the maker does not sell it.</summary>
    public string? Number { get; init; }

    public string? Revision { get; init; }

    /// <summary>How many identical ones this entry stands for; 1 or more. Minutes and torques are for the whole group and for each, in that order.</summary>
    public int Count { get; init; } = 1;

    /// <summary>Elastomer or plastic by its ISO 1629 / ISO 1043 code (NBR, HNBR, FKM, AU, PTFE); other material in words.</summary>
    public string? Material { get; init; }

    /// <summary>The O-ring size, where the part is one.</summary>
    public SealSize? Size { get; init; }

    public RenewalRule Renew { get; init; }

    /// <summary>Price of one.</summary>
    public Money? Price { get; init; }

    /// <summary>Shelf life in store from cure, where it perishes.</summary>
    public TimeSpan? ShelfLife { get; init; }

    /// <summary>Several ways may exist; the planner chooses. None: the part never comes off by itself.</summary>
    public ImmutableArray<WayOff> WaysOff { get; init; } = [];

    public Fit? Fit { get; init; }
    public ImmutableArray<Inspection> Inspections { get; init; } = [];

    /// <summary>Where the strip map draws it; null lets the map choose from what blocks what.</summary>
    public MapPlace? Place { get; init; }

    /// <summary>Weibull prior for its life, where the model has one.</summary>
    public Lifetime? Lifetime { get; init; }

    public string? Note { get; init; }

    public bool IsFastener { get; init; }
}

/// <summary>An O-ring by dash size of ISO 3601-1 / AS568, or as measured.</summary>
public abstract record SealSize
{
    private SealSize() { }

    /// <summary>As written: <c>ISO3601-219</c> or <c>AS568-219</c>.</summary>
    public sealed record Dash(string Standard, int Number) : SealSize;

    public sealed record Measured(Length InnerDiameter, Length Section) : SealSize;
}

/// <summary>Weibull life: shape and characteristic life in years of service.</summary>
public sealed record Lifetime(double Shape, double CharacteristicYears);

/// <summary>What keeps a part where it is.</summary>
public enum HoldKind { None, Thread, Clamp, PressFit, LockScrew, Snap, Adhesive, Pin }

/// <summary>Which way a thread tightens.</summary>
public enum ThreadHand { Right, Left }

/// <summary>What holds a part: <c>right-hand thread</c>, <c>left-hand thread</c>, <c>clamp</c>, <c>press fit</c>, <c>lock screw</c>, <c>snap</c>, <c>adhesive</c>, <c>pin</c>; adhesive may lock a thread.</summary>
public sealed record Holding(HoldKind Kind, ThreadHand? Hand = null, bool AdhesiveLocked = false);

/// <summary>One way in which a part comes off.</summary>
public sealed record WayOff
{
    /// <summary>The parts that must be off and the states that must be reached first.</summary>
    public ImmutableArray<NodeId> Needs { get; init; } = [];

    /// <summary>What is done, where "unscrew / draw / lift off" would not say it; imperative, lower case.</summary>
    public string? Operation { get; init; }

    public ToolId? Tool { get; init; }
    public PostureId? Posture { get; init; }

    /// <summary>Time for the whole group of identical parts, without fetching the tool or turning the work.</summary>
    public required TimeSpan Time { get; init; }

    /// <summary>Relative standard deviation of the time; null takes the shop's.</summary>
    public double? TimeSpread { get; init; }

    public Holding? HeldBy { get; init; }
    public Torque? Breakaway { get; init; }

    /// <summary>Force to press or draw, where a press or puller is used.</summary>
    public Force? BreakawayForce { get; init; }

    public ImmutableArray<Caution> Cautions { get; init; } = [];

    /// <summary>Parts that do not survive this; may name the part itself.</summary>
    public ImmutableArray<NodeId> Destroys { get; init; } = [];

    /// <summary>Parts that this disturbs: those with <c>when-disturbed</c> are then renewed.</summary>
    public ImmutableArray<NodeId> Disturbs { get; init; } = [];

    /// <summary>What this lets out.</summary>
    public ImmutableArray<Opening> Opens { get; init; } = [];

    public WayOffRisk? Risk { get; init; }

    /// <summary>The fastener or joint cannot be seen from outside; the map dashes it.</summary>
    public bool OutOfSight { get; init; }
}

/// <summary>What a removal lets out.</summary>
public enum Opening { Oil, SpringEnergy, LooseParts }

/// <summary>A chance (0 to 1) that this way damages other parts.</summary>
public sealed record WayOffRisk(double Chance, ImmutableArray<NodeId> Damages);

/// <summary>How a part goes back.</summary>
public sealed record Fit
{
    /// <summary>Parts that must be in place first.</summary>
    public ImmutableArray<NodeId> After { get; init; } = [];

    /// <summary>The unit that this part is made up into on the bench before the unit goes in.</summary>
    public UnitId? Unit { get; init; }

    /// <summary>What is done, where "fit" would not say it.</summary>
    public string? Operation { get; init; }

    public ToolId? Tool { get; init; }
    public PostureId? Posture { get; init; }

    /// <summary>Time for the whole group; null takes the time of the cheapest way off.</summary>
    public TimeSpan? Time { get; init; }

    public TorqueSpec? Torque { get; init; }
    public string? Lubricant { get; init; }

    /// <summary>Which way round, in words: "lip towards the pressure".</summary>
    public string? Orientation { get; init; }

    /// <summary>What is primed right after, in words.</summary>
    public string? Prime { get; init; }

    /// <summary>Time to prime; null takes the shop's.</summary>
    public TimeSpan? PrimeTime { get; init; }

    /// <summary>Oil that goes in right after; with the priming, where there is one.</summary>
    public Volume? Fill { get; init; }

    /// <summary>Time to fill where nothing is primed; null takes the shop's.</summary>
    public TimeSpan? FillTime { get; init; }

    /// <summary>How air is let out right after, in words.</summary>
    public string? Bleed { get; init; }

    /// <summary>Time to bleed; null takes the shop's.</summary>
    public TimeSpan? BleedTime { get; init; }

    public ImmutableArray<Caution> Cautions { get; init; } = [];
}

/// <summary>A tightening torque and its tolerance as a share of it (0.05 is ± 5 %).</summary>
public sealed record TorqueSpec(Torque Torque, double Tolerance);

/// <summary>Something looked at or measured when the part is in the hand: reuse or renew, by criterion.</summary>
public sealed record Inspection
{
    public required InspectionId Id { get; init; }

    /// <summary>What to look at, in the imperative: "draw a fingernail along the rod".</summary>
    public required string Look { get; init; }

    /// <summary>When it may be used again.</summary>
    public required string Reuse { get; init; }

    /// <summary>What is measured, and its limits, where it is a figure.</summary>
    public MeasuredCriterion? Measure { get; init; }

    public TimeSpan Time { get; init; } = TimeSpan.FromMinutes(0.5);

    /// <summary>Chance of a bad outcome, 0 to 1, where known; feeds the on-condition part of a quote.</summary>
    public double? ChanceBad { get; init; }

    /// <summary>Parts renewed on a bad outcome; the part itself when empty.</summary>
    public ImmutableArray<NodeId> RenewsWhenBad { get; init; } = [];

    /// <summary>Parts that must come off too on a bad outcome.</summary>
    public ImmutableArray<NodeId> AddsWhenBad { get; init; } = [];
}

/// <summary>A length to measure and its limits; at least one limit is given.</summary>
public sealed record MeasuredCriterion(string What, Length? Least, Length? Most);

/// <summary>Where a part lies: along the axis, which row, and how it is drawn.</summary>
/// <param name="From">Start along the tool's axis, from its rear end.</param>
/// <param name="To">End along the tool's axis.</param>
/// <param name="Inner">Inner radius (zero for solid parts).</param>
/// <param name="Outer">Outer radius.</param>
/// <param name="Offset">Distance of its own axis from the tool's; positive is up.</param>
public sealed record MapPlace(Length From, Length To, Length Inner, Length Outer, Length Offset)
{
    public Outline Outline { get; init; }
}

/// <summary>How the map draws a part.</summary>
public enum Outline { Turned, Ring, Spring, Ball, Screw, Plate, Jaw, Pack, Hose, Housing }

/// <summary>Parts made up on the bench, then fitted as one.</summary>
public sealed record MadeUpUnit(UnitId Id, string Name)
{
    /// <summary>Parts that must be in place in the tool before the unit goes in.</summary>
    public ImmutableArray<NodeId> After { get; init; } = [];

    public TimeSpan Time { get; init; }
    public ToolId? Tool { get; init; }
    public PostureId? Posture { get; init; }

    /// <summary>What is done to fit the made-up unit.</summary>
    public string? Operation { get; init; }

    public ImmutableArray<Caution> Cautions { get; init; } = [];
}

/// <summary>A kit: what is in it for this tool, and what in it does not fit and why.</summary>
public sealed record Kit(KitId Id, string Name, string Number, Money? Price)
{
    public ImmutableArray<KitItem> Contents { get; init; } = [];
    public ImmutableArray<UnfitItem> Unfit { get; init; } = [];
}

/// <summary>So many of a part in a kit.</summary>
public sealed record KitItem(NodeId Part, int Count);

/// <summary>A content that must not be used on this tool: never counted.</summary>
public sealed record UnfitItem(string What, NodeId? Part, int Count, string Why);

/// <summary>One number replaced by another. Chains are followed; loops are a mistake.</summary>
public sealed record Supersession(string Old, string New, string? Why);
