using System.Text.Json.Nodes;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Forms;

/// <summary>What the value of a key may be: how it is read, described and put into the schema.</summary>
internal abstract record KeyForm
{
    /// <summary>The checked value, or null after the mistake was reported.</summary>
    public abstract object? Read(YamlNode node, ReadContext context);

    /// <summary>For the reference page: 'pressure with unit', 'one of a, b, c'.</summary>
    public abstract string Words { get; }

    /// <summary>JSON Schema (draft-07) of the value.</summary>
    public abstract JsonObject Schema(SchemaBook book);

    protected static object? WrongForm(YamlNode node, ReadContext context, string wanted, string mend)
    {
        if (node is YamlRefused)
            return null;
        var found = node switch
        {
            YamlScalar { Text.Length: 0 } => "nothing",
            YamlScalar => "a single value",
            YamlSequence => "a list",
            _ => "keys and values",
        };
        context.Add(node is YamlScalar { Text.Length: > 0 } ? node.At : node.Owner, $"{wanted} is wanted here, and {found} stands there", mend, "wrong-form");
        return null;
    }
}

/// <summary>A form whose value is one scalar.</summary>
internal abstract record ScalarForm : KeyForm
{
    protected abstract string Example { get; }

    public sealed override object? Read(YamlNode node, ReadContext context) => node switch
    {
        YamlScalar scalar when scalar.Text.AsSpan().Trim().Length > 0 => ReadText(scalar, context),
        YamlScalar empty => Empty(empty, context),
        _ => WrongForm(node, context, "a single value", $"write one value, such as {Example}"),
    };

    protected abstract object? ReadText(YamlScalar scalar, ReadContext context);

    private object? Empty(YamlScalar scalar, ReadContext context)
    {
        context.Add(scalar.Owner, "no value stands here", $"write one, such as {Example}, or take the key away", "empty-value");
        return null;
    }
}

/// <summary>Collects the definitions of a JSON Schema, each section once.</summary>
internal sealed class SchemaBook
{
    public JsonObject Definitions { get; } = [];
}
