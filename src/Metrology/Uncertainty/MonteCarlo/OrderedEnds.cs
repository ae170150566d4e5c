namespace Ramwright.Metrology.Uncertainty.MonteCarlo;

/// <summary>Which interval of a given share is reported.</summary>
public enum IntervalKind
{
    /// <summary>As much below it as above.</summary>
    Symmetric,

    /// <summary>The shortest of all.</summary>
    Shortest,
}

/// <summary>The coverage interval of simulated results: only the two ends are put in order, not what lies between.</summary>
/// <remarks>JCGM 101:2008, 7.7.1 to 7.7.3 (clauses from memory). Selection: C. A. R. Hoare, Comm. ACM 4 (1961) 321.</remarks>
internal static class OrderedEnds
{
    /// <summary>The ends of the interval. The results are put into another order.</summary>
    /// <param name="results">All finite, two or more.</param>
    /// <param name="coverage">Above 0 and below 1.</param>
    public static (double Low, double High) Interval(Span<double> results, double coverage, IntervalKind kind)
    {
        var count = results.Length;
        var inside = Math.Clamp((int)(coverage * count + 0.5), 1, count - 1);
        var outside = count - inside;
        var low = results[..outside];
        var high = results[inside..];
        if (2 * outside < count)
        {
            PutSmallestFirst(results, outside);
            low.Sort();
            PutSmallestFirst(results[outside..], inside - outside);
            high.Sort();
        }
        else
        {
            results.Sort();
        }

        var best = (outside + 1) / 2 - 1;
        if (kind == IntervalKind.Symmetric)
            return (low[Math.Max(0, best)], high[Math.Max(0, best)]);
        for (var i = best = 0; i < outside; i++)
            if (high[i] - low[i] < high[best] - low[best])
                best = i;
        return (low[best], high[best]);
    }

    /// <summary>Moves the smallest <paramref name="count"/> to the front, in no order.</summary>
    private static void PutSmallestFirst(Span<double> values, int count)
    {
        var (from, to) = (0, values.Length - 1);
        while (from < to && count > from && count <= to)
        {
            var pivot = Pivot(values, from, to, count);
            var (i, j) = (from - 1, to + 1);
            while (true)
            {
                do
                    i++;
                while (values[i] < pivot);
                do
                    j--;
                while (values[j] > pivot);
                if (i >= j)
                    break;
                (values[i], values[j]) = (values[j], values[i]);
            }

            if (count <= j + 1)
                to = j;
            else
                from = j + 1;
        }
    }

    /// <summary>An element near the place wanted, from a sorted sample of nine (a stride apart), never the last one.</summary>
    private static double Pivot(Span<double> values, int from, int to, int count)
    {
        const int Sample = 9;
        Span<double> sample = stackalloc double[Sample];
        var stride = (to - from) / Sample;
        for (var i = 0; i < Sample; i++)
            sample[i] = values[from + i * stride];
        sample.Sort();
        return sample[(int)Math.Clamp((long)Sample * (count - from) / (to - from + 1), 0, Sample - 1)];
    }
}
