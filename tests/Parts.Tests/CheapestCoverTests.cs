using CsCheck;
using Ramwright.ServiceModels.Model;
using static Ramwright.Parts.Tests.Shop;

namespace Ramwright.Parts.Tests;

/// <summary>Covers by kits and loose parts. Parts and prices are invented.</summary>
public sealed class CheapestCoverTests
{
    private static readonly Part[] s_seals = [Part("rod-seal", "S-1", 9.50m), Part("ram-seal", "S-2", 14m, 2), Part("wiper", "S-3", 6m), Part("back-up-ring", null, null)];

    [Fact]
    public void Loose_parts_while_they_are_cheaper_and_the_kit_once_it_is()
    {
        var model = Model(s_seals, Kit("seal-kit", 31m, ("rod-seal", 1), ("ram-seal", 2), ("wiper", 1)));
        Assert.Equal("1 x rod-seal, 1 x wiper", CheapestCover.Of(model, model.Need(("rod-seal", 1), ("wiper", 1))).Words());
        var cover = CheapestCover.Of(model, model.Need(("rod-seal", 1), ("ram-seal", 2)));
        Assert.Equal(("1 x seal-kit", "1 x wiper", Eur(31)), (cover.Words(), cover.LeftOver.Words(), cover.Price));
        Assert.True(cover.ProvenOptimal);
        Assert.Equal(Eur(0), cover.Gap);
    }

    [Fact]
    public void At_equal_price_fewer_pieces_and_then_the_models_order()
    {
        var model = Model(s_seals, Kit("big-kit", 15.50m, ("rod-seal", 1), ("wiper", 1)), Kit("same-kit", 15.50m, ("rod-seal", 1), ("wiper", 1)));
        Assert.Equal("1 x big-kit", CheapestCover.Of(model, model.Need(("rod-seal", 1), ("wiper", 1))).Words());
    }

    [Fact]
    public void What_does_not_fit_is_never_counted_and_is_named()
    {
        var kit = Kit("seal-kit", 5m, ("wiper", 1)) with { Unfit = [new("rod seal of the older body", new("rod-seal"), 1, "too thick for this gland")] };
        var model = Model(s_seals, kit);
        var cover = CheapestCover.Of(model, model.Need(("rod-seal", 1), ("wiper", 2)));
        Assert.Equal("2 x seal-kit, 1 x rod-seal", cover.Words());
        Assert.Equal(2, Assert.Single(cover.DoNotUse).Count);
    }

    [Fact]
    public void A_part_without_a_price_comes_from_a_kit_or_is_asked_for()
    {
        var without = Model(s_seals);
        Assert.Equal("back-up-ring", Assert.Single(CheapestCover.Of(without, without.Need(("back-up-ring", 2))).Unpriced).Part.Value);
        var with = Model(s_seals, Kit("ring-kit", 40m, ("back-up-ring", 2)));
        var cover = CheapestCover.Of(with, with.Need(("back-up-ring", 3)));
        Assert.Equal(("2 x ring-kit", "1 x back-up-ring"), (cover.Words(), cover.LeftOver.Words()));
        Assert.Empty(cover.Unpriced);
    }

    [Fact]
    public void Prices_of_another_currency_and_superseded_kits_are_left_alone()
    {
        var old = Kit("old-kit", 1m, ("rod-seal", 1));
        var model = Model([.. s_seals, Part("plug", "P-1", null) with { Price = new(3, "GBP") }], old, Kit("new-kit", 8m, ("rod-seal", 1))) with { Supersessions = [new("K-old-kit", "K-new-kit", null)] };
        var cover = CheapestCover.Of(model, model.Need(("rod-seal", 1), ("plug", 1)), new() { Currency = "EUR" });
        Assert.Equal("1 x new-kit", cover.Words());
        Assert.Equal("plug", Assert.Single(cover.Unpriced).Part.Value);
    }

    [Fact]
    public void Parts_under_one_valid_number_stand_for_each_other()
    {
        var model = Model([Part("front-ring", "OLD", 4m), Part("rear-ring", "NEW", 4m)], Kit("kit", 5m, ("rear-ring", 2))) with { Supersessions = [new("OLD", "NEW", null)] };
        var cover = CheapestCover.Of(model, model.Need(("front-ring", 1), ("rear-ring", 1)));
        Assert.Equal(("1 x kit", ""), (cover.Words(), cover.LeftOver.Words()));
    }

    [Fact]
    public void Nothing_needed_costs_nothing()
    {
        var cover = CheapestCover.Of(Model(s_seals), []);
        Assert.Equal((0m, true, 0), (cover.Price.Amount, cover.ProvenOptimal, cover.Lines.Length));
    }

    [Fact]
    public void Past_its_limit_the_search_gives_a_cover_and_how_far_it_may_be_off()
    {
        var model = Model(Enumerable.Range(0, 12).Select(i => Part($"p{i}", $"N{i}", null)),
            [.. Enumerable.Range(0, 12).Select(i => Kit($"k{i}", 10m, ($"p{i}", 1), ($"p{(i + 1) % 12}", 1), ($"p{(i + 5) % 12}", 1)))]);
        var need = model.Need([.. Enumerable.Range(0, 12).Select(i => ($"p{i}", 2 + i % 3))]);
        var cut = CheapestCover.Of(model, need, new() { NodeLimit = 1 });
        var full = CheapestCover.Of(model, need);
        Assert.True(full.ProvenOptimal);
        Assert.True(full.Price.Amount <= cut.Price.Amount && cut.Price.Amount - cut.Gap.Amount <= full.Price.Amount);
    }

    [Fact]
    public void Huge_counts_and_prices_are_bounded()
    {
        var model = Model([Part("a", "A", 999_999_999.99m), Part("b", "B", 0.01m)], Kit("k", 1_000_000_000m, ("a", 1), ("b", 3)));
        var cover = CheapestCover.Of(model, model.Need(("a", 1_000_000), ("b", 1_000_000)));
        Assert.Equal(1_000_000, cover.Lines.Single(l => l.Part?.Value == "a" || l.Kit is not null).Count);
    }

    [Fact]
    public void Never_loses_to_trying_every_combination()
    {
        var content = Gen.Int[0, 3].Array[4];
        var kit = Gen.Select(Gen.Int[0, 2_000], content);
        Gen.Select(Gen.Int[0, 4].Array[4], Gen.Int[-300, 900].Array[4], kit.Array[0, 4]).ForAll((need, loose, kits) =>
        {
            var model = Model([.. loose.Select((p, i) => Part($"p{i}", $"N{i}", p < 0 ? null : p / 100m))],
                [.. kits.Select((k, j) => Kit($"k{j}", k.Item1 / 100m, [.. k.Item2.Select((n, i) => ($"p{i}", n)).Where(c => c.n > 0)]))]);
            var cover = CheapestCover.Of(model, model.Need([.. need.Select((n, i) => ($"p{i}", n)).Where(c => c.n > 0)]));
            var priced = need.Select((n, i) => loose[i] >= 0 || kits.Any(k => k.Item2[i] > 0) ? n : 0).ToArray();
            var (cost, pieces) = BruteForce(priced, loose, kits, 0);
            Assert.True(cover.ProvenOptimal);
            Assert.Equal((cost, pieces), ((int)(cover.Price.Amount * 100), cover.Lines.Sum(l => l.Count)));
            for (var i = 0; i < 4; i++)
            {
                var got = cover.Lines.Sum(l => l.Count * (l.Part?.Value == $"p{i}" ? 1 : l.Kit is { } k ? kits[k.Value[1] - '0'].Item2[i] : 0));
                var left = cover.LeftOver.Where(k => k.Part.Value == $"p{i}").Sum(k => k.Count);
                Assert.Equal(priced[i], got - left);
            }
        }, iter: 3_000);
    }

    /// <summary>Every number of every kit from none to the largest need; the rest loose.</summary>
    private static (int Cost, int Pieces) BruteForce(int[] need, int[] loose, (int Price, int[] Gives)[] kits, int from)
    {
        if (from == kits.Length)
        {
            return need.Where((n, i) => n > 0 && loose[i] < 0).Any() ? (int.MaxValue / 2, 0) : (need.Select((n, i) => Math.Max(0, n) * Math.Max(0, loose[i])).Sum(), need.Sum(n => Math.Max(0, n)));
        }
        var best = (Cost: int.MaxValue, Pieces: int.MaxValue);
        for (var n = 0; n <= 4; n++)
        {
            var rest = BruteForce([.. need.Select((w, i) => w - n * kits[from].Gives[i])], loose, kits, from + 1);
            var here = (Cost: rest.Cost + n * kits[from].Price, Pieces: rest.Pieces + n);
            if (here.Cost < best.Cost || (here.Cost == best.Cost && here.Pieces < best.Pieces))
                best = here;
        }
        return best;
    }
}
