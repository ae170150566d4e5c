using System.Text.Json.Nodes;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Forms;

/// <summary>What holds a part; adhesive may lock a thread besides.</summary>
internal sealed record HoldingForm : ScalarForm
{
    private static readonly (string Words, Holding Holding)[] Known =
    [
        ("right-hand thread", new(HoldKind.Thread, ThreadHand.Right)),
        ("left-hand thread", new(HoldKind.Thread, ThreadHand.Left)),
        ("clamp", new(HoldKind.Clamp)),
        ("press fit", new(HoldKind.PressFit)),
        ("lock screw", new(HoldKind.LockScrew)),
        ("snap", new(HoldKind.Snap)),
        ("adhesive", new(HoldKind.Adhesive)),
        ("pin", new(HoldKind.Pin)),
        ("none", new(HoldKind.None)),
    ];

    public override string Words => $"{string.Join(", ", Known.Select(k => $"`{k.Words}`"))}; `, adhesive` after it where adhesive locks it besides";

    protected override string Example => "left-hand thread";

    public override JsonObject Schema(SchemaBook book) =>
        new() { ["type"] = "string", ["enum"] = new JsonArray([.. Known.SelectMany(k => (JsonNode[])[k.Words, k.Words + ", adhesive"])]) };

    protected override object? ReadText(YamlScalar scalar, ReadContext context)
    {
        const string Locked = "adhesive";
        var parts = scalar.Text.Split(',', 2, StringSplitOptions.TrimEntries);
        var found = Array.Find(Known, k => k.Words == parts[0]);
        if (found.Words is not null && (parts.Length == 1 || parts[1] == Locked))
            return found.Holding with { AdhesiveLocked = parts.Length == 2 };
        var words = Known.Select(k => k.Words).ToList();
        var hand = parts[0] == "thread" ? "say which hand the thread has: right-hand thread or left-hand thread" : null;
        var near = context.Mistakes.Near(parts[0], words);
        context.Add(scalar.At, $"'{scalar.Text}' is nothing that holds a part", hand ?? (near is null || found.Words is not null
            ? $"write one of {string.Join(", ", words)}, with ', adhesive' where adhesive locks it besides" : $"write {near}"), "unknown-word");
        return null;
    }
}
