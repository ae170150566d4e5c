using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Reading;

/// <summary>The checked values of one section by key; a key that was absent or mistaken has none.</summary>
internal sealed class Facts(Dictionary<string, object> values)
{
    public static Facts None { get; } = new([]);

    public bool Has(string key) => values.ContainsKey(key);

    public string? Text(string key) => values.GetValueOrDefault(key) as string;

    public T? Value<T>(string key)
        where T : struct => values.GetValueOrDefault(key) is T value ? value : null;

    public T? Of<T>(string key)
        where T : class => values.GetValueOrDefault(key) as T;

    public T? Quantity<T>(string key)
        where T : struct, IQuantity<T> => Value<double>(key) is { } si ? T.FromSi(si) : null;

    public TimeSpan? Seconds(string key) => Value<double>(key) is { } seconds ? TimeSpan.FromSeconds(seconds) : null;

    public TimeSpan? Minutes(string key) => Value<double>(key) is { } minutes ? TimeSpan.FromMinutes(minutes) : null;

    public Facts? Section(string key) => values.GetValueOrDefault(key) as Facts;

    /// <summary>Ids in a list; none when the key is absent.</summary>
    public ImmutableArray<NodeId> Nodes(string key) => [.. List<string>(key).Select(id => new NodeId(id))];

    public ImmutableArray<T> List<T>(string key) => values.GetValueOrDefault(key) is ImmutableArray<object> items ? [.. items.OfType<T>()] : [];

    /// <summary>Sections by id, in the order of the file.</summary>
    public ImmutableArray<(string Id, Facts Facts)> Map(string key) =>
        values.GetValueOrDefault(key) is ImmutableArray<(string, Facts)> map ? map : [];

    /// <summary>Numbers by id, in the order of the file.</summary>
    public ImmutableArray<(string Id, double Value)> Numbers(string key) =>
        values.GetValueOrDefault(key) is ImmutableArray<(string, double)> map ? map : [];

    public ToolId? Tool => Text("tool") is { } id ? new(id) : null;

    public PostureId? Posture => Text("posture") is { } id ? new(id) : null;
}
