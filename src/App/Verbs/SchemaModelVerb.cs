using System.CommandLine;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.ServiceModels;

namespace Ramwright.App.Verbs;

/// <summary><c>schema model</c>: the JSON Schema of a service model, made from the reader's own table of keys.</summary>
internal sealed class SchemaModelVerb : Verb
{
    public override string Name => "schema model";

    public override string Summary => "the JSON Schema (draft-07) of a service model, for editors that complete and check";

    public override IReadOnlyList<Example> Examples => [new("schema model", "write it to a file and name it in the editor's settings for models/*.yaml")];

    public override string ExitMeaning => "0 written";

    protected internal override IEnumerable<Symbol> Symbols => [];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var schema = ModelSchema.Write();
        return Task.FromResult(new Answer(Exit.Yes, schema, new JsonObject { ["model"] = JsonNode.Parse(schema) }));
    }
}
