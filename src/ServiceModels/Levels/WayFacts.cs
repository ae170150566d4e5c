using System.Collections.Immutable;
using System.Globalization;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Levels;

/// <summary>Facts of level 2 that are not there.</summary>
internal static class WayFacts
{
    public static IEnumerable<MissingFact> Missing(ServiceModel model)
    {
        if (model.Parts.All(p => p.WaysOff.IsEmpty))
        {
            yield return new(2, Needed: true, "ways off", [.. model.Parts.Select(p => p.Id.Value)], "Plan, Strip, Rebuild: nothing says how a part comes off", 2 * PartFacts.Station + model.Parts.Length);
            yield break;
        }

        foreach (var fact in (MissingFact?[])
        [
            WithoutWay(model),
            Of(model.Parts.Where(p => !p.WaysOff.IsEmpty && p.Fit is null), "fit", "the rebuild sheet: order, torque, lubricant; until then the strip order is turned round", 3),
            Of(model.Parts.Where(p => p.Fit is { Torque: null } && p.WaysOff.Any(w => w.HeldBy?.Kind == HoldKind.Thread)), "tightening torque", "the torque on the rebuild sheet", 2),
            Of(model.Parts.Where(HasUnknownBreakaway), "breakaway torque or force", "the strength check of tools", 1),
            Of(model.Parts.Where(p => p.Renew == RenewalRule.OnCondition && !p.IsFastener && p.Inspections.IsEmpty && !p.WaysOff.IsEmpty), "inspection", "reuse or renew by criterion, and the on-condition part of a quote", 1),
        ])
            if (fact is not null)
                yield return fact;
        if (!model.States.Any(s => s.Isolates))
            yield return new(2, Needed: true, "a state that isolates the tool (battery out, pressure released)", [], "Strip: its first sign-off makes the tool safe", PartFacts.Station);
        if (model.Tools.OfType<ShopTool.Made>().Where(t => t.Dimensions.IsEmpty).Select(t => t.Id.Value).ToImmutableArray() is { IsEmpty: false } bare)
            yield return new(2, Needed: false, "dimensions", bare, "sheets to make the tool from, and its strength", 2 * bare.Length);
    }

    private static MissingFact? WithoutWay(ServiceModel model)
    {
        ImmutableArray<string> of = [.. model.Parts.Where(p => p.WaysOff.IsEmpty && p.Renew != RenewalRule.Never).Select(p => p.Id.Value)];
        if (of.IsEmpty)
            return null;
        var blocked = of.Length + model.Remedies.Count(r => r.Frees.Concat(r.Renews).Any(p => of.Contains(p.Value, StringComparer.Ordinal)));
        return new(2, Needed: true, "ways off", of, string.Create(CultureInfo.InvariantCulture, $"Plan for {blocked} parts and remedies; a part that stays for good is marked renew: never"), PartFacts.Station + 5 * blocked);
    }

    private static bool HasUnknownBreakaway(Part part) => part.WaysOff.Any(w => w.HeldBy?.Kind is HoldKind.Thread or HoldKind.PressFit && w.Breakaway is null && w.BreakawayForce is null);

    private static MissingFact? Of(IEnumerable<Part> parts, string fact, string unlocks, int each)
    {
        ImmutableArray<string> of = [.. parts.Select(p => p.Id.Value)];
        return of.IsEmpty ? null : new(2, Needed: false, fact, of, unlocks, each * of.Length);
    }
}
