using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Map;

/// <summary>What a balloon is to name, and the point on the part it points to.</summary>
internal readonly record struct Named(int Number, NodeId Node, MapPoint Anchor);

/// <summary>Places balloons in one row above the drawing and one below, without overlap and without crossing leaders.</summary>
/// <remarks>
/// Places along a row: as near above the anchors as the spacing allows (least squares with a least distance, by pooling neighbours). Which
/// anchor gets which place: two crossing leaders swap their places; each swap makes the leaders shorter in all, so it ends, and it ends
/// without a crossing. Upper leaders stay above the axis and lower ones below it, so the two rows never meet.
/// </remarks>
internal static class MapBalloons
{
    public static IEnumerable<MapBalloon> Row(IEnumerable<Named> named, double y, double radius)
    {
        var sorted = named.OrderBy(n => n.Anchor.X).ThenBy(n => n.Number).ToArray();
        var places = Spread([.. sorted.Select(n => n.Anchor.X)], 2.4 * radius);
        Uncross(sorted, places, y);
        return sorted.Select((n, i) => Balloon(n, new MapPoint(places[i], y), radius));
    }

    /// <summary>The places nearest to those wished, in order and at least <paramref name="distance"/> apart.</summary>
    private static double[] Spread(double[] wished, double distance)
    {
        var blocks = new List<(double Sum, int Count)>();
        for (var i = 0; i < wished.Length; i++)
        {
            blocks.Add((wished[i] - i * distance, 1));
            while (blocks.Count > 1 && Mean(blocks[^2]) >= Mean(blocks[^1]))
            {
                blocks[^2] = (blocks[^2].Sum + blocks[^1].Sum, blocks[^2].Count + blocks[^1].Count);
                blocks.RemoveAt(blocks.Count - 1);
            }
        }

        return [.. blocks.SelectMany(b => Enumerable.Repeat(Mean(b), b.Count)).Select((x, i) => x + i * distance)];
    }

    private static double Mean((double Sum, int Count) block) => block.Sum / block.Count;

    private static void Uncross(Named[] named, double[] places, double y)
    {
        for (var swapped = true; swapped;)
        {
            swapped = false;
            for (var i = 0; i < named.Length; i++)
            {
                for (var j = i + 1; j < named.Length; j++)
                {
                    if (!Cross(named[i].Anchor, new MapPoint(places[i], y), named[j].Anchor, new MapPoint(places[j], y)))
                        continue;
                    (places[i], places[j]) = (places[j], places[i]);
                    swapped = true;
                }
            }
        }
    }

    /// <summary>Whether two lines have one point in common that is an end of neither.</summary>
    private static bool Cross(MapPoint a, MapPoint b, MapPoint c, MapPoint d) =>
        Side(a, b, c) * Side(a, b, d) < 0 && Side(c, d, a) * Side(c, d, b) < 0;

    private static double Side(MapPoint a, MapPoint b, MapPoint p)
    {
        var area = (b.X - a.X) * (p.Y - a.Y) - (b.Y - a.Y) * (p.X - a.X);
        return Math.Abs(area) < 1e-9 ? 0 : Math.Sign(area);
    }

    private static MapBalloon Balloon(Named named, MapPoint centre, double radius)
    {
        var (dx, dy) = (named.Anchor.X - centre.X, named.Anchor.Y - centre.Y);
        var length = Math.Max(Math.Sqrt(dx * dx + dy * dy), radius);
        var rim = new MapPoint(centre.X + dx / length * radius, centre.Y + dy / length * radius);
        return new MapBalloon(named.Number, named.Node, centre, radius, new MapLine(named.Anchor, rim));
    }
}
