using System.Collections.Concurrent;
using System.Collections.Immutable;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels;
using Ramwright.ServiceModels.Levels;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Web.Pages;

/// <summary>A service model on the shelf that reads.</summary>
/// <param name="Notes">Advice of the linter that refuses nothing.</param>
public sealed record ShelvedModel(ServiceModel Model, LevelReport Levels, ImmutableArray<Mistake> Notes)
{
    /// <summary>0 to 3: what the model knows enough for.</summary>
    public int Level => Levels.Reached;

    /// <summary>The name of that level, such as 'ways off'.</summary>
    public string LevelName => Levels.Levels.FirstOrDefault(l => l.Number == Level)?.Name ?? "limits";
}

/// <summary>A file on the shelf that does not read, with all its mistakes.</summary>
public sealed record BadModel(string Id, ImmutableArray<Mistake> Mistakes);

/// <summary>
/// The service models of the house: the house's own folder first, then the bundled one. Read once; a file changed while the bench runs
/// is read again. Safe for use from several threads.
/// </summary>
public sealed class ShopModels(params ImmutableArray<string> folders)
{
    private readonly ConcurrentDictionary<string, (DateTime Written, ModelReading Reading)> read = new(StringComparer.Ordinal);

    /// <summary>Models that read, by id.</summary>
    public ImmutableArray<ShelvedModel> All => [.. Ids().Select(Find).OfType<ShelvedModel>()];

    /// <summary>Files that do not read.</summary>
    public ImmutableArray<BadModel> Bad => [.. Ids().Select(id => (id, Reading: Read(id))).Where(x => x.Reading is ModelReading.Refused).Select(x => new BadModel(x.id, ((ModelReading.Refused)x.Reading!).Mistakes))];

    /// <summary>The model of that id; null when there is none or it does not read.</summary>
    public ShelvedModel? Find(string id) => Read(id) is ModelReading.Read r ? new(r.Model, r.Levels, r.Notes) : null;

    private ModelReading? Read(string id)
    {
        // Only an id that is on the shelf is ever made into a path.
        if (folders.FirstOrDefault(f => new ModelShelf(f).Ids().Contains(id, StringComparer.Ordinal)) is not { } folder)
            return null;
        var path = Path.Combine(folder, id + ".yaml");
        var written = File.GetLastWriteTimeUtc(path);
        if (read.TryGetValue(path, out var known) && known.Written == written)
            return known.Reading;
        var reading = ModelReader.ReadFile(path);
        read[path] = (written, reading);
        return reading;
    }

    private ImmutableArray<string> Ids() => [.. folders.SelectMany(f => new ModelShelf(f).Ids()).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
}
