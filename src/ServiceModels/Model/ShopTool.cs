using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;

namespace Ramwright.ServiceModels.Model;

/// <summary>A tool of the shop: bought, or made here from a sheet.</summary>
public abstract record ShopTool
{
    private ShopTool() { }

    public required ToolId Id { get; init; }
    public required string Name { get; init; }

    /// <summary>Time to fetch and fit it when another tool was in hand; null takes the shop's.</summary>
    public TimeSpan? Change { get; init; }

    /// <summary>Off the shelf.</summary>
    public sealed record Bought : ShopTool
    {
        public Money? Price { get; init; }
        public Torque? SafeTorque { get; init; }
    }

    /// <summary>Made in the shop: a shape with its dimensions by key (<c>for-diameter</c>, <c>pin-diameter</c> ...), each shape with its own keys.</summary>
    public sealed record Made : ShopTool
    {
        public required MadeShape Shape { get; init; }
        public ImmutableSortedDictionary<string, Length> Dimensions { get; init; } = ImmutableSortedDictionary<string, Length>.Empty;

        /// <summary>Number of pins, prongs or jaws that share the load; 1 when not given.</summary>
        public int Prongs { get; init; } = 1;

        public Angle? OffsetAngle { get; init; }
        public string? Material { get; init; }
    }
}

/// <summary>Shapes of made tools.</summary>
public enum MadeShape { HookWrench, PinSpanner, SlottedSocket, HexBit, SecurityBit, CrowFoot, OffsetWrench, SealCone, PressCup, SpringCompressor, JawBlock }
