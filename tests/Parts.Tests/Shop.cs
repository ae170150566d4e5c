using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Parts.Tests;

/// <summary>Builds small invented models.</summary>
internal static class Shop
{
    public static Money Eur(decimal amount) => new(amount, "EUR");

    public static Part Part(string id, string? number, decimal? price, int count = 1) =>
        new() { Id = new(id), Name = id.Replace('-', ' '), Number = number, Count = count, Price = price is { } p ? Eur(p) : null };

    public static Kit Kit(string id, decimal? price, params (string Part, int Count)[] contents) =>
        new(new(id), id.Replace('-', ' '), "K-" + id, price is { } p ? Eur(p) : null) { Contents = [.. contents.Select(c => new KitItem(new(c.Part), c.Count))] };

    public static ServiceModel Model(IEnumerable<Part> parts, params Kit[] kits) => new()
    {
        Tool = new("corrie-x", "Corrie X", "Corrie", ToolKind.Compression),
        Limits = new()
        {
            Pressure = new(Pressure.FromBar(679), Pressure.FromBar(721)),
            Nominal = Pressure.FromBar(700),
            Maximum = Pressure.FromBar(735),
            ProofRuns = 12,
            Rest = TimeSpan.FromSeconds(40),
        },
        Parts = [.. parts],
        Kits = [.. kits],
        Fingerprint = "0",
    };

    public static ImmutableArray<NeedLine> Need(this ServiceModel model, params (string Part, int Count)[] counts) => PartsNeed.Of(model, counts.ToDictionary(c => new NodeId(c.Part), c => c.Count));

    /// <summary>A cover as <c>2 x seal-kit, 1 x o-ring</c>.</summary>
    public static string Words(this Cover cover) => string.Join(", ", cover.Lines.Select(l => $"{l.Count} x {l.Kit?.Value ?? l.Part!.Value.Value}"));

    public static string Words(this IEnumerable<KitItem> items) => string.Join(", ", items.Select(i => $"{i.Count} x {i.Part.Value}"));
}
