using System.Collections.Immutable;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Map;

/// <summary>Lays out the strip map: what lies where, what comes off and in which order.</summary>
public static class StripMap
{
    /// <summary>Room beyond the drawing for the axis, as a share of its length.</summary>
    private const double Overhang = 0.03;

    /// <summary>Room for the leaders between tool and balloons, as a share of its length.</summary>
    private const double LeaderRoom = 0.027;

    /// <param name="plan">The plan to show; null draws the tool and numbers its parts in the model's order.</param>
    /// <param name="done">Parts that are off now; steps of the plan that are in it count as done.</param>
    /// <param name="balloonShare">Radius of a balloon as a share of the tool's length, above zero: larger where the drawing is small.</param>
    public static StripMapDrawing Layout(ServiceModel model, StripPlan? plan = null, ImmutableHashSet<NodeId>? done = null, double balloonShare = 1.0 / 60)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(balloonShare);
        var progress = new MapProgress(plan, done ?? []);
        var placed = MapPlaces.Of(model).OrderByDescending(p => p.Box.Height * p.Box.Width).ToList();
        if (placed.Count == 0)
            return new StripMapDrawing { Bounds = default, Parts = [], Axes = [], Balloons = [], Links = [], ToScale = false };
        var box = placed.Select(p => p.Box).Aggregate((a, b) => a.Including(b));
        var upper = UpperSide(placed, model, progress);
        var anchors = placed.ToDictionary(p => p.Part.Id, p => Anchor(p, upper.Contains(p.Part.Id)));
        var balloons = Balloons(placed, model, progress, anchors, upper, box, Math.Clamp(box.Width * balloonShare, 2, 24));
        var hatches = MapHatching.Of(placed);
        return new StripMapDrawing
        {
            Bounds = balloons.Select(b => Around(b.Centre, b.Radius)).Append(Widened(box)).Aggregate((a, b) => a.Including(b)),
            Parts = [.. placed.Select((p, i) => Drawn(p, hatches[i], progress, anchors[p.Part.Id]))],
            Axes = Axes(placed, box),
            Balloons = balloons,
            Links = [.. progress.Links(model).Where(l => anchors.ContainsKey(l.Blocker) && anchors.ContainsKey(l.Blocked)).Distinct()
                .Select(l => new MapLink(l.Blocker, l.Blocked, new MapLine(anchors[l.Blocker], anchors[l.Blocked])))],
            ToScale = model.Parts.All(p => p.Place is not null),
        };
    }

    private static MapPart Drawn(PlacedPart part, double hatch, MapProgress progress, MapPoint anchor) => new()
    {
        Node = part.Part.Id,
        Name = part.Part.Name,
        Status = progress.StatusOf(part.Part.Id),
        IsRenewed = progress.IsRenewed(part.Part.Id),
        IsOutOfSight = progress.IsOutOfSight(part.Part),
        Outline = part.Outline,
        Shapes = MapFigures.Of(part, hatch),
        Anchor = anchor,
        Bounds = part.Box,
    };

    private static int? NumberOf(PlacedPart part, ServiceModel model, MapProgress progress) =>
        progress.HasPlan ? progress.NumberOf(part.Part.Id) : model.Parts.IndexOf(part.Part) + 1;

    /// <summary>Parts wholly above the axis are named above, parts wholly below it below, the rest by turns along the axis.</summary>
    private static HashSet<NodeId> UpperSide(List<PlacedPart> placed, ServiceModel model, MapProgress progress)
    {
        var upper = new HashSet<NodeId>();
        var turn = true;
        foreach (var part in placed.OrderBy(p => p.Middle).ThenBy(p => model.Parts.IndexOf(p.Part)))
        {
            var above = part.Box.Bottom >= 0 || (part.Box.Top > 0 && turn);
            if (above)
                upper.Add(part.Part.Id);
            if (part.Box.Bottom < 0 && part.Box.Top > 0 && NumberOf(part, model, progress) is not null)
                turn = !turn;
        }

        return upper;
    }

    /// <summary>A point on the material on the side of the axis where the balloon is.</summary>
    private static MapPoint Anchor(PlacedPart part, bool isUpper)
    {
        var away = part.IsHollow ? (part.Inner + part.Outer) / 2 : part.Outer / 2;
        var y = part.Axis + (isUpper ? away : -away);
        return new MapPoint(part.Middle, isUpper ? Math.Max(0, y) : Math.Min(0, y));
    }

    private static ImmutableArray<MapBalloon> Balloons(
        List<PlacedPart> placed, ServiceModel model, MapProgress progress, Dictionary<NodeId, MapPoint> anchors, HashSet<NodeId> upper, MapBox box, double radius)
    {
        var named = placed.Where(p => NumberOf(p, model, progress) is not null)
            .Select(p => new Named(NumberOf(p, model, progress)!.Value, p.Part.Id, anchors[p.Part.Id])).ToList();
        return
        [
            .. MapBalloons.Row(named.Where(n => upper.Contains(n.Node)), Math.Max(0, box.Top) + 2.4 * radius + LeaderRoom * box.Width, radius)
                .Concat(MapBalloons.Row(named.Where(n => !upper.Contains(n.Node)), Math.Min(0, box.Bottom) - 2.4 * radius - LeaderRoom * box.Width, radius))
                .OrderBy(b => b.Number),
        ];
    }

    private static ImmutableArray<MapLine> Axes(List<PlacedPart> placed, MapBox box)
    {
        var wide = Widened(box);
        var beside = placed.Where(p => p.Axis != 0 && p.Outline is not (Outline.Plate or Outline.Pack or Outline.Hose or Outline.Jaw))
            .GroupBy(p => p.Axis).OrderBy(g => g.Key)
            .Select(g => (Y: g.Key, Left: g.Min(p => p.Left), Right: g.Max(p => p.Right)))
            .Select(a => new MapLine(new MapPoint(a.Left - 2, a.Y), new MapPoint(a.Right + 2, a.Y)));
        return [new MapLine(new MapPoint(wide.Left, 0), new MapPoint(wide.Right, 0)), .. beside];
    }

    private static MapBox Widened(MapBox box) => box with { Left = box.Left - Overhang * box.Width, Right = box.Right + Overhang * box.Width };

    private static MapBox Around(MapPoint centre, double radius) => new(centre.X - radius, centre.Y - radius, centre.X + radius, centre.Y + radius);
}
