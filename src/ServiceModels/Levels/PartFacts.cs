using System.Collections.Immutable;
using Ramwright.Seals.Materials;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Levels;

/// <summary>Facts of level 1 that are not there.</summary>
internal static class PartFacts
{
    /// <summary>A fact that a whole station waits for weighs as much as this many entries.</summary>
    public const int Station = 100;

    public static IEnumerable<MissingFact> Missing(ServiceModel model)
    {
        if (model.Parts.IsEmpty)
        {
            yield return new(1, Needed: true, "parts", [], "Price: a quote lists parts by number and price", 3 * Station);
            yield break;
        }

        var renewed = model.Parts.Where(p => p.Renew != RenewalRule.Never).ToList();
        var priced = model.Kits.Where(k => k.Price is not null).SelectMany(k => k.Contents).Select(c => c.Part).ToHashSet();
        var inKit = model.Kits.SelectMany(k => k.Contents).Select(c => c.Part).ToHashSet();
        foreach (var fact in (MissingFact?[])
        [
            Of(renewed.Where(p => p.Number is null && !inKit.Contains(p.Id)), true, "number", "ordering: without a number nothing is ordered", 2),
            Of(renewed.Where(p => p.Price is null && !priced.Contains(p.Id)), true, "price", "Price: a quote cannot name what it costs", 2),
            Of(model.Parts.Where(p => p.Size is not null && p.Material is null), false, "material", "the check of rubber against oil", 1),
            Of(model.Parts.Where(p => p.Material is { } m && Elastomer.Find(m) is not null && p.ShelfLife is null), false, "shelf life", "store dates: first expired, first out", 1),
            Of(model.Kits.Where(k => k.Price is null).Select(k => k.Id.Value), false, "price", "the cheapest cover by kits", 2),
        ])
            if (fact is not null)
                yield return fact;
        if (model.Fluid is null)
            yield return new(1, Needed: false, "fluid", [], "the check of rubber against oil, and oil in the quote", Station / 2);
        else if (model.Fluid.Capacity is null || model.Fluid.PricePerLitre is null)
            yield return new(1, Needed: false, "capacity and price of the fluid", [], "oil in the quote", 5);
    }

    private static MissingFact? Of(IEnumerable<Part> parts, bool needed, string fact, string unlocks, int each) => Of(parts.Select(p => p.Id.Value), needed, fact, unlocks, each);

    private static MissingFact? Of(IEnumerable<string> ids, bool needed, string fact, string unlocks, int each)
    {
        ImmutableArray<string> of = [.. ids];
        return of.IsEmpty ? null : new(1, needed, fact, of, unlocks, (needed ? Station : 0) + each * of.Length);
    }
}
