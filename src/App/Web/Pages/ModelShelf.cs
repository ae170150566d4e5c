using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Web.Pages;

/// <summary>A service model on the shelf.</summary>
public sealed record ShelvedModel(ServiceModel Model, int Level);

/// <summary>The service models of the house.</summary>
public sealed class ModelShelf(IEnumerable<ShelvedModel> models)
{
    public ImmutableArray<ShelvedModel> All { get; } = [.. models.OrderBy(m => m.Model.Tool.Id, StringComparer.Ordinal)];

    public ShelvedModel? Find(string id) => All.FirstOrDefault(m => m.Model.Tool.Id == id);
}
