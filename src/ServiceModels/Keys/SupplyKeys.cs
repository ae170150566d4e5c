using Ramwright.ServiceModels.Forms;
using Ramwright.ServiceModels.Reading;

namespace Ramwright.ServiceModels.Keys;

/// <summary>Level 1: kits and supersession; level 2: units made up beforehand.</summary>
internal static class SupplyKeys
{
    public static Section Unfit { get; } = new("an unfit content", "A content of a kit that must not be used on this tool; it is never counted.", 1,
    [
        new("what", Values.Text("green O-ring 19 x 2.6"), "what lies in the bag", "green O-ring 19 x 2.6") { Required = true },
        new("part", WorkKeys.ReferenceTo(Named.Part), "the part it looks like", "seal-ram"),
        new("count", Values.Count, "how many", "1") { Default = "1" },
        new("why", Values.Text("for the older bore"), "why it does not fit", "for the older bore, 0.4 mm too thin") { Required = true },
    ]);

    public static Section Kit { get; } = new("a kit", "A kit: what in it is for this tool, and what is not.", 1,
    [
        new("name", Values.Text("seal kit"), "as it is called", "seal kit") { Default = "the id in words" },
        new("number", Values.Text("C85-9001"), "the number it is ordered by", "C85-9001") { Required = true },
        new("price", Values.Money, "price of a kit", "48.00 EUR"),
        new("contents", new NumberMapForm(Named.Part, Values.Count), "parts in it and how many of each", "{ seal-ram: 2, wiper: 1 }") { Required = true },
        new("unfit", Values.GroupsOf(Unfit), "contents that must not be used", "[ { what: green O-ring, why: for the older bore } ]"),
    ]);

    public static Section Supersession { get; } = new("a supersession", "One number replaced by another. Chains are followed.", 1,
    [
        new("old", Values.Text("C85-3107"), "the number that is no longer sold", "C85-3107") { Required = true },
        new("new", Values.Text("C85-3107A"), "the number sold instead", "C85-3107A") { Required = true },
        new("why", Values.Text("longer thread"), "what changed", "longer thread"),
    ]);

    public static Section Unit { get; } = WorkKeys.WithCautions("a unit", "Parts made up on the bench, then fitted as one; each names it in its fit.", 2,
    [
        new("name", Values.Text("ram with seals"), "as a technician reads it", "ram with seals") { Default = "the id in words" },
        new("after", Values.Parts, "parts that must be in place in the tool before it goes in", "[cylinder]"),
        new("minutes", Values.Minutes, "time to fit the made-up unit", "1.5") { Default = "0" },
        .. WorkKeys.ToolAndPosture, WorkKeys.Operation,
    ]);
}
