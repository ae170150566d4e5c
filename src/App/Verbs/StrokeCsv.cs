using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Ramwright.Hydraulics.Strokes;

namespace Ramwright.App.Verbs;

/// <summary>A simulated recording as CSV: seconds, pressure as the sensor shows it, battery current.</summary>
internal static class StrokeCsv
{
    public static string Write(ImmutableArray<StrokeSample> samples)
    {
        var text = new StringBuilder("time_s,pressure_bar,current_A\n");
        foreach (var sample in samples)
            text.Append(CultureInfo.InvariantCulture, $"{sample.Seconds:0.######},{Plain(sample.ReadingPascals / 1e5, 2)},{Plain(sample.Amperes, 2)}\n");
        return text.ToString();
    }

    /// <summary>Without a minus before zero.</summary>
    private static string Plain(double value, int places) => (Math.Round(value, places) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);
}
