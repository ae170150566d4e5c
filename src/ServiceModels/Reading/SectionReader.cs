using Ramwright.ServiceModels.Keys;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Reading;

/// <summary>Holds a group of keys against the table of what may stand there.</summary>
internal static class SectionReader
{
    public static Facts Read(YamlMapping mapping, Section section, ReadContext context)
    {
        var values = new Dictionary<string, object>(StringComparer.Ordinal);
        foreach (var entry in mapping.Entries)
        {
            if (section.Find(entry.Key) is not { } key)
                Unknown(entry, section, context);
            else if (key.Form.Read(entry.Value, context) is { } value)
                values[entry.Key] = value;
        }

        foreach (var key in section.Keys)
            if (key.Required && mapping.Find(key.Name) is null)
                context.Add(mapping.Owner, $"'{key.Name}' is missing in {section.Name}: {key.Meaning}", $"add it, such as {key.Name}: {key.Example}", "missing-key");
        return new(values);
    }

    private static void Unknown(YamlEntry entry, Section section, ReadContext context)
    {
        var names = section.Keys.Select(k => k.Name).ToList();
        var near = context.Mistakes.Near(entry.Key, names);
        var what = entry.Key.Length <= 70 ? entry.Key : entry.Key[..67] + "...";
        var cutText = entry.Value is YamlScalar { Text.Length: 0 } && entry.Key.Contains(' ', StringComparison.Ordinal);
        var mend = cutText ? "put the text before it in quotes: within braces an unquoted comma begins a new key"
            : near is not null ? $"write {near}"
            : $"take it away; the keys here are {string.Join(", ", names)}";
        context.Add(entry.At, $"{section.Name} has no key '{what}'", mend, "unknown-key");
    }
}
