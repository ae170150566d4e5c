using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Ramwright.Instruments;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Proving;

namespace Ramwright.App.Verbs;

/// <summary>Reads earlier series of a model: a header <c>deviation_bar;runs</c>, then the standard deviation and the number of runs of one series a line.</summary>
internal static class EarlierFile
{
    public const int LargestBytes = 1 << 20;

    private const double MostBar = 2000; // as for readings
    private const int MostRuns = 1000;
    private static readonly char[] Separators = [';', '\t', ','];

    /// <returns>Null with every mistake when the file cannot be taken.</returns>
    public static EarlierSeries? Read(string name, byte[] bytes, out ImmutableArray<Mistake> mistakes)
    {
        var found = new List<Mistake>();
        mistakes = [];
        if (bytes.Length > LargestBytes)
        {
            mistakes = [new(Place.Whole(name), "the file of earlier series is larger than 1 MB", "give one line per series", "too-large")];
            return null;
        }

        var lines = Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF').Split('\n');
        var series = new List<EarlierScatter>();
        double? pascals = null;
        var separator = ';';
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i].TrimEnd('\r').Trim();
            if (line.Length == 0 || line[0] == '#')
                continue;
            if (pascals is null)
            {
                separator = Separators.FirstOrDefault(line.Contains);
                pascals = Header(line.Split(separator));
                if (pascals is null)
                {
                    mistakes = [new(new(name, i + 1, 1, line.Length), $"'{line}' is no header of earlier series", "write deviation_bar;runs above the lines; the unit may be bar, MPa, kPa or psi", "missing-header") { Excerpt = line }];
                    return null;
                }
            }
            else if (Series(name, i + 1, line, separator, pascals.Value, found) is { } one)
            {
                series.Add(one);
            }
        }

        if (found.Count == 0 && series.Count < EarlierSeries.Fewest)
            found.Add(new(Place.Whole(name), string.Create(CultureInfo.InvariantCulture, $"{series.Count} earlier series; {EarlierSeries.Fewest} or more tell how alike the tools of a model scatter"), "leave --earlier out until there are more: the tool's own scatter then counts", "too-few-series"));
        mistakes = [.. found];
        return found.Count > 0 ? null : new EarlierSeries(series);
    }

    /// <summary>Pascals per unit of the deviations.</summary>
    private static double? Header(string[] cells) =>
        cells.Length == 2 && cells[1].Trim() == "runs" && cells[0].Trim().StartsWith("deviation_", StringComparison.Ordinal)
        && ReadingUnits.Find(cells[0].Trim()["deviation_".Length..]) is { } unit && unit != ReadingUnit.Kilonewton
            ? unit switch { ReadingUnit.Bar => 1e5, ReadingUnit.Megapascal => 1e6, ReadingUnit.Kilopascal => 1e3, _ => ImperialUnits.PascalsPerPsi }
            : null;

    private static EarlierScatter? Series(string name, int line, string text, char separator, double pascalsPerUnit, List<Mistake> found)
    {
        var cells = text.Split(separator);
        var typed = separator == ',' ? cells[0] : cells[0].Replace(',', '.');
        if (cells.Length == 2
            && double.TryParse(typed, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var deviation)
            && int.TryParse(cells[1], CultureInfo.InvariantCulture, out var runs)
            && deviation > 0 && deviation * pascalsPerUnit <= MostBar * 1e5 && runs is >= 2 and <= MostRuns)
            return new(Pressure.FromPascals(deviation * pascalsPerUnit), runs);
        found.Add(new(new(name, line, 1, text.Length), $"'{text}' is no earlier series: a standard deviation above zero and a number of runs from 2 to 1,000 are wanted",
            "write both with nothing behind them; a series of equal readings hid its scatter and stays out, as a remark behind #", "bad-number")
        { Excerpt = text });
        return null;
    }
}
