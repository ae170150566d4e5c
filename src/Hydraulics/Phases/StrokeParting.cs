using System.Globalization;
using Ramwright.Hydraulics.Recordings;

namespace Ramwright.Hydraulics.Phases;

/// <summary>
/// Parts a recorded stroke into its phases by itself. Motor runs come from current (or, without it, from pressure that climbs or stands), the relief from a fall that no leak makes,
/// closed dies from the bend of pressure out of the advance, a connector from a second bend. Levels and thresholds follow from the recording's own noise and range.
/// </summary>
public static class StrokeParting
{
    private const double LeastPascals = 3e5, Look = 0.05;

    /// <summary>Parts a recording.</summary>
    /// <param name="recording">100 to 20,000 rows a second, not yet corrected for zero or lag.</param>
    public static Segmentation Of(Recording recording)
    {
        ArgumentNullException.ThrowIfNull(recording);
        var pressure = SignalGrid.Of(recording, recording.Pascals);
        var current = SignalGrid.Of(recording, recording.Amperes);
        if ((pressure ?? current) is not { Length: >= 10 })
            return new Segmentation.NoStroke(pressure is null && current is null ? "there is neither pressure nor current in it" : "it is too short");
        var runs = current is null ? [] : MotorRuns.Find(current, recording);
        var notes = new List<PhaseNote>();
        if (runs.IsEmpty && pressure is not null)
        {
            var zero = Lowest(pressure);
            if (Highest(pressure) - zero < LeastPascals + (3 * pressure.Noise / Math.Sqrt(pressure.Steps(Look))))
                return new Segmentation.NoStroke(current is null ? "pressure never leaves its noise" : "neither pressure nor current leaves its noise");
            if (current is not null)
                notes.Add(new(PhaseNoteKind.MotorNotSeen, "current shows no motor that runs; phases were told by pressure alone"));
            var fall = ReliefFall.Find(pressure, 0, pressure.Length, zero);
            runs = PressureRuns.Find(pressure, zero, fall?.TopSeconds ?? recording.Seconds[^1]);
            current = null;
            if (runs.IsEmpty)
                return new Segmentation.NoStroke("pressure never climbs");
        }
        else if (runs.IsEmpty)
        {
            return new Segmentation.NoStroke("current never leaves its noise");
        }

        return new StrokeAssembly(recording, pressure, current, runs, notes).Finish();
    }

    private static double Highest(SignalGrid pressure)
    {
        var length = pressure.Steps(Look);
        var highest = double.NegativeInfinity;
        for (var i = 0; i + length <= pressure.Length; i++)
            highest = Math.Max(highest, pressure.Mean(i, i + length));
        return highest;
    }

    /// <summary>Lowest mean over 50 ms, in pascals.</summary>
    internal static double Lowest(SignalGrid pressure)
    {
        var length = pressure.Steps(Look);
        var lowest = double.PositiveInfinity;
        for (var i = 0; i + length <= pressure.Length; i++)
            lowest = Math.Min(lowest, pressure.Mean(i, i + length));
        return double.IsFinite(lowest) ? lowest : pressure.Mean(0, pressure.Length);
    }

    internal static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
