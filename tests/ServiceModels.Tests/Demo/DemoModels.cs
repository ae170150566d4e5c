using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Tests.Demo;

/// <summary>The models of the demo shop, read once.</summary>
public static class DemoModels
{
    private static readonly Dictionary<string, ModelReading> Readings =
        new[] { "corrie-85", "corrie-85-port", "corrie-120", "skerry-52" }.ToDictionary(id => id, id => ModelReader.ReadFile(Path.Combine(Repository.Folder("models"), id + ".yaml")), StringComparer.Ordinal);

    public static TheoryData<string> Ids => [.. Readings.Keys];

    public static ModelReading.Read Reading(string id) => Readings[id] switch
    {
        ModelReading.Read r => r,
        ModelReading.Refused r => throw new InvalidOperationException(MistakeText.Write(r.Mistakes)),
        _ => throw new InvalidOperationException(id),
    };

    public static ServiceModel Of(string id) => Reading(id).Model;

    public static Part Part(this ServiceModel model, string id) =>
        model.FindPart(new NodeId(id)) ?? throw new InvalidOperationException($"{model.Tool.Id} has no part {id}.");

    /// <summary>Every way off with its part.</summary>
    public static IEnumerable<(Part Part, WayOff Way)> Ways(this ServiceModel model) => model.Parts.SelectMany(p => p.WaysOff.Select(w => (p, w)));

    /// <summary>Every caution of the model.</summary>
    public static IEnumerable<Caution> Cautions(this ServiceModel model) =>
    [
        .. model.States.SelectMany(s => (s.Reach?.Cautions ?? []).Concat(s.Undo?.Cautions ?? [])),
        .. model.Ways().SelectMany(w => w.Way.Cautions),
        .. model.Parts.SelectMany(p => p.Fit?.Cautions ?? []),
        .. model.Units.SelectMany(u => u.Cautions),
        .. model.Checks.SelectMany(c => c.Cautions),
    ];
}
