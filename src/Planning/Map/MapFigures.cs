using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Map;

/// <summary>The figures of which each kind of part is drawn.</summary>
/// <remarks>A section through the axis: hollow parts show their two cut halves. Shafts, fasteners, balls and springs are drawn whole, as
/// ISO 128-3 has it (rule from memory).</remarks>
internal static class MapFigures
{
    public static ImmutableArray<MapShape> Of(PlacedPart part, double hatch) => part.Outline switch
    {
        Outline.Spring => Spring(part),
        Outline.Ball => [new MapShape.Circle(new MapPoint(part.Middle, part.Axis), Math.Min(part.Outer, (part.Right - part.Left) / 2 + part.Outer / 2))],
        Outline.Screw => Screw(part),
        Outline.Jaw => [Jaw(part, hatch)],
        Outline.Pack => Pack(part),
        Outline.Hose => Hose(part),
        Outline.Ring when part.IsHollow && IsRound(part) => RingSection(part, hatch),
        _ when part.IsHollow => Halves(part, hatch),
        Outline.Housing or Outline.Ring => [Box(part.Box, hatch)],
        Outline.Turned => [Chamfered(part.Box, Math.Min(part.Outer, part.Right - part.Left) * 0.12, null)],
        _ => [Box(part.Box, null)],
    };

    private static bool IsRound(PlacedPart part) =>
        Math.Abs(part.Right - part.Left - (part.Outer - part.Inner)) <= 0.4 * (part.Outer - part.Inner);

    private static ImmutableArray<MapShape> RingSection(PlacedPart part, double hatch)
    {
        var (radius, mean) = ((part.Outer - part.Inner) / 2, (part.Outer + part.Inner) / 2);
        return
        [
            new MapShape.Circle(new MapPoint(part.Middle, part.Axis + mean), radius, hatch),
            new MapShape.Circle(new MapPoint(part.Middle, part.Axis - mean), radius, hatch),
        ];
    }

    private static ImmutableArray<MapShape> Halves(PlacedPart part, double hatch) =>
    [
        Box(new MapBox(part.Left, part.Axis + part.Inner, part.Right, part.Axis + part.Outer), hatch),
        Box(new MapBox(part.Left, part.Axis - part.Outer, part.Right, part.Axis - part.Inner), hatch),
    ];

    private static MapShape.Polygon Box(MapBox box, double? hatch) => new(
        [new(box.Left, box.Bottom), new(box.Right, box.Bottom), new(box.Right, box.Top), new(box.Left, box.Top)], hatch);

    private static MapShape.Polygon Chamfered(MapBox b, double c, double? hatch) => new(
        [
            new(b.Left + c, b.Bottom), new(b.Right - c, b.Bottom), new(b.Right, b.Bottom + c), new(b.Right, b.Top - c),
            new(b.Right - c, b.Top), new(b.Left + c, b.Top), new(b.Left, b.Top - c), new(b.Left, b.Bottom + c),
        ], hatch);

    /// <summary>The cut wire above and below the axis, and the coils between.</summary>
    private static ImmutableArray<MapShape> Spring(PlacedPart part)
    {
        var wire = Math.Min(part.IsHollow ? part.Outer - part.Inner : part.Outer * 0.25, (part.Right - part.Left) / 4);
        var mean = part.Outer - wire / 2;
        var coils = Math.Clamp((int)((part.Right - part.Left) / (2.2 * wire)), 2, 14);
        var pitch = (part.Right - part.Left - wire) / coils;
        var shapes = ImmutableArray.CreateBuilder<MapShape>();
        for (var i = 0; i <= coils; i++)
        {
            var top = new MapPoint(part.Left + wire / 2 + i * pitch, part.Axis + mean);
            shapes.Add(new MapShape.Circle(top, wire / 2));
            if (i == coils)
                break;
            var bottom = new MapPoint(top.X + pitch / 2, part.Axis - mean);
            shapes.Add(new MapShape.Circle(bottom, wire / 2));
            shapes.Add(new MapShape.Stroke([top, bottom]));
        }

        return shapes.DrainToImmutable();
    }

    /// <summary>The head is to the right.</summary>
    private static ImmutableArray<MapShape> Screw(PlacedPart part)
    {
        var (head, shank) = (part.Right - 0.35 * (part.Right - part.Left), part.Outer * 0.55);
        var core = shank * 0.8;
        return
        [
            Box(new MapBox(part.Left, part.Axis - shank, head, part.Axis + shank), null),
            Chamfered(new MapBox(head, part.Axis - part.Outer, part.Right, part.Axis + part.Outer), part.Outer * 0.12, null),
            new MapShape.Stroke([new(part.Left, part.Axis + core), new(head, part.Axis + core)]),
            new MapShape.Stroke([new(part.Left, part.Axis - core), new(head, part.Axis - core)]),
        ];
    }

    /// <summary>A block with a bight in its right face.</summary>
    private static MapShape.Polygon Jaw(PlacedPart part, double hatch)
    {
        var depth = Math.Min(part.Right - part.Left, part.Outer) * 0.4;
        return new MapShape.Polygon(
            [
                new(part.Left, part.Axis - part.Outer), new(part.Right, part.Axis - part.Outer), new(part.Right, part.Axis - part.Outer * 0.5),
                new(part.Right - depth, part.Axis - part.Outer * 0.2), new(part.Right - depth, part.Axis + part.Outer * 0.2),
                new(part.Right, part.Axis + part.Outer * 0.5), new(part.Right, part.Axis + part.Outer), new(part.Left, part.Axis + part.Outer),
            ], hatch);
    }

    private static ImmutableArray<MapShape> Pack(PlacedPart part)
    {
        var x = part.Left + (part.Right - part.Left) * 0.15;
        return
        [
            Chamfered(part.Box, Math.Min(part.Outer, part.Right - part.Left) * 0.2, null),
            new MapShape.Stroke([new(x, part.Axis - part.Outer), new(x, part.Axis + part.Outer)]),
        ];
    }

    private static ImmutableArray<MapShape> Hose(PlacedPart part) =>
        [Wave(part, part.Outer), Wave(part, -part.Outer), Side(part, part.Left), Side(part, part.Right)];

    private static MapShape.Stroke Side(PlacedPart part, double x) => new([new(x, part.Axis - part.Outer), new(x, part.Axis + part.Outer)]);

    private static MapShape.Stroke Wave(PlacedPart part, double away) => new(
    [
        .. Enumerable.Range(0, 33).Select(i => new MapPoint(
            part.Left + (part.Right - part.Left) * i / 32, part.Axis + away + 0.25 * part.Outer * Math.Sin(Math.PI * i / 8))),
    ]);
}
