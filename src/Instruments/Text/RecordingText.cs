using System.Globalization;
using System.Text;
using Ramwright.Instruments.Runs;

namespace Ramwright.Instruments.Text;

/// <summary>Reads pressure over time: a header that names a time column (<c>time_s</c>, <c>time_ms</c>) and a pressure column, then numbers with a decimal point.</summary>
internal static class RecordingText
{
    public const int LargestFileBytes = 50_000_000;
    private const int MostLines = 500_000;

    /// <param name="unit">A header that names another unit is wrong.</param>
    /// <param name="toBar">A number of the pressure column as a pressure; null where it can be none.</param>
    /// <returns>Null with the first thing that is wrong: a recording with a hole is no recording.</returns>
    public static List<PressureSample>? Read(ReadOnlySpan<byte> bytes, ReadingUnit unit, Func<double, double?> toBar, out string wrong)
    {
        var samples = new List<PressureSample>();
        var number = 0;
        (int Time, int Pressure, double ToSeconds)? columns = null;
        foreach (var range in bytes.Split((byte)'\n'))
        {
            var line = Encoding.UTF8.GetString(bytes[range]).Trim('\r', ' ', '\uFEFF');
            number++;
            if (line.Length == 0 || line[0] == '#')
                continue;
            var fields = line.Length <= SourceText.LongestLine ? line.Split([',', ';', '\t'], StringSplitOptions.TrimEntries) : [];
            if (columns is not { } at)
            {
                columns = Columns(fields);
                if (columns is null)
                {
                    wrong = $"line {number}: the header names no time and pressure, such as time_s,pressure_bar";
                    return null;
                }
                if (UnitOf(fields[columns.Value.Pressure]) is { } named && named != unit)
                {
                    wrong = $"line {number}: the file is in {named.Symbol()}, and {unit.Symbol()} is expected";
                    return null;
                }
                continue;
            }
            if (samples.Count >= MostLines)
            {
                wrong = $"the recording has more than {MostLines} lines";
                return null;
            }
            if (Number(fields, at.Time) is not { } time || Number(fields, at.Pressure) is not { } value || toBar(value) is not { } bar)
            {
                wrong = $"line {number}: time or pressure is no number that can be";
                return null;
            }
            if (samples.Count > 0 && time * at.ToSeconds <= samples[^1].Seconds)
            {
                wrong = $"line {number}: time does not go on";
                return null;
            }
            samples.Add(new(time * at.ToSeconds, bar));
        }
        wrong = samples.Count == 0 ? "there is no reading in this file" : "";
        return samples.Count == 0 ? null : samples;
    }

    private static (int Time, int Pressure, double ToSeconds)? Columns(string[] names)
    {
        var lower = names.Select(n => n.Trim('"').ToLowerInvariant()).ToList();
        var seconds = lower.FindIndex(n => n is "time_s" or "t_s" or "time [s]" or "time (s)");
        var milliseconds = lower.FindIndex(n => n is "time_ms" or "t_ms" or "time [ms]" or "time (ms)");
        var pressure = lower.FindIndex(n => n.StartsWith("pressure", StringComparison.Ordinal) || n.StartsWith("p_", StringComparison.Ordinal) || n.StartsWith("force", StringComparison.Ordinal));
        return pressure < 0 || (seconds < 0 && milliseconds < 0) ? null : seconds >= 0 ? (seconds, pressure, 1) : (milliseconds, pressure, 1e-3);
    }

    private static ReadingUnit? UnitOf(string name) => ReadingUnits.Find(name.Trim('"', ')', ']').Split('_', ' ', '[', '(')[^1]);

    private static double? Number(string[] fields, int column) =>
        column < fields.Length && double.TryParse(fields[column], NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
}
