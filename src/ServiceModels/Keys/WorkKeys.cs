using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Reading;

namespace Ramwright.ServiceModels.Keys;

/// <summary>Keys that every piece of work has: how, with what, how held, how long, and what to beware of.</summary>
internal static class WorkKeys
{
    public static Section Caution { get; } = new("a caution", "What can hurt or spoil. It is said before the step it guards.", 2,
    [
        new("level", Values.Word<CautionLevel>("level of a caution"), "how serious it is, in the signal words of ISO 3864-2 and ANSI Z535", "warning") { Required = true },
        new("hazard", Values.Text("stored-spring-energy"), "a hazard word (see the list of hazards); it chooses the sign", "stored-spring-energy") { Required = true },
        new("text", Values.Text("hold the cap"), "what happens, and what to do against it", "\"the spring pushes the ram out; hold the cap\"") { Required = true },
    ]);

    /// <summary>One caution or several.</summary>
    public static ImmutableArray<Key> Cautions { get; } =
    [
        new("caution", Values.Group(Caution), "one caution", "{ level: warning, hazard: stored-spring-energy, text: \"hold the cap\" }"),
        new("cautions", Values.GroupsOf(Caution), "several cautions, in the order in which they are said", "[ { level: notice, hazard: hot-surface, text: \"let it cool\" } ]"),
    ];

    public static ImmutableArray<Key> ToolAndPosture { get; } =
    [
        new("tool", Values.Tool, "the shop tool it takes, listed under `tools`", "hex-5"),
        new("posture", Values.Posture, "how the work is held", "upright-in-vice"),
    ];

    public static Key Needs { get; } = new("needs", Values.Nodes, "parts that must be off and states that must be reached first", "[battery-removed, head]");

    public static Key Operation { get; } = new("operation", Values.Text("unscrew it"), "what is done, in the imperative, where the plain verb would not say it", "drift the pin out from below");

    public static Key Minutes { get; } = new("minutes", Values.Minutes, "time for the whole group, without fetching the tool or turning the work", "2.5") { Required = true };

    public static Key Spread { get; } = new("spread", Values.Share, "relative standard deviation of the minutes", "25 %") { Default = "the shop's" };

    /// <summary>A section made of its own keys with the cautions at the end.</summary>
    public static Section WithCautions(string name, string meaning, int level, params IEnumerable<Key> keys) => new(name, meaning, level, [.. keys, .. Cautions]);

    public static Forms.KeyForm ReferenceTo(Named kind) => new Forms.ReferenceForm(kind);
}
