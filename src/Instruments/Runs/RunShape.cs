namespace Ramwright.Instruments.Runs;

/// <summary>What no stroke does: readings that jump up and back, and gaps where the pressure is high.</summary>
internal static class RunShape
{
    /// <summary>Whether the highest reading stands far above both neighbours while the pressure stays: a device that lied once, not a relief that opened.</summary>
    public static bool HasJump(ReadOnlySpan<PressureSample> run)
    {
        var top = Top(run);
        if (top == 0 || top == run.Length - 1)
            return top == 0; // a run climbs to its peak
        var (low, high) = (Math.Min(run[top - 1].Bar, run[top + 1].Bar), Math.Max(run[top - 1].Bar, run[top + 1].Bar));
        return high < 0.8 * run[top].Bar && low > 0.5 * high;
    }

    /// <summary>Whether, from the first reading above four fifths of the highest to the last, and on to the next behind it, two lie further apart than usual.</summary>
    public static bool HasGap(ReadOnlySpan<PressureSample> run, double widestFactor)
    {
        var intervals = new double[run.Length - 1];
        for (var i = 0; i < intervals.Length; i++)
            intervals[i] = run[i + 1].Seconds - run[i].Seconds;
        var usual = intervals.Order().ElementAt(intervals.Length / 2);
        var high = 0.8 * run[Top(run)].Bar;
        for (var i = 0; i < intervals.Length; i++)
        {
            if ((run[i].Bar >= high || run[i + 1].Bar >= high) && intervals[i] > widestFactor * usual)
                return true;
        }
        return false;
    }

    private static int Top(ReadOnlySpan<PressureSample> run)
    {
        var top = 0;
        for (var i = 1; i < run.Length; i++)
        {
            if (run[i].Bar > run[top].Bar)
                top = i;
        }
        return top;
    }
}
