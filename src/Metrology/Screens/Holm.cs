namespace Ramwright.Metrology.Screens;

/// <summary>Many tests at once: chances adjusted so that one false flag among all stays as rare as stated, however the tests depend on each other.</summary>
/// <remarks>S. Holm, Scandinavian Journal of Statistics 6 (1979) 65.</remarks>
public static class Holm
{
    /// <summary>Adjusted chances in the order given: those below α are flagged, and a false flag among all has chance α at most.</summary>
    /// <param name="chances">0 to 1 each.</param>
    public static double[] Adjust(ReadOnlySpan<double> chances)
    {
        var order = Enumerable.Range(0, chances.Length).ToArray();
        Array.Sort(chances.ToArray(), order);
        var adjusted = new double[chances.Length];
        var most = 0.0;
        for (var rank = 0; rank < order.Length; rank++)
        {
            most = Math.Max(most, Math.Min(1, (order.Length - rank) * chances[order[rank]]));
            adjusted[order[rank]] = most;
        }

        return adjusted;
    }
}
