using Ramwright.ServiceModels.Forms;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Reading;

namespace Ramwright.ServiceModels.Keys;

/// <summary>Levels 1 and 2: parts, how they come off, how they go back.</summary>
internal static class PartKeys
{
    public static Section Risk { get; } = new("a risk", "A chance that a way off damages other parts.", 2,
    [
        new("chance", Values.Share, "how often it happens", "2 %") { Required = true },
        new("damages", Values.Parts, "what is then spoilt", "[ram]") { Required = true },
    ]);

    public static Section WayOff { get; } = WorkKeys.WithCautions("a way off", "One way in which a part comes off. Several may exist; the planner chooses.", 2,
    [
        WorkKeys.Needs, WorkKeys.Operation, .. WorkKeys.ToolAndPosture, WorkKeys.Minutes, WorkKeys.Spread,
        new("held-by", new HoldingForm(), "what holds the part", "left-hand thread"),
        new("breakaway", new BreakawayForm(), "torque to loosen it or force to draw it; for one of the group", "85 N·m"),
        new("destroys", Values.Parts, "parts that do not survive this; may name the part itself", "[wiper]"),
        new("disturbs", Values.Parts, "parts that this disturbs: those with `renew: when-disturbed` or `always` are then renewed", "[seal-ram]"),
        new("opens", new ListForm(new WordForm<Opening>("opening")), "what this lets out", "[oil]"),
        new("risk", Values.Group(Risk), "a chance of damage", "{ chance: 2 %, damages: [ram] }"),
        new("out-of-sight", Values.Flag, "the joint cannot be seen from outside; the strip map dashes it", "true") { Default = "false" },
    ]);

    public static Section Fit { get; } = WorkKeys.WithCautions("a fit", "How a part goes back.", 2,
    [
        new("after", Values.Parts, "parts that must be in place first", "[ram, seal-ram]"),
        new("unit", WorkKeys.ReferenceTo(Named.Unit), "the unit that it is made up into on the bench", "ram-unit"),
        WorkKeys.Operation, .. WorkKeys.ToolAndPosture,
        new("minutes", Values.Minutes, "time for the whole group", "3") { Default = "the time of the quickest way off" },
        new("torque", new TorqueForm(), "tightening torque of one, with its tolerance", "85 N·m ± 5 %"),
        new("lubricate", Values.Text("thread grease"), "lubricant and where it goes", "thread grease"),
        new("orientation", Values.Text("lip towards the pressure"), "which way round", "lip towards the pressure"),
        new("prime", Values.Text("the suction bore"), "what is primed right after", "the suction bore, with a syringe"),
        new("prime-minutes", Values.Minutes, "time for that", "1.5") { Default = "the shop's, 1" },
        new("fill", Values.VolumeOrZero, "oil that goes in right after, with the priming where there is one", "12 ml"),
        new("fill-minutes", Values.Minutes, "time for that, where nothing is primed", "1") { Default = "the shop's, 1" },
        new("bleed", Values.Text("three slow strokes by hand"), "how air is let out right after", "three slow strokes by hand"),
        new("bleed-minutes", Values.Minutes, "time for that", "2") { Default = "the shop's, 2" },
    ]);

    public static Section Measure { get; } = new("a measure", "A length to measure and its limits; at least one is given.", 2,
    [
        new("what", Values.Text("rod diameter at mid stroke"), "what is measured", "rod diameter at mid stroke") { Required = true },
        new("least", Values.LengthOrZero, "lower limit", "9.95 mm"),
        new("most", Values.LengthOrZero, "upper limit", "10.05 mm"),
    ]);

    public static Section Inspection { get; } = new("an inspection", "What is looked at when the part is in the hand: reuse or renew, by criterion.", 2,
    [
        new("id", new IdForm(Named.Inspection), "its id, unlike any other inspection's", "ram-scratches") { Required = true },
        new("look", Values.Text("draw a fingernail along the rod"), "what to look at, in the imperative", "draw a fingernail along the rod") { Required = true },
        new("reuse", Values.Text("the nail does not catch"), "when it may be used again", "the nail does not catch") { Required = true },
        new("measure", Values.Group(Measure), "what is measured, where it is a figure", "{ what: rod diameter, least: 9.95 mm }"),
        new("minutes", Values.Minutes, "time for it", "1") { Default = "0.5" },
        new("chance-bad", Values.Share, "chance of a bad outcome; feeds the on-condition part of a quote", "8 %"),
        new("renews", Values.Parts, "parts renewed on a bad outcome", "[ram]") { Default = "the part itself" },
        new("adds", Values.Parts, "parts that must come off too on a bad outcome", "[guide-bush]"),
    ]);

    public static Section Place { get; } = new("a place", "Where the strip map draws the part. Without it the map chooses from what blocks what.", 2,
    [
        new("from", Values.LengthOrZero, "start along the tool's axis, from its rear end", "40 mm") { Required = true },
        new("to", Values.Length, "end along the tool's axis", "88 mm") { Required = true },
        new("inner", Values.LengthOrZero, "inner radius", "20 mm") { Default = "0 mm" },
        new("outer", Values.Length, "outer radius", "31 mm") { Required = true },
        new("offset", Values.AnyLength, "distance of its own axis from the tool's; positive is up", "0 mm") { Default = "0 mm" },
        new("outline", Values.Word<Outline>("outline"), "how it is drawn", "turned") { Default = "`turned`" },
    ]);

    public static Section Lifetime { get; } = new("a lifetime", "Weibull prior for the part's life in service.", 1,
    [
        new("shape", Values.Number(0.1, 20), "shape; 1 is a constant hazard, above 1 it wears out", "1.6") { Required = true },
        new("life", Values.Years, "characteristic life, by which 63.2 % have failed", "8 years") { Required = true },
    ]);

    public static Section Part { get; } = new("a part", "A part, or one group of identical parts with a count.", 1,
    [
        new("name", Values.Text("cap nut"), "as a technician reads it", "cap nut") { Default = "the id in words" },
        new("number", Values.Text("C85-3107"), "the number it is ordered by", "C85-3107") { Default = "the maker does not sell it" },
        new("revision", Values.Text("B"), "its revision", "B"),
        new("count", Values.Count, "how many identical ones this entry stands for", "4") { Default = "1" },
        new("material", Values.Text("NBR"), "elastomer or plastic by its ISO 1629 or ISO 1043 code, other material in words", "NBR"),
        new("size", new SealSizeForm(), "size of an O-ring", "ISO3601-219"),
        new("renew", Values.Word<RenewalRule>("renewal rule"), "when it is renewed: as its inspection says; when it comes off or is disturbed; besides as soon as work [lays it open](#how-a-plan-is-priced); never by rule", "when-disturbed") { Default = "`on-condition`" },
        new("price", Values.Money, "price of one", "12.40 EUR"),
        new("shelf-life", Values.Years, "how long it keeps in store from cure", "7 years"),
        new("fastener", Values.Flag, "it is a fastener", "true") { Default = "false" },
        new("note", Values.Text("two makes are about"), "anything else", "two makes are about"),
        new("ways-off", Values.GroupsOf(WayOff), "how it comes off; none: it never comes off by itself", "[ { needs: [head], minutes: 2.5 } ]"),
        new("fit", Values.Group(Fit), "how it goes back", "{ after: [ram], torque: 85 N·m ± 5 % }"),
        new("inspections", Values.GroupsOf(Inspection), "what is looked at when it is in the hand", "[ { id: ram-scratches, look: draw a nail along it, reuse: it does not catch } ]"),
        new("place", Values.Group(Place), "where the strip map draws it", "{ from: 40 mm, to: 88 mm, outer: 31 mm }"),
        new("lifetime", Values.Group(Lifetime), "prior for its life", "{ shape: 1.6, life: 8 years }"),
    ]);
}
