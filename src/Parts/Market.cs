using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Parts.Covering;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts;

/// <summary>Something needed under one valid number: all need lines that it serves.</summary>
internal sealed record Article(string Key, NeedLine First, int Count);

/// <summary>Something that can be bought: a kit or a loose part, and which articles (by index) a piece gives.</summary>
internal sealed record Offer(Kit? Kit, Article? Loose, decimal UnitPrice, ImmutableArray<Gives> Contents);

/// <summary>What is needed and what is on offer for it in one currency.</summary>
internal sealed record Market(string Currency, ImmutableArray<Article> Articles, ImmutableArray<Offer> Offers, ImmutableArray<NeedLine> Unpriced)
{
    private const decimal Dearest = 1_000_000_000m;

    public static Market Of(ServiceModel model, ImmutableArray<NeedLine> needs, string currency)
    {
        var wanted = needs.Where(n => n.Count > 0).GroupBy(n => KeyOf(n.Part, n.Number), StringComparer.Ordinal)
            .Select(g => (Article: new Article(g.Key, g.First(), g.Sum(n => n.Count)), Price: g.Select(n => Usable(n.UnitPrice, currency)).Min(), Lines: g.ToList())).ToList();
        var kits = model.Kits.Where(k => Usable(k.Price, currency) is not null && !IsSuperseded(model, k)).Select(k => (Kit: k, Gives: Contents(model, k))).ToList();
        var articles = wanted.Where(w => w.Price is not null || kits.Exists(k => k.Gives.ContainsKey(w.Article.Key))).ToList();
        var index = articles.Select((w, i) => (w.Article.Key, i)).ToDictionary(x => x.Key, x => x.i, StringComparer.Ordinal);

        var offers = kits
            .Select(k => new Offer(k.Kit, null, k.Kit.Price!.Value.Amount, [.. k.Gives.Where(g => index.ContainsKey(g.Key)).Select(g => new Gives(index[g.Key], g.Value)).OrderBy(g => g.Row)]))
            .Where(o => !o.Contents.IsEmpty)
            .Concat(articles.Select((w, i) => (w, i)).Where(x => x.w.Price is not null).Select(x => new Offer(null, x.w.Article, x.w.Price!.Value, [new(x.i, 1)])));
        return new(currency, [.. articles.Select(w => w.Article)], [.. offers], [.. wanted.Except(articles).SelectMany(w => w.Lines)]);
    }

    /// <summary>Parts with one valid number are one article; a part without a number is one by itself.</summary>
    public static string KeyOf(NodeId part, string? validNumber) => validNumber is null ? "part " + part.Value : "number " + validNumber;

    /// <summary>What a kit gives by article; what does not fit is not among it.</summary>
    public static Dictionary<string, int> Contents(ServiceModel model, Kit kit)
    {
        var gives = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var item in kit.Contents.Where(i => i.Count > 0))
        {
            var key = KeyOf(item.Part, ValidNumber.Of(model, model.FindPart(item.Part)?.Number));
            gives[key] = gives.GetValueOrDefault(key) + item.Count;
        }
        return gives;
    }

    private static decimal? Usable(Money? price, string currency) => price is { Amount: >= 0 and <= Dearest } p && p.Currency == currency ? p.Amount : null;

    private static bool IsSuperseded(ServiceModel model, Kit kit) => ValidNumber.Of(model, kit.Number) is var valid && valid != kit.Number && model.Kits.Any(k => k.Number == valid);
}
