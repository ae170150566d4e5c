using System.Globalization;

namespace Ramwright.Metrology.Tests;

/// <summary>A table of published values: '#' lines name the source, the first other line is the header, an empty cell is no value.</summary>
internal static class PublishedCsv
{
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Rows(string name)
    {
        var lines = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Published", name)).Where(l => l.Length > 0 && l[0] != '#').ToList();
        var header = lines[0].Split(',');
        return [.. lines.Skip(1).Select(l => header.Zip(l.Split(',')).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal))];
    }

    public static double Number(this IReadOnlyDictionary<string, string> row, string column) => double.Parse(row[column], CultureInfo.InvariantCulture);

    public static bool Has(this IReadOnlyDictionary<string, string> row, string column) => row[column].Length > 0;

    /// <summary>Half a unit of the last printed digit.</summary>
    public static double HalfLastDigit(string printed)
    {
        var point = printed.IndexOf('.', StringComparison.Ordinal);
        return 0.5 * Math.Pow(10, point < 0 ? 0 : -(printed.Length - point - 1));
    }
}
