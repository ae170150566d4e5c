using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Ramwright.ServiceModels.Keys;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Forms;

/// <summary>A list of values of one form.</summary>
internal sealed record ListForm(KeyForm Item) : KeyForm
{
    public override string Words => Item is SectionForm section ? $"list of [{section.Section.Name}]" : $"list: {Item.Words}";

    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = "array", ["items"] = Item.Schema(book) };

    public override object? Read(YamlNode node, ReadContext context)
    {
        if (node is not YamlSequence list)
            return WrongForm(node, context, "a list", node is YamlScalar { Text: { Length: > 0 } one } && Item is ScalarForm ? $"write [{one}]" : "write the entries in brackets, or one a line, each after a hyphen");
        var items = ImmutableArray.CreateBuilder<object>(list.Items.Count);
        foreach (var item in list.Items)
            if (Item.Read(item, context) is { } value)
                items.Add(value);
        return items.DrainToImmutable();
    }
}

/// <summary>A group of keys.</summary>
internal sealed record SectionForm(Section Section) : KeyForm
{
    public override string Words => $"[{Section.Name}]";

    public override JsonObject Schema(SchemaBook book) => SectionSchema.Reference(Section, book);

    public override object? Read(YamlNode node, ReadContext context) => node is YamlMapping mapping
        ? SectionReader.Read(mapping, Section, context)
        : WrongForm(node, context, $"{Section.Name} (keys with values)", $"write its keys under it: {string.Join(", ", Section.Keys.Take(6).Select(k => k.Name))} ...");
}

/// <summary>Sections by id.</summary>
/// <param name="Item">Section or tool.</param>
/// <param name="Kind">What the ids name; null when nothing refers to them.</param>
internal sealed record IdMapForm(KeyForm Item, Named? Kind) : KeyForm
{
    public override string Words => $"by id: {Item.Words}";

    public override JsonObject Schema(SchemaBook book) => new()
    {
        ["type"] = "object",
        ["propertyNames"] = new JsonObject { ["pattern"] = IdForm.Pattern },
        ["additionalProperties"] = Item.Schema(book),
    };

    public override object? Read(YamlNode node, ReadContext context)
    {
        if (node is not YamlMapping mapping)
            return WrongForm(node, context, "ids with what belongs to each", "write an id, a colon and its keys in braces, one entry a line");
        var entries = ImmutableArray.CreateBuilder<(string, Facts)>(mapping.Entries.Count);
        foreach (var entry in mapping.Entries)
        {
            if (IdForm.Check(entry.Key, entry.At, context) && Kind is { } kind)
                context.Names.Declare(kind, entry.Key, entry.At, context.Mistakes);
            entries.Add((entry.Key, Item.Read(entry.Value, context) as Facts ?? Facts.None));
        }

        return entries.DrainToImmutable();
    }
}

/// <summary>A number for each of several ids, such as causes with their shares or contents with their counts.</summary>
internal sealed record NumberMapForm(Named Kind, KeyForm Number) : KeyForm
{
    public override string Words => $"by id of a {Kind.ToString().ToLowerInvariant()}: {Number.Words}";

    public override JsonObject Schema(SchemaBook book) => new()
    {
        ["type"] = "object",
        ["propertyNames"] = new JsonObject { ["pattern"] = IdForm.Pattern },
        ["additionalProperties"] = Number.Schema(book),
    };

    public override object? Read(YamlNode node, ReadContext context)
    {
        if (node is not YamlMapping mapping)
            return WrongForm(node, context, $"ids with {Number.Words}", "write { id: value, id: value }");
        var entries = ImmutableArray.CreateBuilder<(string, double)>(mapping.Entries.Count);
        foreach (var entry in mapping.Entries)
        {
            if (IdForm.Check(entry.Key, entry.At, context))
                context.Names.Call(Kind, entry.Key, entry.At);
            if (Number.Read(entry.Value, context) is { } number)
                entries.Add((entry.Key, Convert.ToDouble(number, System.Globalization.CultureInfo.InvariantCulture)));
        }

        return entries.DrainToImmutable();
    }
}
