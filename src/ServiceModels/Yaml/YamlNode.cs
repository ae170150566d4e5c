using Ramwright.Metrology.Input;

namespace Ramwright.ServiceModels.Yaml;

/// <summary>A node of the file with its place.</summary>
/// <param name="At">Where it stands.</param>
/// <param name="Owner">The key it belongs to; its own place when it has none.</param>
internal abstract record YamlNode(Place At, Place Owner);

/// <summary>A single value.</summary>
/// <param name="Text">Without quotes and escapes.</param>
/// <param name="Lead">Characters before the text in the source (the quote), so that a place inside can be shown; -1 when source and text differ.</param>
internal sealed record YamlScalar(Place At, Place Owner, string Text, int Lead) : YamlNode(At, Owner)
{
    /// <summary>The place of some characters of the text; of the whole value where the source is written otherwise.</summary>
    public Place PlaceOf(int start, int length) => Lead < 0 ? At : At with { Column = At.Column + Lead + start, Length = length };
}

/// <summary>A list.</summary>
internal sealed record YamlSequence(Place At, Place Owner, List<YamlNode> Items) : YamlNode(At, Owner);

/// <summary>Keys with values, in the order of the file.</summary>
internal sealed record YamlMapping(Place At, Place Owner, List<YamlEntry> Entries) : YamlNode(At, Owner)
{
    private const int FewEntries = 16;
    private Dictionary<string, YamlEntry>? index;

    public YamlEntry? Find(string key) => Entries.Count <= FewEntries
        ? Entries.Find(e => string.Equals(e.Key, key, StringComparison.Ordinal))
        : (index ??= Entries.ToDictionary(e => e.Key, StringComparer.Ordinal)).GetValueOrDefault(key);
}

/// <summary>Something already refused (an alias); whoever reads it stays silent.</summary>
internal sealed record YamlRefused(Place At, Place Owner) : YamlNode(At, Owner);

/// <summary>A key and its value.</summary>
internal sealed record YamlEntry(string Key, Place At, YamlNode Value);
