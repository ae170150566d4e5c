using System.Collections.Immutable;
using System.CommandLine;
using Ramwright.App.Installed;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>The MODEL argument of many verbs: a file, or the id of a bundled model.</summary>
internal static class ModelArgument
{
    public static Argument<string> Create() => new("MODEL") { Description = "service model: a file, or the id of a bundled one (corrie-85, corrie-85-port, corrie-120, skerry-52)" };

    /// <summary>The model, or null with its mistakes added to <paramref name="found"/>.</summary>
    public static ServiceModel? Read(string given, List<Mistake> found)
    {
        switch (BundledModels.Shelf().Read(given))
        {
            case ModelReading.Read read:
                return read.Model;
            case ModelReading.Refused refused:
                found.AddRange(refused.Mistakes);
                return null;
            default:
                throw new InvalidOperationException("A reading is read or refused.");
        }
    }

    /// <summary>The ids given, as nodes of the model; each unknown one is a mistake with a near name.</summary>
    public static ImmutableArray<NodeId> ReadNodes(ServiceModel model, IEnumerable<string> given, string option, List<Mistake> found)
    {
        var known = model.Parts.Select(p => p.Id.Value).Concat(model.States.Select(s => s.Id.Value)).ToList();
        var nodes = ImmutableArray.CreateBuilder<NodeId>();
        foreach (var word in given.SelectMany(g => g.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)).Distinct(StringComparer.Ordinal))
        {
            if (known.Contains(word, StringComparer.Ordinal))
                nodes.Add(new NodeId(word));
            else
                found.Add(new Mistake(Place.Whole(option), $"no part or state of {model.Tool.Id} is called '{word}'", NearName.Find(word, known) is { } near ? $"write {near}" : $"list them: ramwright parts {model.Tool.Id}", "unknown-part"));
        }

        return nodes.ToImmutable();
    }
}
