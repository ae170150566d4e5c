namespace Ramwright.Metrology.Conformity;

/// <summary>Integrals of smooth functions over panels, ten Gauss points in each.</summary>
/// <remarks>Gauss–Legendre of ten points is exact for degree 19 (Abramowitz &amp; Stegun 25.4.30; nodes recomputed in 50-digit arithmetic).</remarks>
internal static class Panels
{
    private static readonly double[] Nodes = [0.14887433898163121089, 0.43339539412924719080, 0.67940956829902440623, 0.86506336668898451073, 0.97390652851717172008];
    private static readonly double[] Weights = [0.29552422471475287017, 0.26926671930999635509, 0.21908636251598204400, 0.14945134915058059315, 0.06667134430868813759];

    /// <summary>The integral from the first to the last of the rising edges, panel by panel.</summary>
    public static double Integrate(Func<double, double> f, ReadOnlySpan<double> edges)
    {
        var sum = 0.0;
        for (var p = 1; p < edges.Length; p++)
        {
            var (middle, half) = (0.5 * (edges[p] + edges[p - 1]), 0.5 * (edges[p] - edges[p - 1]));
            for (var i = 0; i < Nodes.Length; i++)
                sum += half * Weights[i] * (f(middle - half * Nodes[i]) + f(middle + half * Nodes[i]));
        }

        return sum;
    }

    /// <summary>Rising edges over a range: steps of the prior's scale, finer within nine u of each place where acceptance turns.</summary>
    public static double[] Edges(double from, double to, Prior prior, double u, params ReadOnlySpan<double> turns)
    {
        if (!(from < to))
            return [];
        var edges = new SortedSet<double> { from, to };
        void Steps(double start, double end, double step)
        {
            for (var i = 0; start + i * step < end; i++)
                if (start + i * step > from && start + i * step < to)
                    edges.Add(start + i * step);
        }

        var (low, high) = prior.Reach;
        Steps(low, high, 0.5 * prior.StandardDeviation);
        foreach (var turn in turns)
            if (double.IsFinite(turn) && turn + 9 * u > from && turn - 9 * u < to)
                Steps(turn - 9 * u, turn + 9 * u, 0.5 * u);
        foreach (var place in prior.Breaks)
            if (place > from && place < to)
                edges.Add(place);
        return [.. edges];
    }
}
