using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>Writes a cover from the pieces taken of each offer.</summary>
internal static class CoverWriter
{
    public static Cover Write(ServiceModel model, Market market, ImmutableArray<int> take, decimal gap)
    {
        var bought = market.Offers.Zip(take, (offer, count) => (offer, count)).Where(b => b.count > 0).ToList();
        var lines = bought.Select(b => Line(model, market, b.offer, b.count)).ToImmutableArray();
        var kits = bought.Where(b => b.offer.Kit is not null).Select(b => (Kit: b.offer.Kit!, b.count)).ToList();
        return new()
        {
            Lines = lines,
            Price = lines.Aggregate(Money.Zero(market.Currency), (sum, line) => sum + line.Price),
            ProvenOptimal = gap == 0,
            Gap = new(gap, market.Currency),
            Unpriced = market.Unpriced,
            LeftOver = LeftOver(model, market, kits, bought.Where(b => b.offer.Loose is not null).ToDictionary(b => b.offer.Loose!.Key, b => b.count, StringComparer.Ordinal)),
            DoNotUse = [.. kits.SelectMany(k => k.Kit.Unfit.Select(u => u with { Count = u.Count * k.count }))],
        };
    }

    private static CoverLine Line(ServiceModel model, Market market, Offer offer, int count)
    {
        var price = new Money(offer.UnitPrice, market.Currency);
        return offer.Kit is { } kit
            ? new(kit.Id, null, kit.Name, ValidNumber.Of(model, kit.Number), count, price)
            : new(null, offer.Loose!.First.Part, offer.Loose.First.Name, offer.Loose.First.Number, count, price);
    }

    private static ImmutableArray<KitItem> LeftOver(ServiceModel model, Market market, List<(Kit Kit, int Count)> kits, Dictionary<string, int> loose)
    {
        var wanted = market.Articles.ToDictionary(a => a.Key, a => a.Count - loose.GetValueOrDefault(a.Key), StringComparer.Ordinal);
        var left = ImmutableArray.CreateBuilder<KitItem>();
        foreach (var group in kits.SelectMany(k => k.Kit.Contents.Where(i => i.Count > 0).Select(i => i with { Count = i.Count * k.Count })).GroupBy(i => i.Part))
        {
            var key = Market.KeyOf(group.Key, ValidNumber.Of(model, model.FindPart(group.Key)?.Number));
            var count = group.Sum(i => i.Count);
            var used = Math.Clamp(wanted.GetValueOrDefault(key), 0, count);
            wanted[key] = wanted.GetValueOrDefault(key) - used;
            if (count > used)
                left.Add(new(group.Key, count - used));
        }
        return left.ToImmutable();
    }
}
