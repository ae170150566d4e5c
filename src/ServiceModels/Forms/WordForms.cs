using System.Globalization;
using System.Text.Json.Nodes;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;

namespace Ramwright.ServiceModels.Forms;

/// <summary>Words for people.</summary>
internal sealed record TextForm(string Sample) : ScalarForm
{
    private const int Longest = 1000;

    public override string Words => "text";

    protected override string Example => Sample;

    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = new JsonArray("string", "number"), ["minLength"] = 1, ["maxLength"] = Longest };

    protected override object? ReadText(YamlScalar scalar, ReadContext context)
    {
        if (scalar.Text.Length <= Longest)
            return scalar.Text.Trim();
        context.Add(scalar.Owner, string.Create(CultureInfo.InvariantCulture, $"a text of {scalar.Text.Length} characters stands here; at most {Longest} fit a sheet"), "shorten it", "too-long");
        return null;
    }
}

/// <summary>An id that is declared here.</summary>
internal sealed record IdForm(Named Kind) : ScalarForm
{
    private const int Longest = 64;

    public static string Pattern => "^[a-z0-9]+(-[a-z0-9]+)*$";

    public override string Words => "id: lower case, digits, hyphens";

    protected override string Example => "cap-nut";

    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = new JsonArray("string", "number"), ["pattern"] = Pattern };

    /// <summary>Whether a text is an id: words of lower-case letters and digits with single hyphens between, at most 64 characters.</summary>
    public static bool IsId(string text) => text.Length is > 0 and <= Longest
        && text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-')
        && text[0] != '-' && text[^1] != '-' && !text.Contains("--", StringComparison.Ordinal);

    /// <summary>Reports a text that is no id, with the id that it would make.</summary>
    public static bool Check(string text, Place at, ReadContext context)
    {
        if (IsId(text))
            return true;
        var words = string.Concat(text.ToLowerInvariant().Take(Longest).Select(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) ? c : ' ')).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var better = words.Length == 0 ? "cap-nut" : string.Join('-', words);
        context.Add(at, $"'{Shorten(text)}' is no id", $"use lower-case letters, digits and single hyphens, at most {Longest.ToString(CultureInfo.InvariantCulture)}: write {better}", "bad-id");
        return false;
    }

    protected override object? ReadText(YamlScalar scalar, ReadContext context)
    {
        if (!Check(scalar.Text, scalar.At, context))
            return null;
        context.Names.Declare(Kind, scalar.Text, scalar.At, context.Mistakes);
        return scalar.Text;
    }

    private static string Shorten(string text) => text.Length <= 70 ? text : text[..67] + "...";
}

/// <summary>The id of something declared elsewhere in the file.</summary>
internal sealed record ReferenceForm(Named Kind) : ScalarForm
{
    public override string Words => Kind == Named.Node ? "id of a part or state" : $"id of a {Kind.ToString().ToLowerInvariant()}";

    protected override string Example => "cap-nut";

    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = new JsonArray("string", "number"), ["pattern"] = IdForm.Pattern };

    protected override object? ReadText(YamlScalar scalar, ReadContext context)
    {
        if (!IdForm.Check(scalar.Text, scalar.At, context))
            return null;
        context.Names.Call(Kind, scalar.Text, scalar.At);
        return scalar.Text;
    }
}

/// <summary>One word of a fixed few.</summary>
internal sealed record WordForm<T>(string What) : ScalarForm
    where T : struct, Enum
{
    private static readonly string[] Known = [.. Enum.GetNames<T>().Select(Hyphened)];

    public override string Words => string.Join(", ", Known.Select(w => $"`{w}`"));

    protected override string Example => Known[0];

    public override JsonObject Schema(SchemaBook book) => new() { ["enum"] = new JsonArray([.. Known.Select(w => (JsonNode)w)]) };

    protected override object? ReadText(YamlScalar scalar, ReadContext context)
    {
        var at = Array.IndexOf(Known, scalar.Text);
        if (at >= 0)
            return Enum.GetValues<T>()[at];
        var near = context.Mistakes.Near(scalar.Text, Known);
        context.Add(scalar.At, $"'{scalar.Text}' is no {What}", near is null ? $"write one of {string.Join(", ", Known)}" : $"write {near}; the words are {string.Join(", ", Known)}", "unknown-word");
        return null;
    }

    private static string Hyphened(string name) =>
        string.Concat(name.Select((c, i) => char.IsAsciiLetterUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));
}

/// <summary>true or false.</summary>
internal sealed record FlagForm : ScalarForm
{
    public override string Words => "`true` or `false`";

    protected override string Example => "true";

    public override JsonObject Schema(SchemaBook book) => new() { ["type"] = "boolean" };

    protected override object? ReadText(YamlScalar scalar, ReadContext context)
    {
        if (scalar.Text is "true" or "false")
            return scalar.Text == "true";
        context.Add(scalar.At, $"'{scalar.Text}' is neither true nor false", "write true or false", "unknown-word");
        return null;
    }
}

/// <summary>The first line of every model.</summary>
internal sealed record FormatForm : ScalarForm
{
    private const string Known = "ramwright/1";

    public override string Words => $"`{Known}`";

    protected override string Example => Known;

    public override JsonObject Schema(SchemaBook book) => new() { ["const"] = Known };

    protected override object? ReadText(YamlScalar scalar, ReadContext context)
    {
        if (scalar.Text == Known)
            return scalar.Text;
        context.Add(scalar.At, $"the format '{scalar.Text}' is not known to this program", $"write {Known}, or use the program that the file was written for", "unknown-format");
        return null;
    }
}
