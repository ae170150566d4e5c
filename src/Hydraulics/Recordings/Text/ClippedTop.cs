namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>Finds where a signal stood at the end of its device's range.</summary>
/// <remarks>
/// A flat top alone may be real (a stalled pump, a motor at its current limit). It is clipped when rows at the very highest value follow each other, and the signal came up so
/// fast that, going on like that, it would have left this value far behind.
/// </remarks>
internal static class ClippedTop
{
    private const int FewestRows = 5;

    /// <summary>Replaces clipped values by NaN.</summary>
    /// <param name="fullScale">The end of the range in the unit of the values, when it is known; else it is found.</param>
    /// <returns>The end of the range and how many rows stood at it; null when none did.</returns>
    public static (double Limit, int Rows)? TakeOut(ReadOnlySpan<double> seconds, Span<double> values, double? fullScale)
    {
        var limit = fullScale ?? Found(seconds, values);
        if (limit is not { } top)
            return null;
        var near = top - (1e-9 * Math.Abs(top));
        var rows = 0;
        for (var i = 0; i < values.Length; i++)
        {
            if (!(values[i] >= near))
                continue;
            values[i] = double.NaN;
            rows++;
        }

        return rows > 0 ? (top, rows) : null;
    }

    private static double? Found(ReadOnlySpan<double> seconds, ReadOnlySpan<double> values)
    {
        var highest = double.NegativeInfinity;
        foreach (var value in values)
            highest = value > highest ? value : highest;
        var noise = Noise(values);
        for (var i = 1; i < values.Length; i++)
        {
            if (values[i] != highest)
                continue;
            var end = i;
            while (end < values.Length && values[end] == highest)
                end++;
            if (end - i >= FewestRows && Rise(seconds, values, i) * (seconds[end - 1] - seconds[i]) > 8 * Math.Max(noise, 1e-9 * Math.Abs(highest)))
                return highest;
            i = end;
        }

        return null;
    }

    /// <summary>Mean rate of rise over the rows before a place, as many as make 10 ms or five.</summary>
    private static double Rise(ReadOnlySpan<double> seconds, ReadOnlySpan<double> values, int at)
    {
        var from = at - 1;
        while (from > 0 && (seconds[at] - seconds[from] < 0.01 || at - from < FewestRows))
            from--;
        return (values[at] - values[from]) / (seconds[at] - seconds[from]);
    }

    /// <summary>Median step from row to row, which noise and steps of the logger make; a step of the signal itself where there is no noise.</summary>
    private static double Noise(ReadOnlySpan<double> values)
    {
        var steps = new double[values.Length - 1];
        for (var i = 0; i < steps.Length; i++)
            steps[i] = double.IsNaN(values[i + 1] - values[i]) ? 0 : Math.Abs(values[i + 1] - values[i]);
        Array.Sort(steps);
        return steps[steps.Length / 2];
    }
}
