using System.CommandLine;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels;

namespace Ramwright.App.Verbs;

/// <summary><c>explain CODE</c>: the page of a mistake: what, why it matters at the tool, bad and good.</summary>
internal sealed class ExplainVerb : Verb
{
    private readonly Argument<string?> _code = new("CODE") { Description = "the word in square brackets behind a mistake; without it all codes are listed", Arity = ArgumentArity.ZeroOrOne };

    public override string Name => "explain";

    public override string Summary => "what a mistake means, why it matters at the tool, and how it is mended";

    public override IReadOnlyList<Example> Examples => [new("explain unknown-part", "what, why, a bad and a good example"), new("explain", "every code")];

    public override string ExitMeaning => "0 explained, 2 no such code";

    protected internal override IEnumerable<Symbol> Symbols => [_code];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel) => Task.FromResult(Answer(given.GetValue(_code)?.Trim('[', ']', ' ')));

    private static Answer Answer(string? code)
    {
        if (code is null)
        {
            return new Answer(Exit.Yes, string.Join('\n', MistakePages.Codes), new JsonObject
            {
                ["codes"] = new JsonArray([.. MistakePages.Codes.Select(c => JsonValue.Create(c))]),
            });
        }

        if (MistakePages.Find(code) is { } page)
            return new Answer(Exit.Yes, page.TrimEnd(), new JsonObject { ["code"] = code, ["page"] = page });
        return CommandLine.Answer.BadUse("CODE", $"no mistake has the code '{code}'", NearName.Find(code, MistakePages.Codes) is { } near ? $"write {near}" : "ramwright explain lists all codes");
    }
}
