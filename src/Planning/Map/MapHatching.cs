namespace Ramwright.Planning.Map;

/// <summary>Directions of section lines such that parts that touch are hatched differently.</summary>
internal static class MapHatching
{
    private static readonly double[] Directions = [45, 135, 30, 150, 60, 120];

    /// <summary>For each part a direction in degrees; the first that no touching part before it has.</summary>
    public static double[] Of(IReadOnlyList<PlacedPart> parts)
    {
        var chosen = new double[parts.Count];
        for (var i = 0; i < parts.Count; i++)
        {
            var taken = Enumerable.Range(0, i).Where(j => Touch(parts[i].Box, parts[j].Box)).Select(j => chosen[j]).ToHashSet();
            chosen[i] = Directions.FirstOrDefault(d => !taken.Contains(d), Directions[i % Directions.Length]);
        }

        return chosen;
    }

    private static bool Touch(MapBox a, MapBox b) => a.Left <= b.Right && b.Left <= a.Right && a.Bottom <= b.Top && b.Bottom <= a.Top;
}
