using System.Collections.Immutable;
using Ramwright.Parts.Covering;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>The cheapest way to buy what is needed.</summary>
public static class CheapestCover
{
    /// <summary>Covers a need by kits (any number of each) and loose parts, at the least price; at equal price by fewer pieces.</summary>
    /// <remarks>
    /// Parts with the same valid number stand for each other. Contents that do not fit are never counted. A kit that another kit of the
    /// model supersedes is not bought. What no usable kit holds and what has no price (none, below zero, above a thousand million,
    /// or in another currency) comes back as <see cref="Cover.Unpriced"/>. Prices count to 0.0001.
    /// </remarks>
    public static Cover Of(ServiceModel model, ImmutableArray<NeedLine> needs, CoverOptions? options = null)
    {
        options ??= new();
        var currency = options.Currency ?? FirstCurrency(model, needs);
        var market = Market.Of(model, needs, currency);
        if (market.Articles.IsEmpty)
            return CoverWriter.Write(model, market, [], gap: 0);
        var (problem, units) = Problem(market);
        var solution = CoverSearch.Solve(problem, options.NodeLimit);
        var gap = Math.Max(0, solution.Cost - solution.LowerBound) / units;
        return CoverWriter.Write(model, market, solution.Take, gap);
    }

    /// <summary>The covering problem in whole units of price, pieces bought as the last digits; and how many units a unit of currency has.</summary>
    private static (CoverProblem Problem, decimal Units) Problem(Market market)
    {
        var need = market.Articles.Select(a => a.Count).ToImmutableArray();
        var pieces = need.Sum(n => (decimal)n);
        var dearest = Math.Max(0.01m, market.Offers.Max(o => o.UnitPrice));
        // Hundredths or finer as the prices need it, as long as the sums stay exact; then the digits for the pieces, if there is room.
        var scale = market.Offers.All(o => decimal.Round(o.UnitPrice, 2) == o.UnitPrice) ? 100m : 10_000m;
        var room = (decimal)CoverProblem.LargestExact / (dearest * scale * pieces);
        while (room < 1)
            (scale, room) = (scale / 10, room * 10);
        var step = room > pieces + 2 ? pieces + 1 : 1;
        var columns = market.Offers.Select(o => new CoverColumn((long)(decimal.Round(o.UnitPrice * scale) * step) + (step > 1 ? 1 : 0), o.Contents));
        return (new(need, [.. columns]), scale * step);
    }

    private static string FirstCurrency(ServiceModel model, ImmutableArray<NeedLine> needs) =>
        needs.Select(n => n.UnitPrice).Concat(model.Kits.Select(k => k.Price)).FirstOrDefault(p => p is not null)?.Currency ?? "EUR";
}
