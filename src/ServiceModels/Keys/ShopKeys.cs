using Ramwright.ServiceModels.Forms;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Reading;

namespace Ramwright.ServiceModels.Keys;

/// <summary>Level 2: states of the tool, shop tools, postures.</summary>
internal static class ShopKeys
{
    public static Section Reach { get; } = WorkKeys.WithCautions("reaching a state", "The operation that brings the tool into a state.", 2,
    [
        new("operation", Values.Text("take the pack off"), "what is done, in the imperative", "take the pack off") { Required = true },
        WorkKeys.Needs, .. WorkKeys.ToolAndPosture, WorkKeys.Minutes, WorkKeys.Spread,
    ]);

    public static Section Undo { get; } = WorkKeys.WithCautions("undoing a state", "What ends the state when the tool is rebuilt.", 2,
    [
        new("operation", Values.Text("fill to the mark"), "what is done, in the imperative", "fill with the funnel to the lower mark") { Required = true },
        new("kind", Values.Word<UndoKind>("kind of undoing"), "what kind of work it is", "fill") { Default = "`other`" },
        new("after", Values.Parts, "parts that must be in place first", "[cap-nut, strainer]"),
        new("before", Values.Parts, "parts that are fitted only afterwards", "[fill-plug]"),
        .. WorkKeys.ToolAndPosture,
        new("minutes", Values.Minutes, "time for it", "6") { Required = true },
        new("volume", Values.VolumeOrZero, "oil that goes in", "95 ml"),
    ]);

    public static Section State { get; } = new("a state", "A condition that work needs, such as battery removed or oil drained. Within one plan states only grow.", 2,
    [
        new("name", Values.Text("oil drained"), "as a technician reads it", "oil drained") { Default = "the id in words" },
        new("isolates", Values.Flag, "part of making the tool safe: the first sign-off of every job", "true") { Default = "false" },
        new("reach", Values.Group(Reach), "how the state is reached", "{ operation: take the pack off, minutes: 0.3 }") { Default = "the tool arrives in it" },
        new("loses", Values.VolumeOrZero, "oil that is lost on reaching it", "95 ml"),
        new("undo", Values.Group(Undo), "what ends it on rebuild", "{ operation: fill, kind: fill, minutes: 6, volume: 95 ml }") { Default = "nothing is to be done" },
    ]);

    public static Section Bought { get; } = new("a bought tool", "A shop tool off the shelf.", 2,
    [
        ToolKind,
        Name,
        new("price", Values.Money, "price", "3.20 EUR"),
        new("safe-torque", Values.Torque, "the most that may be put on it", "140 N·m"),
        Change,
    ]);

    public static Section Made { get; } = new("a made tool", "A shop tool made here from a sheet, with its dimensions.", 2,
    [
        ToolKind,
        new("shape", Values.Word<MadeShape>("shape of a made tool"), "its shape", "hook-wrench") { Required = true },
        Name,
        new("material", Values.Text("42CrMo4"), "what it is made of", "42CrMo4"),
        new("prongs", Values.Count, "pins, prongs or jaws that share the load", "2") { Default = "1" },
        new("offset-angle", Values.Angle, "angle between an offset wrench and its handle, 0 in line", "90 °"),
        .. MadeDimensions.Keys,
        Change,
    ]);

    public static Section Posture { get; } = new("a posture", "How the work is held. Once this section exists, every posture used is listed.", 2,
    [
        new("name", Values.Text("upright in the vice"), "as a technician reads it", "\"upright in the vice, soft jaws\"") { Default = "the id in words" },
        new("change", Values.Minutes, "minutes to get the work into it", "0.8") { Default = "the shop's" },
    ]);

    public static KeyForm Tools { get; } = new IdMapForm(new ToolForm(Bought, Made), Named.Tool);

    private static Key ToolKind => new("kind", Values.Word<ToolOrigin>("kind of shop tool"), "`bought` or `made`", "bought") { Required = true };

    private static Key Name => new("name", Values.Text("hex key 5 mm"), "as a technician reads it", "hex key 5 mm") { Default = "the id in words" };

    private static Key Change => new("change", Values.Minutes, "minutes to fetch it when another tool was in hand", "0.5") { Default = "the shop's" };
}

/// <summary>Where a shop tool comes from.</summary>
internal enum ToolOrigin
{
    Bought,
    Made,
}
