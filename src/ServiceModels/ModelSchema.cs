using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Ramwright.ServiceModels.Forms;
using Ramwright.ServiceModels.Keys;

namespace Ramwright.ServiceModels;

/// <summary>The format as a JSON Schema (draft-07), for editors; made from the reader's own table of keys.</summary>
public static class ModelSchema
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schema as text. It is wider than the reader: units, references and what cannot work are checked by reading alone.</summary>
    public static string Write()
    {
        var book = new SchemaBook();
        var root = SectionSchema.Object(ModelKeys.Root, book);
        var schema = new JsonObject { ["$schema"] = "http://json-schema.org/draft-07/schema#", ["title"] = "Ramwright service model, ramwright/1" };
        foreach (var (name, value) in root.ToList())
        {
            root.Remove(name);
            schema[name] = value;
        }

        schema["definitions"] = book.Definitions;
        return schema.ToJsonString(Readable) + "\n";
    }
}
