using System.Text.Json.Nodes;
using Ramwright.ServiceModels.Keys;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Forms;

/// <summary>A shop tool: its kind says which keys it has.</summary>
internal sealed record ToolForm(Section Bought, Section Made) : KeyForm
{
    public override string Words => $"[{Bought.Name}] or [{Made.Name}]";

    public override JsonObject Schema(SchemaBook book) => new()
    {
        ["oneOf"] = new JsonArray(WithKind(Bought, "bought", book), WithKind(Made, "made", book)),
    };

    public override object? Read(YamlNode node, ReadContext context)
    {
        if (node is not YamlMapping mapping)
            return WrongForm(node, context, "a tool", "write { kind: bought, name: hex key 5 mm }");
        var kind = mapping.Find("kind")?.Value as YamlScalar;
        return SectionReader.Read(mapping, kind?.Text == "made" ? Made : Bought, context);
    }

    private static JsonObject WithKind(Section section, string kind, SchemaBook book)
    {
        var schema = SectionSchema.Object(section, book);
        schema["properties"]!["kind"] = new JsonObject { ["const"] = kind };
        return schema;
    }
}
