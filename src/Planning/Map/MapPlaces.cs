using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Map;

/// <summary>Where every part lies: as the model says, and where it is silent, in layers by what blocks what.</summary>
/// <remarks>A part's layer is the number of parts that must come off before it, one after the other, by its easiest way. The first layer is
/// drawn to the right; parts of one layer stand above each other about the axis. Beside placed parts the others lie in a row underneath.</remarks>
internal static class MapPlaces
{
    private const double Pitch = 34;
    private const double HalfLength = 12;
    private const double HalfHeight = 8;
    private const double Gap = 6;

    public static List<PlacedPart> Of(ServiceModel model)
    {
        var placed = model.Parts.Where(p => p.Place is not null).Select(p => PlacedPart.At(p, p.Place!)).ToList();
        var layers = Layers(model);
        var others = model.Parts.Where(p => p.Place is null).OrderByDescending(p => layers[p.Id]).ToList();
        return placed.Count == 0 ? [.. InColumns(others, layers)] : [.. placed, .. InRows(others, placed)];
    }

    /// <summary>The layer of each part; parts that nothing frees lie one deeper than all others.</summary>
    public static Dictionary<NodeId, int> Layers(ServiceModel model)
    {
        var layers = model.States.ToDictionary(s => s.Id, _ => -1);
        var waiting = model.Parts.ToList();
        for (var layer = 0; waiting.Count > 0; layer++)
        {
            var free = waiting.Where(p => p.WaysOff.Any(w => w.Needs.All(layers.ContainsKey))).ToList();
            if (free.Count == 0)
                free = [.. waiting];
            foreach (var part in free)
                layers[part.Id] = layer;
            waiting.RemoveAll(p => layers.ContainsKey(p.Id));
        }

        return layers;
    }

    private static IEnumerable<PlacedPart> InColumns(List<Part> parts, Dictionary<NodeId, int> layers)
    {
        var deepest = parts.Select(p => layers[p.Id]).DefaultIfEmpty(0).Max();
        foreach (var layer in parts.GroupBy(p => layers[p.Id]))
        {
            var x = (deepest - layer.Key) * Pitch + HalfLength;
            foreach (var (part, index) in layer.Select((part, index) => (part, index)))
            {
                var side = index % 2 == 0 ? 1 : -1;
                var y = side * ((index + 1) / 2) * (2 * HalfHeight + Gap);
                yield return new PlacedPart(part, x - HalfLength, x + HalfLength, 0, HalfHeight, y, Outline.Plate);
            }
        }
    }

    private static IEnumerable<PlacedPart> InRows(List<Part> parts, List<PlacedPart> placed)
    {
        var left = placed.Min(p => p.Left);
        var perRow = Math.Max(1, (int)((placed.Max(p => p.Right) - left) / Pitch));
        var top = placed.Min(p => p.Box.Bottom) - 2 * Gap;
        foreach (var (part, index) in parts.Select((part, index) => (part, index)))
        {
            var x = left + index % perRow * Pitch + HalfLength;
            var y = top - HalfHeight - index / perRow * (2 * HalfHeight + Gap);
            yield return new PlacedPart(part, x - HalfLength, x + HalfLength, 0, HalfHeight, y, Outline.Plate);
        }
    }
}
