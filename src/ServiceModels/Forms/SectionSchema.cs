using System.Text.Json.Nodes;
using Ramwright.ServiceModels.Keys;

namespace Ramwright.ServiceModels.Forms;

/// <summary>A section as a definition of a JSON Schema.</summary>
internal static class SectionSchema
{
    /// <summary>A reference to the section's definition, which is made on first use.</summary>
    public static JsonObject Reference(Section section, SchemaBook book)
    {
        var name = section.Name.Replace(' ', '-');
        if (!book.Definitions.ContainsKey(name))
        {
            book.Definitions[name] = new JsonObject(); // stands in while the section is made, should it hold itself
            book.Definitions[name] = Object(section, book);
        }

        return new() { ["$ref"] = $"#/definitions/{name}" };
    }

    /// <summary>The section itself: its keys, which are required, and no others.</summary>
    public static JsonObject Object(Section section, SchemaBook book)
    {
        var properties = new JsonObject();
        foreach (var key in section.Keys)
        {
            var schema = key.Form.Schema(book);
            if (!schema.ContainsKey("$ref")) // in draft-07 nothing counts beside a reference
                schema["description"] = key.Meaning + (schema["description"] is { } more ? $" ({more})" : "");
            properties[key.Name] = schema;
        }

        var result = new JsonObject { ["type"] = "object", ["description"] = section.Meaning, ["additionalProperties"] = false, ["properties"] = properties };
        var required = section.Keys.Where(k => k.Required).Select(k => (JsonNode)k.Name).ToArray();
        if (required.Length > 0)
            result["required"] = new JsonArray(required);
        return result;
    }
}
