namespace Ramwright.Diagnosis.Networks;

/// <summary>In which order variables are summed out, and how large the tables become.</summary>
/// <param name="Variables">All but those kept, first to last.</param>
/// <param name="LargestCells">Cells of the largest table that the order makes, the summed-out variable's states counted in.</param>
/// <param name="TotalCells">Cells of all tables together.</param>
internal sealed record EliminationOrder(List<int> Variables, double LargestCells, double TotalCells)
{
    /// <summary>The better of two greedy orders: fewest new links first, and smallest table first.</summary>
    /// <remarks>Finding the best order is NP-hard; min-fill and min-weight are the usual good ones (Kjærulff 1990; Koller and Friedman, Probabilistic Graphical Models, 2009, 9.4.3; section from memory).</remarks>
    public static EliminationOrder Best(IEnumerable<int[]> scopes, int kept, BayesNetwork network)
    {
        var all = scopes.ToList();
        var fill = Greedy(all, kept, network, byFill: true);
        var weight = Greedy(all, kept, network, byFill: false);
        return fill.TotalCells <= weight.TotalCells ? fill : weight;
    }

    private static EliminationOrder Greedy(List<int[]> scopes, int kept, BayesNetwork network, bool byFill)
    {
        var near = Links(scopes);
        var order = new List<int>();
        var (largest, total) = (0.0, 0.0);
        var left = near.Keys.Where(v => v != kept).Order().ToList();
        while (left.Count > 0)
        {
            var best = left.MinBy(v => (byFill ? Fill(near, v) : 0, Cells(near, v, network)));
            var cells = Cells(near, best, network);
            (largest, total) = (Math.Max(largest, cells), total + cells);
            Join(near, best);
            left.Remove(best);
            order.Add(best);
        }

        return new(order, largest, total);
    }

    private static Dictionary<int, HashSet<int>> Links(List<int[]> scopes)
    {
        var near = new Dictionary<int, HashSet<int>>();
        foreach (var scope in scopes)
        {
            foreach (var v in scope)
            {
                if (!near.TryGetValue(v, out var set))
                    near[v] = set = [];
                set.UnionWith(scope.Where(u => u != v));
            }
        }

        return near;
    }

    /// <summary>How many pairs of neighbours are not linked yet.</summary>
    private static int Fill(Dictionary<int, HashSet<int>> near, int v)
    {
        var neighbours = near[v];
        return neighbours.Sum(a => neighbours.Count(b => a < b && !near[a].Contains(b)));
    }

    private static double Cells(Dictionary<int, HashSet<int>> near, int v, BayesNetwork network) =>
        near[v].Aggregate((double)network.Count(v), (cells, u) => cells * network.Count(u));

    private static void Join(Dictionary<int, HashSet<int>> near, int v)
    {
        foreach (var a in near[v])
        {
            near[a].UnionWith(near[v]);
            near[a].Remove(a);
            near[a].Remove(v);
        }

        near.Remove(v);
    }
}
