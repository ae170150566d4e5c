using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;
using static System.FormattableString;

namespace Ramwright.ServiceModels.Lint;

/// <summary>Numbers that go round in circles, units of nothing, prices in two currencies.</summary>
internal static class SupplyLint
{
    public static void Look(Draft draft, MistakeList mistakes)
    {
        LookAtSupersessions(draft, mistakes);
        LookAtCurrencies(draft, mistakes);
        var used = draft.Model.Parts.Select(p => p.Fit?.Unit).ToHashSet();
        foreach (var unit in draft.Model.Units.Where(u => !used.Contains(u.Id)))
            mistakes.Add(draft.KeyAt("units", unit.Id.Value), $"no part is made up into the unit '{unit.Id}'", $"name it in the fit of its parts (unit: {unit.Id}), or take the unit away", "empty-unit");
    }

    private static void LookAtSupersessions(Draft draft, MistakeList mistakes)
    {
        var list = draft.Model.Supersessions;
        var next = new Dictionary<string, (string New, int Index)>(StringComparer.Ordinal);
        for (var i = 0; i < list.Length; i++)
            if (!next.TryAdd(list[i].Old, (list[i].New, i)))
                mistakes.Add(draft.ValueAt("supersessions", i, "old"), $"{list[i].Old} is superseded a second time", Invariant($"keep one successor; the first is in line {draft.LineOf("supersessions", next[list[i].Old].Index, "old")}"), "superseded-twice");
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var start in list.Select(s => s.Old))
        {
            var path = new List<string>();
            var here = start;
            while (next.ContainsKey(here) && seen.Add(here))
            {
                path.Add(here);
                here = next[here].New;
            }

            if (path.IndexOf(here) is >= 0 and var entry)
                mistakes.Add(draft.ValueAt("supersessions", next[here].Index, "old"), $"supersession goes round in a circle: {string.Join(" to ", path.Skip(entry).Append(here))}", "take the entry away that leads back; the number sold today has no successor", "supersession-loop");
        }
    }

    private static void LookAtCurrencies(Draft draft, MistakeList mistakes)
    {
        var model = draft.Model;
        var prices = new List<(Money Price, object[] Path)>();
        if (model.Fluid?.PricePerLitre is { } oil)
            prices.Add((oil, ["fluid", "price"]));
        prices.AddRange(model.Tools.OfType<ShopTool.Bought>().Where(t => t.Price is not null).Select(t => (t.Price!.Value, (object[])["tools", t.Id.Value, "price"])));
        prices.AddRange(model.Parts.Where(p => p.Price is not null).Select(p => (p.Price!.Value, (object[])["parts", p.Id.Value, "price"])));
        prices.AddRange(model.Kits.Where(k => k.Price is not null).Select(k => (k.Price!.Value, (object[])["kits", k.Id.Value, "price"])));
        foreach (var (price, path) in prices.Skip(1))
            if (price.Currency != prices[0].Price.Currency)
                mistakes.Add(draft.ValueAt(path), Invariant($"this price is in {price.Currency}, the one in line {draft.LineOf(prices[0].Path)} in {prices[0].Price.Currency}"), "write all prices of a model in one currency; amounts of two do not add", "two-currencies");
    }
}
