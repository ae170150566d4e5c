using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Map;

/// <summary>
/// The strip map as geometry: a half-schematic section along the tool's axis. Millimetres on the tool, x along the axis from the rear
/// end, y upwards from the axis. How thick a line is and what colour it has is the renderer's business.
/// </summary>
public sealed record StripMapDrawing
{
    /// <summary>Everything drawn, balloons included.</summary>
    public required MapBox Bounds { get; init; }

    /// <summary>In drawing order: outer parts first, so that inner ones lie on top.</summary>
    public required ImmutableArray<MapPart> Parts { get; init; }

    /// <summary>Centre lines (long-dashed dotted): the tool's own first, then those of parts beside it.</summary>
    public required ImmutableArray<MapLine> Axes { get; init; }

    /// <summary>Numbers in the order of the plan; leaders do not cross and balloons do not overlap.</summary>
    public required ImmutableArray<MapBalloon> Balloons { get; init; }

    /// <summary>What stands in whose way, along the planned order.</summary>
    public required ImmutableArray<MapLink> Links { get; init; }

    /// <summary>True when the places come from the model; false when at least one was derived from what blocks what.</summary>
    public required bool ToScale { get; init; }

    /// <summary>The tool alone: no numbers, and no room kept for them.</summary>
    public StripMapDrawing WithoutBalloons() => this with
    {
        Balloons = [],
        Bounds = Parts.Select(p => p.Bounds).Concat(Axes.Select(a => new MapBox(a.From.X, a.From.Y, a.To.X, a.To.Y)))
            .DefaultIfEmpty(Bounds).Aggregate((a, b) => a.Including(b)),
    };
}

/// <summary>A point; millimetres.</summary>
public readonly record struct MapPoint(double X, double Y);

/// <summary>A straight line between two points.</summary>
public readonly record struct MapLine(MapPoint From, MapPoint To);

/// <summary>A box along the axes; millimetres.</summary>
public readonly record struct MapBox(double Left, double Bottom, double Right, double Top)
{
    /// <summary>Millimetres.</summary>
    public double Width => Right - Left;

    /// <summary>Millimetres.</summary>
    public double Height => Top - Bottom;

    public MapBox Including(MapBox other) =>
        new(Math.Min(Left, other.Left), Math.Min(Bottom, other.Bottom), Math.Max(Right, other.Right), Math.Max(Top, other.Top));
}

/// <summary>Where a part stands in the work.</summary>
public enum MapStatus
{
    /// <summary>It stays where it is.</summary>
    Still,

    /// <summary>The plan takes it off, but not yet.</summary>
    ComesOff,

    /// <summary>It is the next to come off.</summary>
    Next,

    /// <summary>It is what the work is about, and still in the tool.</summary>
    Target,

    /// <summary>It is off already.</summary>
    Off,
}

/// <summary>One part drawn.</summary>
public sealed record MapPart
{
    public required NodeId Node { get; init; }
    public required string Name { get; init; }
    public required MapStatus Status { get; init; }

    /// <summary>It goes in new.</summary>
    public required bool IsRenewed { get; init; }

    /// <summary>It cannot be seen from outside: drawn with dashed lines.</summary>
    public required bool IsOutOfSight { get; init; }

    public required Outline Outline { get; init; }
    public required ImmutableArray<MapShape> Shapes { get; init; }

    /// <summary>Where a leader meets the part: a point on its material.</summary>
    public required MapPoint Anchor { get; init; }

    public required MapBox Bounds { get; init; }
}

/// <summary>A figure of which a part's drawing consists.</summary>
public abstract record MapShape
{
    private MapShape() { }

    /// <summary>A closed figure. <paramref name="HatchDegrees"/> is the direction of the section lines, or null where the figure is not cut
    /// (fasteners, shafts, balls and springs are not, by the custom of ISO 128-3).</summary>
    public sealed record Polygon(ImmutableArray<MapPoint> Points, double? HatchDegrees = null) : MapShape;

    /// <summary>A circle; radius in millimetres.</summary>
    public sealed record Circle(MapPoint Centre, double Radius, double? HatchDegrees = null) : MapShape;

    /// <summary>An open line: a thread, a coil, a fold.</summary>
    public sealed record Stroke(ImmutableArray<MapPoint> Points) : MapShape;
}

/// <summary>A numbered balloon and its leader.</summary>
/// <param name="Number">From 1: the place of the step in the plan, or of the part in the model when there is no plan.</param>
/// <param name="Leader">From the part's anchor to the rim of the balloon.</param>
/// <param name="Radius">Millimetres.</param>
public sealed record MapBalloon(int Number, NodeId Node, MapPoint Centre, double Radius, MapLine Leader);

/// <summary><paramref name="Blocker"/> must come off before <paramref name="Blocked"/>.</summary>
public sealed record MapLink(NodeId Blocker, NodeId Blocked, MapLine Line);
