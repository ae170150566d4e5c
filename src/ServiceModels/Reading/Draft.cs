using System.Globalization;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Reading;

/// <summary>
/// A model as far as it could be built, with the file it came from. Entries that were mistaken are left out or stand with their defaults,
/// so that the lints can still look at the rest without complaining a second time.
/// </summary>
/// <param name="Model">The model.</param>
/// <param name="Root">The file.</param>
/// <param name="LimitsKnown">Whether the limits were sound; otherwise they are placeholders.</param>
internal sealed record Draft(ServiceModel Model, YamlMapping Root, bool LimitsKnown)
{
    /// <summary>The place of the key or list entry at the end of a path of keys and positions; of the last one found where the path leaves the file.</summary>
    public Place KeyAt(params ReadOnlySpan<object> path) => Follow(path).Key;

    /// <summary>The place of the value at the end of a path.</summary>
    public Place ValueAt(params ReadOnlySpan<object> path) => Follow(path).Value;

    /// <summary>Whether the path is in the file.</summary>
    public bool Has(params ReadOnlySpan<object> path) => Follow(path).Whole;

    /// <summary>The text of the single value at the end of a path; null when there is none.</summary>
    public string? TextAt(params ReadOnlySpan<object> path) => Follow(path) is { Whole: true, Node: YamlScalar scalar } ? scalar.Text : null;

    private (Place Key, Place Value, bool Whole, YamlNode Node) Follow(ReadOnlySpan<object> path)
    {
        YamlNode node = Root;
        var key = Root.Owner;
        foreach (var step in path)
        {
            if (step is string name && node is YamlMapping mapping && mapping.Find(name) is { } entry)
                (node, key) = (entry.Value, entry.At);
            else if (step is int position && node is YamlSequence list && position < list.Items.Count)
                (node, key) = (list.Items[position], list.Items[position].At);
            else
                return (key, key, false, node);
        }

        return (key, node is YamlScalar ? node.At : key, true, node);
    }

    /// <summary>'(line 12)' of a part, state or other entry, for words inside a message.</summary>
    public string LineOf(params ReadOnlySpan<object> path) => KeyAt(path).Line.ToString(CultureInfo.InvariantCulture);
}
