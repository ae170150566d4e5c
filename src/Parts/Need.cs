using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>So many of a part are needed, under the number valid today.</summary>
/// <param name="Number">After following supersessions; null when the maker does not sell it.</param>
/// <param name="SupersededNumber">The number in the model where it was replaced, else null.</param>
/// <param name="UnitPrice">Price of one; null when the model has none.</param>
public sealed record NeedLine(NodeId Part, string Name, int Count, string? Number, string? SupersededNumber, Money? UnitPrice);

/// <summary>The cheapest way found to cover a need: kits and loose parts.</summary>
public sealed record Cover
{
    public required ImmutableArray<CoverLine> Lines { get; init; }
    public required Money Price { get; init; }
    public required bool ProvenOptimal { get; init; }

    /// <summary>How far above the cheapest cover the price may lie at most; zero when proven.</summary>
    public required Money Gap { get; init; }

    /// <summary>Parts needed that no priced kit holds and that have no price (or one in another currency): to be asked for.</summary>
    public required ImmutableArray<NeedLine> Unpriced { get; init; }

    /// <summary>Contents of the chosen kits that stay over.</summary>
    public required ImmutableArray<KitItem> LeftOver { get; init; }

    /// <summary>Contents of the chosen kits that must not be used on this tool.</summary>
    public required ImmutableArray<UnfitItem> DoNotUse { get; init; }
}

/// <summary>One line to buy.</summary>
/// <param name="Kit">The kit, or null for a loose part.</param>
/// <param name="Part">The loose part, or null for a kit.</param>
/// <param name="Number">The number valid today.</param>
public sealed record CoverLine(KitId? Kit, NodeId? Part, string Name, string? Number, int Count, Money UnitPrice)
{
    public Money Price => Count * UnitPrice;
}
