using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>The one currency in which a model's prices stand; EUR where it has none.</summary>
internal static class ModelCurrency
{
    public static string Of(ServiceModel model) => Prices(model).FirstOrDefault()?.Currency ?? "EUR";

    private static IEnumerable<Money?> Prices(ServiceModel model) =>
        model.Parts.Select(p => p.Price).Concat(model.Kits.Select(k => k.Price)).Append(model.Fluid?.PricePerLitre).Where(p => p is not null);
}
