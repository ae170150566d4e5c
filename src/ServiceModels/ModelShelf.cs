using System.Collections.Immutable;
using Ramwright.Metrology.Input;

namespace Ramwright.ServiceModels;

/// <summary>A folder of model files. A model is called by its id, which is the name of its file without <c>.yaml</c>, or by a path.</summary>
public sealed class ModelShelf
{
    private readonly string folder;

    /// <param name="folder">The folder; it need not exist, the shelf is then empty.</param>
    public ModelShelf(string folder)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        this.folder = folder;
    }

    /// <summary>Ids of the models on the shelf, in alphabetical order.</summary>
    public ImmutableArray<string> Ids() => Directory.Exists(folder)
        ? [.. Directory.EnumerateFiles(folder, "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)]
        : [];

    /// <summary>Reads a model by its id, or by the path of a file: whatever holds a slash or a dot is a path.</summary>
    public ModelReading Read(string idOrPath)
    {
        ArgumentNullException.ThrowIfNull(idOrPath);
        if (idOrPath.AsSpan().IndexOfAny('/', '\\', '.') >= 0)
            return ModelReader.ReadFile(idOrPath);
        var ids = Ids();
        if (ids.Contains(idOrPath, StringComparer.Ordinal))
            return ModelReader.ReadFile(Path.Combine(folder, idOrPath + ".yaml"));
        if (idOrPath.Length > 0 && File.Exists(idOrPath))
            return ModelReader.ReadFile(idOrPath);
        var near = NearName.Find(idOrPath, ids);
        var mend = near is not null ? $"write {near}, or the path of a file" : ids.IsEmpty ? "give the path of a file" : $"the models here are {string.Join(", ", ids)}; or give the path of a file";
        return new ModelReading.Refused([new Mistake(Place.Whole(idOrPath), $"no model is called '{idOrPath}'", mend, "unknown-model")], Unreadable: true);
    }
}
