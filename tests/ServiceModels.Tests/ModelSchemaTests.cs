using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Ramwright.ServiceModels.Tests;

/// <summary>The schema for editors, held by an independent validator (JsonSchema.Net, draft-07).</summary>
public sealed class ModelSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(ModelSchema.Write());

    public static TheoryData<string> Files => DemoModelTests.Files;

    [Fact]
    public void It_is_a_draft_07_schema() =>
        Assert.True(MetaSchemas.Draft7.Evaluate(JsonDocument.Parse(ModelSchema.Write()).RootElement).IsValid);

    [Theory]
    [MemberData(nameof(Files))]
    public void What_the_reader_takes_the_schema_takes(string file)
    {
        var result = Schema.Evaluate(Json(File.ReadAllText(file)), new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(result.IsValid, string.Join('\n', (result.Details ?? []).Where(d => d.Errors is not null).Take(10).Select(d => $"{d.InstanceLocation}: {string.Join("; ", d.Errors!.Values)}")));
    }

    [Theory]
    [InlineData("format: ramwright/1")]
    [InlineData("{ format: ramwright/1, tool: { id: a, name: A, kind: compression }, limits: { pressure: 1 bar .. 2 bar, maximum: 3 bar, proof-runs: 12 }, prats: {} }")]
    [InlineData("{ format: ramwright/1, tool: { id: a, name: A, kind: compression }, limits: { pressure: 1 bar .. 2 bar, maximum: 3, proof-runs: 12 } }")]
    public void A_missing_key_an_unknown_key_and_a_bare_number_are_refused(string yaml) => Assert.False(Schema.Evaluate(Json(yaml)).IsValid);

    private static JsonElement Json(string yaml)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(yaml));
        return JsonSerializer.SerializeToElement(Convert(stream.Documents[0].RootNode));
    }

    private static JsonNode? Convert(YamlNode node) => node switch
    {
        YamlMappingNode m => new JsonObject(m.Children.Select(c => KeyValuePair.Create(((YamlScalarNode)c.Key).Value!, Convert(c.Value)))),
        YamlSequenceNode s => new JsonArray([.. s.Children.Select(Convert)]),
        YamlScalarNode { Style: ScalarStyle.Plain, Value: "true" or "false" } b => JsonValue.Create(b.Value == "true"),
        YamlScalarNode { Style: ScalarStyle.Plain } n when double.TryParse(n.Value, System.Globalization.CultureInfo.InvariantCulture, out var number) => JsonValue.Create(number),
        YamlScalarNode t => JsonValue.Create(t.Value),
        _ => null,
    };
}
