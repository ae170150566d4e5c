using System.Collections.Immutable;
using Ramwright.ServiceModels.Forms;
using Ramwright.ServiceModels.Reading;

namespace Ramwright.ServiceModels.Keys;

/// <summary>The whole format, from the first line down.</summary>
internal static class ModelKeys
{
    public static Section Root { get; } = new("the model", "One file for one tool family.", 0,
    [
        new("format", new FormatForm(), "format and version of the file", "ramwright/1") { Required = true },
        new("tool", Values.Group(HeadKeys.Tool), "which tool family", "{ id: corrie-85, name: Corrie 85, kind: compression }") { Required = true },
        new("limits", Values.Group(HeadKeys.Limits), "what it must keep", "{ pressure: 679 bar .. 721 bar, maximum: 735 bar, proof-runs: 12 }") { Required = true },
        new("fluid", Values.Group(HeadKeys.Fluid), "the oil", "{ class: HEES, grade: 32, capacity: 180 ml }"),
        new("states", Values.ById(ShopKeys.State, Named.State), "conditions that work needs", "{ battery-removed: { reach: { operation: take the pack off, minutes: 0.3 } } }"),
        new("tools", ShopKeys.Tools, "shop tools, bought and made", "{ hex-5: { kind: bought, name: hex key 5 mm } }"),
        new("postures", Values.ById(ShopKeys.Posture, Named.Posture), "how the work is held", "{ flat: { name: flat on the bench } }"),
        new("parts", Values.ById(PartKeys.Part, Named.Part), "the parts", "{ cap-nut: { name: cap nut, number: C85-3107 } }"),
        new("kits", Values.ById(SupplyKeys.Kit, Named.Kit), "kits of parts", "{ seal-kit: { number: C85-9001, contents: { seal-ram: 2 } } }"),
        new("units", Values.ById(SupplyKeys.Unit, Named.Unit), "units made up on the bench before they go in", "{ ram-unit: { after: [cylinder], minutes: 1.5 } }"),
        new("supersessions", Values.GroupsOf(SupplyKeys.Supersession), "numbers replaced by others", "[ { old: C85-3107, new: C85-3107A } ]"),
        new("behaviour", Values.Group(BehaviourKeys.Behaviour), "data for the stroke model and the relief advisor", "{ memory-depth: 6 }"),
        new("faults", Values.ById(FindKeys.Fault, Named.Fault), "what can be wrong", "{ relief-low: { rate: 4 % } }"),
        new("symptoms", Values.ById(FindKeys.Symptom, Named.Symptom), "what is seen, heard or felt", "{ weak: { group: pressure, causes: { relief-low: 80 % } } }"),
        new("checks", Values.ById(FindKeys.Check, Named.Check), "what can be tried", "{ hold: { minutes: 3, outcomes: { falls: { when-sound: 5 % }, holds: { when-sound: 95 % } } } }"),
        new("remedies", Values.ById(FindKeys.Remedy, Named.Remedy), "what mends", "{ reset-relief: { mends: { relief-low: 95 % } } }"),
    ]);

    /// <summary>Every section once, in the order in which it is met from the top.</summary>
    public static ImmutableArray<Section> Sections()
    {
        var found = new List<Section>();
        Visit(Root);
        return [.. found];

        void Visit(Section section)
        {
            if (found.Contains(section))
                return;
            found.Add(section);
            foreach (var inner in section.Keys.SelectMany(k => SectionsIn(k.Form)))
                Visit(inner);
        }
    }

    private static IEnumerable<Section> SectionsIn(KeyForm form) => form switch
    {
        SectionForm s => [s.Section],
        ListForm l => SectionsIn(l.Item),
        IdMapForm m => SectionsIn(m.Item),
        ToolForm t => [t.Bought, t.Made],
        _ => [],
    };
}
