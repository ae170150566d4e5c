using Ramwright.Hydraulics.Phases;
using Ramwright.Hydraulics.Recordings;
using Ramwright.Metrology.Quantities;
using Ramwright.Paper.Charts;

namespace Ramwright.App.Papers;

/// <summary>What the chart of a recording shows: its rows, its phases named, its moments numbered.</summary>
internal static class RecordingPicture
{
    /// <param name="tool">What the tool is called.</param>
    /// <param name="segments">Null where no stroke was found: then time is even, and there are no moments.</param>
    /// <param name="window">Limits of the tool; null for none.</param>
    public static StrokeChartInput Of(string tool, Recording recording, StrokeSegments? segments, PressureWindow? window) => new()
    {
        Tool = tool,
        Rows = [.. Enumerable.Range(0, recording.Seconds.Length).Select(i => (recording.Seconds[i], At(recording.Pascals, i) is { } p ? Pressure.FromPascals(p) : (Pressure?)null, At(recording.Amperes, i)))],
        Phases = segments is null ? [] : [.. segments.Phases.Select(p => (p.FromSeconds, p.ToSeconds, PhaseWords.Of(p)))],
        Moments = segments is null ? [] : [.. segments.Events.Take(15).Select(e => (e.Seconds, PhaseWords.Of(e.Kind)))],
        Window = window,
    };

    private static double? At(System.Collections.Immutable.ImmutableArray<double>? signal, int row) => signal is { } values && !double.IsNaN(values[row]) ? values[row] : null;
}
