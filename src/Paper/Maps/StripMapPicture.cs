using System.Collections.Immutable;
using Ramwright.Paper.Drawing;
using Ramwright.Planning.Map;

namespace Ramwright.Paper.Maps;

/// <summary>
/// The strip map drawn from its geometry, with the lines of ISO 128: chain for an axis, dashes out of sight, double-dotted chain for what is
/// off, hatching for what is cut; balloons with leaders carry the numbers of the steps.
/// </summary>
public static class StripMapPicture
{
    /// <param name="drawing">The geometry, millimetres on the tool.</param>
    /// <param name="width">Width of the picture in its own units, above zero.</param>
    /// <param name="mostHeight">The picture shrinks to keep this height; null lets it be as high as it comes.</param>
    public static Picture Of(StripMapDrawing drawing, double width = 640, double? mostHeight = null)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        const double margin = 4;
        var scale = (width - (2 * margin)) / Math.Max(drawing.Bounds.Width, 1);
        if (mostHeight is { } most)
            scale = Math.Min(scale, (most - (2 * margin)) / Math.Max(drawing.Bounds.Height, 1));
        var view = new MapView(drawing.Bounds, scale, margin + ((width - (2 * margin) - (scale * drawing.Bounds.Width)) / 2), margin);
        var sketch = new Sketch();
        foreach (var part in drawing.Parts)
            Draw(sketch, part, view);
        foreach (var axis in drawing.Axes)
            sketch.Add(new Shape.Line(Ink.Axis, view.At(axis.From), view.At(axis.To)));
        var statuses = drawing.Parts.ToLookup(p => p.Node);
        foreach (var balloon in drawing.Balloons)
            Draw(sketch, balloon, statuses[balloon.Node].FirstOrDefault(), view);
        return sketch.Finish(width, (scale * drawing.Bounds.Height) + (2 * margin), "Strip map: where the parts lie and in which order they come off", Describe(drawing));
    }

    /// <summary>The legend of the map: a small sample and a word for each kind of line that occurs in it, one line high.</summary>
    public static Picture Legend(StripMapDrawing drawing, double width = 640, double size = 12)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        var sketch = new Sketch();
        double x = 1, y = size * 1.35;
        foreach (var (ink, words) in Kinds(drawing))
        {
            var needed = (size * 2.5) + Lettering.Typeface.Regular.WidthOf(words, size);
            if (x + needed > width && x > 1)
                (x, y) = (1, y + (size * 1.6));
            sketch.Rectangle(ink, x, y - (size * 0.75), size * 1.5, size * 0.8);
            if (ink == Ink.Cut)
                sketch.Add(Hatching.OfRectangle(Ink.Hatch, new(x, y - (size * 0.75)), size * 1.5, size * 0.8, size * 0.3));
            sketch.Text(Ink.QuietWord, x + (size * 2), y, words, size);
            x += needed + (size * 0.6);
        }

        return sketch.Finish(width, y + (size * 0.5), "Legend of the strip map");
    }

    private static IEnumerable<(Ink Ink, string Words)> Kinds(StripMapDrawing drawing)
    {
        var inks = drawing.Parts.Select(InkOf).ToHashSet();
        if (inks.Contains(Ink.Next))
            yield return (Ink.Next, "next");
        if (inks.Contains(Ink.Target))
            yield return (Ink.Target, "target");
        if (inks.Contains(Ink.Renew))
            yield return (Ink.Renew, "renew");
        if (inks.Contains(Ink.Gone))
            yield return (Ink.Gone, "off");
        if (inks.Contains(Ink.Hidden))
            yield return (Ink.Hidden, "out of sight");
        if (drawing.Parts.Any(p => InkOf(p) == Ink.Body && p.Shapes.Any(s => HatchOf(s) is not null)))
            yield return (Ink.Cut, "cut");
    }

    private static Ink InkOf(MapPart part) => part switch
    {
        { Status: MapStatus.Off } => Ink.Gone,
        { Status: MapStatus.Next } => Ink.Next,
        { IsRenewed: true } => Ink.Renew,
        { Status: MapStatus.Target } => Ink.Target,
        { IsOutOfSight: true } => Ink.Hidden,
        _ => Ink.Body,
    };

    private static double? HatchOf(MapShape shape) => shape switch
    {
        MapShape.Polygon p => p.HatchDegrees,
        MapShape.Circle c => c.HatchDegrees,
        _ => null,
    };

    private static void Draw(Sketch sketch, MapPart part, MapView view)
    {
        var ink = InkOf(part);
        var group = new Sketch();
        foreach (var shape in part.Shapes)
        {
            var hatched = HatchOf(shape) is not null && ink is Ink.Body or Ink.Target;
            var outline = hatched && ink == Ink.Body ? Ink.Cut : ink;
            switch (shape)
            {
                case MapShape.Polygon p:
                    var spots = p.Points.Select(view.At).ToImmutableArray();
                    group.Closed(outline, spots);
                    if (hatched && p.HatchDegrees is { } lean)
                        group.Add(Hatching.Of(Ink.Hatch, 4.5, lean > 90, spots));
                    break;
                case MapShape.Circle c:
                    group.Add(new Shape.Circle(outline, view.At(c.Centre), c.Radius * view.Scale));
                    if (hatched && c.HatchDegrees is { } tilt)
                        group.Add(Hatching.OfCircle(Ink.Hatch, view.At(c.Centre), c.Radius * view.Scale, 4.5, tilt > 90));
                    break;
                case MapShape.Stroke s:
                    group.Open(ink is Ink.Gone or Ink.Hidden or Ink.Next or Ink.Renew ? StrokeOf(ink) : Ink.Detail, [.. s.Points.Select(view.At)]);
                    break;
            }
        }

        sketch.Add(new Shape.Group(ink, part.Name, group.Shapes()));
    }

    /// <summary>Open lines must not be filled.</summary>
    private static Ink StrokeOf(Ink ink) => ink switch
    {
        Ink.Next => Ink.Fit,
        Ink.Renew => Ink.Void,
        _ => ink,
    };

    private static void Draw(Sketch sketch, MapBalloon balloon, MapPart? part, MapView view)
    {
        var ink = part is null ? Ink.Body : InkOf(part);
        var (ring, words) = ink switch
        {
            Ink.Gone => (Ink.BalloonGone, Ink.QuietWord),
            Ink.Next => (Ink.BalloonNext, Ink.PaperWord),
            Ink.Target => (Ink.BalloonTarget, Ink.Word),
            Ink.Renew => (Ink.BalloonRenew, Ink.Word),
            _ => (Ink.Balloon, Ink.Word),
        };
        var (from, centre, radius) = (view.At(balloon.Leader.From), view.At(balloon.Centre), balloon.Radius * view.Scale);
        sketch.Add(new Shape.Line(Ink.Leader, from, view.At(balloon.Leader.To)));
        sketch.Circle(Ink.LeaderDot, from.X, from.Y, 1.6);
        sketch.Circle(ring, centre.X, centre.Y, radius);
        var size = Math.Min(radius * 1.15, 13);
        sketch.Text(words, centre.X, centre.Y + (size * 0.36), $"{balloon.Number}", size, Anchor.Middle, bold: true);
    }

    private static string Describe(StripMapDrawing drawing)
    {
        var names = drawing.Parts.ToLookup(p => p.Node, p => p.Name);
        var order = string.Join("; ", drawing.Balloons.OrderBy(b => b.Number).Select(b => $"{b.Number} {names[b.Node].FirstOrDefault() ?? b.Node.Value}"));
        return (drawing.ToScale ? "" : "Not to scale. ") + order + ".";
    }
}

/// <summary>From millimetres on the tool, y upwards, to the picture, y downwards.</summary>
internal readonly record struct MapView(MapBox Bounds, double Scale, double Left, double Top)
{
    public Spot At(MapPoint p) => new(Left + ((p.X - Bounds.Left) * Scale), Top + ((Bounds.Top - p.Y) * Scale));
}
