using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Input;

namespace Ramwright.ServiceModels.Yaml;

/// <summary>Gathers mistakes of one file with their excerpts; bounded, so that a hostile file cannot fill the memory.</summary>
internal sealed class MistakeList(SourceText source)
{
    private const int Most = 1000;
    private const int MostSuggestions = 200;
    private readonly List<Mistake> gathered = [];

    public bool Any => gathered.Count > 0;

    /// <summary>Whether no more are taken.</summary>
    public bool Full => gathered.Count > Most;

    public SourceText Source => source;

    /// <summary>Adds a mistake at a place, with the line it stands in.</summary>
    public void Add(Place at, string what, string mend, string code)
    {
        if (gathered.Count < Most)
            gathered.Add(new(at, what, mend, code) { Excerpt = source.Line(at.Line) });
        else if (gathered.Count == Most)
            gathered.Add(new(Place.Whole(source.File), string.Create(CultureInfo.InvariantCulture, $"there are more than {Most} mistakes; the rest is not listed"), "mend these first", "too-many-mistakes"));
    }

    /// <summary>The near name among the known ones, while there is patience for it.</summary>
    public string? Near(string written, IEnumerable<string> known) => gathered.Count < MostSuggestions ? NearName.Find(written, known.Take(2000)) : null;

    /// <summary>All mistakes in the order of the file, the same one once.</summary>
    public ImmutableArray<Mistake> InOrder() =>
        [.. gathered.DistinctBy(m => (m.At, m.What)).OrderBy(m => m.At.Line == 0 ? int.MaxValue : m.At.Line).ThenBy(m => m.At.Column)];
}
