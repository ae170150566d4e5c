using System.Globalization;

namespace Ramwright.Hydraulics.Recordings.Text;

/// <summary>Makes time rise strictly, and says where it does not go on evenly.</summary>
internal static class RowClock
{
    private const double GapSteps = 8, UnevenShare = 0.3;

    /// <summary>Spreads rows of one time evenly up to the next time; the last ones at the pace of those before.</summary>
    /// <param name="seconds">Never falling, with two different times at least; changed in place.</param>
    public static void Spread(Span<double> seconds, List<RecordingNote> notes)
    {
        var equal = 0;
        for (var i = 1; i < seconds.Length; i++)
            equal += seconds[i] <= seconds[i - 1] ? 1 : 0;
        if (equal == 0)
            return;
        var pace = (seconds[^1] - seconds[0]) / (seconds.Length - 1);
        var start = 0;
        while (start < seconds.Length)
        {
            var end = start + 1;
            while (end < seconds.Length && seconds[end] == seconds[start])
                end++;
            var step = end < seconds.Length ? Math.Min((seconds[end] - seconds[start]) / (end - start), 2 * pace) : pace;
            if (start == 0 && end < seconds.Length && seconds[end] - (end * pace) > seconds[0])
                seconds[0] = seconds[end] - (end * (step = Math.Min(step, pace))); // the clock's first step began before the recording
            for (var i = start + 1; i < end; i++)
                seconds[i] = seconds[start] + ((i - start) * step);
            start = end;
        }

        var distinct = seconds.Length - equal;
        notes.Add(new(RecordingNoteKind.ClockSpread, string.Create(CultureInfo.InvariantCulture,
            $"{equal} rows have the time of the row before; the clock moves every {1e3 * pace * seconds.Length / distinct:0.###} ms on the whole, and rows between were spread evenly")));
    }

    /// <summary>Notes holes and uneven spacing.</summary>
    public static void Judge(ReadOnlySpan<double> seconds, List<RecordingNote> notes)
    {
        var steps = new double[seconds.Length - 1];
        for (var i = 0; i < steps.Length; i++)
            steps[i] = seconds[i + 1] - seconds[i];
        var sorted = (double[])steps.Clone();
        Array.Sort(sorted);
        var median = sorted[sorted.Length / 2];
        var holes = steps.Count(s => s > GapSteps * median);
        if (holes > 0)
        {
            var widest = Array.IndexOf(steps, sorted[^1]);
            notes.Add(new(RecordingNoteKind.Gap, string.Create(CultureInfo.InvariantCulture,
                $"{(holes == 1 ? "a hole" : $"{holes} holes, the widest")} of {sorted[^1]:0.###} s in time, after {seconds[widest]:0.###} s")));
        }

        if (steps.Length >= 10 && sorted[steps.Length * 9 / 10] - sorted[steps.Length / 10] > UnevenShare * median)
            notes.Add(new(RecordingNoteKind.UnevenRate, string.Create(CultureInfo.InvariantCulture, $"rows come {1e3 * sorted[steps.Length / 10]:0.###} to {1e3 * sorted[steps.Length * 9 / 10]:0.###} ms apart")));
    }
}
