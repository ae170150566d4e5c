namespace Ramwright.Parts.Covering;

/// <summary>Completes a cover quickly: again and again the column with the least cost per unit of use, then out with what is not needed.</summary>
internal static class GreedyCover
{
    /// <summary>Pieces of each column that complete the state to a cover, those already taken included; null when the live columns cannot.</summary>
    /// <param name="price">What a column counts as: its cost, or its reduced cost under multipliers.</param>
    public static int[]? Complete(CoverProblem problem, CoverState state, ReadOnlySpan<int> live, Func<int, double> price)
    {
        int[] need = [.. state.Need];
        int[] taken = [.. state.Taken];
        var open = need.Count(n => n > 0);
        while (open > 0)
        {
            var (best, least) = (-1, double.PositiveInfinity);
            foreach (var column in live)
            {
                var use = 0;
                foreach (var item in problem.Columns[column].Contents)
                    use += Math.Min(item.Count, Math.Max(0, need[item.Row]));
                var cost = Math.Max(price(column), 1e-9 * problem.Columns[column].Cost);
                if (use > 0 && cost / use < least)
                    (best, least) = (column, cost / use);
            }
            if (best < 0)
                return null;
            open -= Take(problem.Columns[best], need, out var pieces);
            taken[best] += pieces;
        }
        Thin(problem, need, taken, state.Taken);
        return taken;
    }

    /// <summary>Takes as many pieces as give full use, at least one; returns how many rows that closes.</summary>
    private static int Take(CoverColumn column, int[] need, out int pieces)
    {
        pieces = int.MaxValue;
        foreach (var item in column.Contents)
            pieces = need[item.Row] > 0 ? Math.Min(pieces, Math.Max(1, need[item.Row] / item.Count)) : pieces;
        var closed = 0;
        foreach (var item in column.Contents)
        {
            var before = need[item.Row];
            need[item.Row] -= pieces * item.Count;
            closed += before > 0 && need[item.Row] <= 0 ? 1 : 0;
        }
        return closed;
    }

    /// <summary>Gives back pieces that no row misses, the dearest first, but none that stood before.</summary>
    private static void Thin(CoverProblem problem, int[] need, int[] taken, int[] before)
    {
        foreach (var column in Enumerable.Range(0, taken.Length).Where(c => taken[c] > before[c]).OrderByDescending(c => problem.Columns[c].Cost).ThenByDescending(c => c))
        {
            var spare = taken[column] - before[column];
            foreach (var item in problem.Columns[column].Contents)
                spare = Math.Min(spare, -need[item.Row] / item.Count);
            if (spare <= 0)
                continue;
            taken[column] -= spare;
            foreach (var item in problem.Columns[column].Contents)
                need[item.Row] += spare * item.Count;
        }
    }
}
