namespace Ramwright.Seals.Tests;

/// <summary>Published tables that travel with the tests: comment lines, a header, rows.</summary>
internal static class PublishedRows
{
    public static IEnumerable<Dictionary<string, string>> Of(string file)
    {
        var lines = File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Published", file)).Where(l => l.Length > 0 && !l.StartsWith('#')).ToList();
        var header = lines[0].Split(',');
        return lines.Skip(1).Select(l => header.Zip(l.Split(',')).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal));
    }
}
