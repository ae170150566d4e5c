using System.Collections.Immutable;

namespace Ramwright.Hydraulics.Phases;

/// <summary>Tells from pressure alone when the motor ran: it starts when pressure leaves zero, and stands where pressure no longer climbs.</summary>
/// <remarks>A pump that stalls against its leaks cannot be told from a motor that stands.</remarks>
internal static class PressureRuns
{
    private const double SlopeLength = 0.04, LongestSlopeLength = 0.2, ShortestPause = 0.3, HighShare = 0.1, StandsPerSecond = 4e5, ClimbsPerSecond = 30e5, FinePascals = 0.6e5;

    /// <summary>Runs up to a moment: the fall of the relief, or the end.</summary>
    public static ImmutableArray<MotorRun> Find(SignalGrid pressure, double zero, double endSeconds)
    {
        var fine = pressure.Steps(0.01);
        while (fine < pressure.Steps(0.05) && pressure.Noise / Math.Sqrt(fine) > FinePascals)
            fine++;
        var end = pressure.IndexOf(endSeconds);
        var over = Math.Max(6 * pressure.Noise / Math.Sqrt(fine), 0.5e5);
        var start = 0;
        while (start < end && !(pressure.Mean(start, start + fine) > zero + over && pressure.Mean(start + (4 * fine), start + (5 * fine)) > zero + over))
            start++;
        if (start >= end)
            return [];
        var highest = 0.0;
        for (var i = start; i < end; i++)
            highest = Math.Max(highest, pressure.Around(i, fine) - zero);
        var runs = ImmutableArray.CreateBuilder<MotorRun>();
        var from = pressure.SecondsAt(start);
        foreach (var (stops, goesOn) in Pauses(pressure, start, end, zero + (HighShare * highest)))
        {
            runs.Add(new(from, pressure.SecondsAt(stops), 0.05));
            from = pressure.SecondsAt(goesOn);
        }

        if (endSeconds > from)
            runs.Add(new(from, endSeconds, 0.05));
        return runs.ToImmutable();
    }

    /// <summary>Where pressure stands: the length over which slopes are taken grows until noise makes less than a slow climb.</summary>
    private static IEnumerable<(int Stops, int GoesOn)> Pauses(SignalGrid pressure, int start, int end, double high)
    {
        var length = pressure.Steps(SlopeLength);
        while (length < pressure.Steps(LongestSlopeLength) && SlopeNoise(pressure, length) > StandsPerSecond)
            length++;
        var stands = Math.Max(StandsPerSecond, SlopeNoise(pressure, length));
        var from = -1;
        for (var i = start + length; i < end; i++)
        {
            // Once it pauses, pressure may fall below what counts as high.
            var pauses = i < end - length && (from >= 0 || pressure.Values[i] > high) && pressure.Slope(i, length) < stands;
            if (pauses)
            {
                from = from < 0 ? i : from;
            }
            else if (from >= 0)
            {
                // A slope counts as flat when both its halves lie in the pause.
                if ((i - from + (2 * length)) * pressure.StepSeconds >= ShortestPause && i - from > length / 2 && i < end - length && StopsAtOnce(pressure, from - length))
                    yield return (from - length, i + length);
                from = -1;
            }
        }
    }

    /// <summary>Whether pressure still climbed just before: a motor stops at once, and pressure with it, while a connector flattens out.</summary>
    private static bool StopsAtOnce(SignalGrid pressure, int stops)
    {
        var (before, mean) = (pressure.Steps(0.1), pressure.Steps(0.02));
        var climb = (pressure.Around(stops, mean) - pressure.Around(stops - before, mean)) / (before * pressure.StepSeconds);
        return climb > Math.Max(ClimbsPerSecond, 5 * pressure.Noise * Math.Sqrt(2.0 / mean) / (before * pressure.StepSeconds));
    }

    private static double SlopeNoise(SignalGrid pressure, int length) => 4 * pressure.Noise * Math.Sqrt(2.0 / length) / (length * pressure.StepSeconds);
}
