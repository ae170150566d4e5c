using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;
using static System.FormattableString;

namespace Ramwright.ServiceModels.Lint;

/// <summary>Parts that nothing frees, and ways off or fits that wait for each other so that none can start.</summary>
internal static class ReachLint
{
    private static readonly string[] Numbers = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    public static void Look(Draft draft, MistakeList mistakes, MistakeList notes)
    {
        var model = draft.Model;
        var strip = StripWaits(model);
        var needed = strip.NeededWithoutWay().ToList();
        foreach (var (node, waiting) in needed)
            mistakes.Add(NodeAt(draft, node), $"nothing frees '{node}', and {List([.. waiting.Select(w => Numbered(draft, w))])} cannot come off before it", $"give {node} a way off, or take it out of 'needs'", "nothing-frees");
        LookAtRemedies(draft, mistakes, needed.Select(n => n.Node).ToHashSet(StringComparer.Ordinal));
        foreach (var circle in strip.Circles())
            Circle(draft, mistakes, circle, circle.All(n => model.FindPart(new(n)) is not null) ? "ways off" : "ways", "needs", "take one 'needs' away, or give one of them a second way", "circle");
        foreach (var circle in FitWaits(model).Circles())
            Circle(draft, mistakes, circle, "fits", "goes in after", "take one 'after' away", "fit-circle");
        if (model.Parts.Any(p => !p.WaysOff.IsEmpty))
            foreach (var part in model.Parts.Where(p => p.WaysOff.IsEmpty && p.Renew is RenewalRule.Always or RenewalRule.WhenDisturbed && needed.TrueForAll(n => n.Node != p.Id.Value)))
                notes.Add(NodeAt(draft, part.Id.Value), $"'{part.Id}' is renewed by rule, but nothing takes it off", "give it a way off, or write renew: never", "no-way-off");
    }

    private static Waits StripWaits(ServiceModel model)
    {
        var waits = new Waits();
        foreach (var part in model.Parts)
        {
            waits.AddNode(part.Id.Value);
            foreach (var way in part.WaysOff)
                waits.AddWay(part.Id.Value, way.Needs.Select(n => n.Value));
        }

        foreach (var state in model.States)
            waits.AddWay(state.Id.Value, state.Reach?.Needs.Select(n => n.Value) ?? []);
        return waits;
    }

    /// <summary>Parts, units as '[unit]' and undone states as '(state)': what must be in place before what.</summary>
    private static Waits FitWaits(ServiceModel model)
    {
        var unitOf = model.Parts.Where(p => p.Fit?.Unit is not null).ToDictionary(p => p.Id, p => p.Fit!.Unit!.Value);
        var before = new Dictionary<string, HashSet<string>>(StringComparer.Ordinal);
        foreach (var part in model.Parts)
        {
            var own = unitOf.TryGetValue(part.Id, out var unit);
            if (own)
                Add($"[{unit}]", part.Id.Value);
            foreach (var after in part.Fit?.After ?? [])
            {
                if (own && unitOf.TryGetValue(after, out var other) && other == unit)
                    Add(part.Id.Value, after.Value);
                else
                    Add(own ? $"[{unit}]" : part.Id.Value, InPlace(after));
            }
        }

        foreach (var unit in model.Units)
            foreach (var after in unit.After)
                Add($"[{unit.Id}]", InPlace(after));
        foreach (var state in model.States.Where(s => s.Undo is not null))
        {
            foreach (var after in state.Undo!.After)
                Add($"({state.Id})", InPlace(after));
            foreach (var later in state.Undo.Before)
                Add(InPlace(later), $"({state.Id})");
        }

        var waits = new Waits();
        foreach (var (node, needs) in before)
            waits.AddWay(node, needs);
        return waits;

        string InPlace(NodeId id) => unitOf.TryGetValue(id, out var unit) ? $"[{unit}]" : id.Value;

        void Add(string node, string need) => (before.TryGetValue(node, out var needs) ? needs : before[node] = new(StringComparer.Ordinal)).Add(need);
    }

    private static void LookAtRemedies(Draft draft, MistakeList mistakes, HashSet<string> told)
    {
        var fixedParts = draft.Model.Parts.Where(p => p.WaysOff.IsEmpty).Select(p => p.Id).ToHashSet();
        if (fixedParts.Count == draft.Model.Parts.Length)
            return; // no ways off are known yet
        foreach (var remedy in draft.Model.Remedies)
            foreach (var part in remedy.Frees.Where(p => fixedParts.Contains(p) && told.Add(p.Value)))
                mistakes.Add(NodeAt(draft, part.Value), $"nothing frees '{part}', and the remedy {remedy.Id} (line {draft.LineOf("remedies", remedy.Id.Value)}) takes it off", $"give {part} a way off, or take it out of the remedy", "nothing-frees");
    }

    private static void Circle(Draft draft, MistakeList mistakes, IReadOnlyList<string> circle, string what, string verb, string mend, string code)
    {
        var named = string.Join($" {verb} ", circle.Select(n => Numbered(draft, n)).Append(Plain(circle[0])));
        var headline = circle.Count == 1
            ? $"{Plain(circle[0])} waits for itself, so it can never start"
            : Invariant($"{(circle.Count < Numbers.Length ? Numbers[circle.Count] : circle.Count.ToString(System.Globalization.CultureInfo.InvariantCulture))} {what} wait for each other, so none can start");
        mistakes.Add(NodeAt(draft, circle[0]), headline + "\n" + named, mend, code);
    }

    private static string Plain(string node) => node.Trim('[', ']', '(', ')');

    private static string Numbered(Draft draft, string node) => Invariant($"{Plain(node)} ({NodeAt(draft, node).Line})");

    private static Place NodeAt(Draft draft, string node) => node[0] switch
    {
        '[' => draft.KeyAt("units", Plain(node)),
        '(' => draft.KeyAt("states", Plain(node), "undo"),
        _ => draft.Model.FindPart(new(node)) is null ? draft.KeyAt("states", node) : draft.KeyAt("parts", node),
    };

    private static string List(IReadOnlyList<string> names) => names.Count <= 1 ? string.Concat(names) : $"{string.Join(", ", names.Take(names.Count - 1).Take(8))} and {names[^1]}";
}
