using Ramwright.Metrology.Quantities;

namespace Ramwright.ServiceModels.Model;

/// <summary>What the tool does with its force.</summary>
public enum ToolKind { Compression, Cutting, Punching }

/// <summary>Which tool family a model is about.</summary>
public sealed record ToolIdentity(string Id, string Name, string? Maker, ToolKind Kind)
{
    public Mass? Mass { get; init; }

    /// <summary>Revision of the model, as its author counts; null when it is not counted.</summary>
    public string? Revision { get; init; }

    /// <summary>Where the facts come from, in the author's words.</summary>
    public string? Source { get; init; }

    public string? Notes { get; init; }
}

/// <summary>How a series is judged (design: Proving). The first is the rule of the house; the others are stricter or simpler and chosen per model.</summary>
public enum DecisionRule { OneSidedPerLimit, TwoSidedInterval, EveryRunGuarded }

/// <summary>What the tool must keep, and how often it must show it.</summary>
public sealed record Limits
{
    /// <summary>The limits that a proof is about.</summary>
    public required PressureWindow Pressure { get; init; }

    /// <summary>What the relief is set for; the middle of the window when not given.</summary>
    public required Pressure Nominal { get; init; }

    /// <summary>Above this the tool is quarantined and its frame inspected.</summary>
    public required Pressure Maximum { get; init; }

    /// <summary>The same limits as a force, where the maker states them.</summary>
    public ForceWindow? Force { get; init; }

    /// <summary>Planned number of full runs in a proof series, 2 to 100.</summary>
    public required int ProofRuns { get; init; }

    /// <summary>Rest between full runs.</summary>
    public required TimeSpan Rest { get; init; }

    public DecisionRule Rule { get; init; }
}

/// <summary>The oil: class (ISO 6743-4: HETG, HEES, HEPG, HEPR, HL, HM, HV, HFDU ...), ISO VG grade, how much the tool takes.</summary>
public sealed record Fluid(string Class, int? Grade, Volume? Capacity)
{
    public Money? PricePerLitre { get; init; }
}
