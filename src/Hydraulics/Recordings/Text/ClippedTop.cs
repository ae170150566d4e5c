namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>Finds where a signal stood at the end of its device's range.</summary>
/// <remarks>
/// A flat top alone may be real (a pump that stands, a motor at its current limit), but then it carries the noise of the rest. It is clipped when rows at the very highest value
/// follow each other without any noise, and the signal came up so fast that, going on like that for 20 ms at most, it would have left this value far behind.
/// In a signal without noise, such as a simulated one, none of this can be told, and nothing is taken out.
/// </remarks>
internal static class ClippedTop
{
    private const int FewestRows = 5;
    private const double GoesOn = 0.02;

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
        if (noise <= 0)
            return null;
        for (var i = 1; i < values.Length; i++)
        {
            if (values[i] != highest)
                continue;
            var end = i;
            while (end < values.Length && values[end] == highest)
                end++;
            if (end - i >= FewestRows && Rise(seconds, values, i) * Math.Min(GoesOn, seconds[end - 1] - seconds[i]) > 8 * noise)
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

    /// <summary>Median step from row to row, which noise and steps of the logger make; 0 where most rows repeat the one before.</summary>
    private static double Noise(ReadOnlySpan<double> values)
    {
        var steps = new double[values.Length - 1];
        for (var i = 0; i < steps.Length; i++)
            steps[i] = double.IsNaN(values[i + 1] - values[i]) ? 0 : Math.Abs(values[i + 1] - values[i]);
        Array.Sort(steps);
        return steps[steps.Length / 2];
    }
}
