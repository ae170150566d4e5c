using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Budgets;

/// <summary>A group of keys of a budget file: refuses what it does not know, misses what it needs, and reads single values.</summary>
internal sealed class Group
{
    private readonly YamlMapping _mapping;
    private readonly MistakeList _mistakes;
    private readonly string _name;

    private Group(YamlMapping mapping, MistakeList mistakes, string name) => (_mapping, _mistakes, _name) = (mapping, mistakes, name);

    /// <summary>The place of the group's own key.</summary>
    public Place At => _mapping.Owner;

    /// <summary>The group, or null after the mistake was reported.</summary>
    /// <param name="name">What the group is called in messages, such as 'an input'.</param>
    /// <param name="known">Keys that may stand here; null when any may.</param>
    public static Group? Open(YamlNode node, MistakeList mistakes, string name, string example, string[]? known)
    {
        if (node is not YamlMapping mapping)
        {
            if (node is not YamlRefused)
                mistakes.Add(node is YamlScalar { Text.Length: > 0 } ? node.At : node.Owner, $"{name} (keys with values) is wanted here", $"write it as keys, such as {example}", "wrong-form");
            return null;
        }

        foreach (var entry in mapping.Entries.Where(e => known is not null && !known.Contains(e.Key, StringComparer.Ordinal)))
            mistakes.Add(entry.At, $"{name} has no key '{(entry.Key.Length <= 70 ? entry.Key : entry.Key[..67] + "...")}'",
                mistakes.Near(entry.Key, known!) is { } near ? $"write {near}" : $"take it away; the keys here are {string.Join(", ", known!)}", "unknown-key");
        return new(mapping, mistakes, name);
    }

    public IEnumerable<YamlEntry> Entries => _mapping.Entries;

    public YamlEntry? Find(string key) => _mapping.Find(key);

    /// <summary>The node of a key that must be there.</summary>
    public YamlNode? Need(string key, string meaning, string example)
    {
        if (_mapping.Find(key) is { } entry)
            return entry.Value;
        _mistakes.Add(_mapping.Owner, $"'{key}' is missing in {_name}: {meaning}", $"add it, such as {key}: {example}", "missing-key");
        return null;
    }

    /// <summary>A single value that is not empty.</summary>
    public YamlScalar? Single(YamlNode? node, string example)
    {
        switch (node)
        {
            case YamlScalar scalar when scalar.Text.AsSpan().Trim().Length > 0:
                return scalar;
            case null or YamlRefused:
                return null;
            case YamlScalar:
                _mistakes.Add(node.Owner, "no value stands here", $"write one, such as {example}, or take the key away", "empty-value");
                return null;
            default:
                _mistakes.Add(node.Owner, "a single value is wanted here", $"write one value, such as {example}", "wrong-form");
                return null;
        }
    }

    /// <summary>Takes a reading of a value's text; a fault is put at its characters in the file.</summary>
    public T? Take<T>(YamlScalar scalar, TextReading<T> reading)
        where T : struct
    {
        if (reading is TextReading<T>.Good good)
            return good.Value;
        Report(scalar, ((TextReading<T>.Bad)reading).Fault);
        return null;
    }

    public void Report(YamlScalar scalar, TextFault fault) =>
        _mistakes.Add(scalar.PlaceOf(fault.Start, Math.Min(fault.Length, Math.Max(1, scalar.Text.Length))), fault.What, fault.Mend, fault.Code);

    public void Add(Place at, string what, string mend, string code) => _mistakes.Add(at, what, mend, code);

    /// <summary>One of some words.</summary>
    public T? Word<T>(YamlScalar? scalar, string what, params ReadOnlySpan<(string Word, T Meaning)> words)
        where T : struct
    {
        if (scalar is null)
            return null;
        var known = new List<string>();
        foreach (var (word, meaning) in words)
        {
            if (string.Equals(scalar.Text, word, StringComparison.Ordinal))
                return meaning;
            known.Add(word);
        }

        _mistakes.Add(scalar.At, $"'{scalar.Text}' is no {what}", NearName.Find(scalar.Text, known) is { } near ? $"write {near}; the words are {string.Join(", ", known)}" : $"write one of {string.Join(", ", known)}", "unknown-word");
        return null;
    }
}
