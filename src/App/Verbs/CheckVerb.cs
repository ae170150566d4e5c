using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.App.Installed;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels;

namespace Ramwright.App.Verbs;

/// <summary><c>check MODEL</c>: every mistake in a service model, the level it reached, and which missing facts would unlock most.</summary>
internal sealed class CheckVerb : Verb
{
    private const int MostFacts = 5;

    private readonly Argument<string> _model = ModelArgument.Create();

    public override string Name => "check";

    public override string Summary => "every mistake in a service model at once, the level it has reached, and what would unlock most";

    public override IReadOnlyList<Example> Examples => [new("check corrie-85", "no mistake; level 3"), new("check skerry-52 --json", "the same for programs")];

    public override string ExitMeaning => "0 no mistake, 1 mistakes found, 2 not readable";

    protected internal override IEnumerable<Symbol> Symbols => [_model];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel) => Task.FromResult(BundledModels.Shelf().Read(given.GetValue(_model)!) switch
    {
        ModelReading.Read read => Good(read),
        ModelReading.Refused refused => Bad(refused),
        _ => throw new InvalidOperationException("A reading is read or refused."),
    });

    private static Answer Good(ModelReading.Read read)
    {
        var (model, levels) = (read.Model, read.Levels);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"no mistake; level {levels.Reached} reached: {model.Tool.Name}, {model.Parts.Length} parts, {model.States.Length} states, {model.Kits.Length} kits\n");
        foreach (var level in levels.Levels)
        {
            var stands = level.Complete ? $"unlocks {string.Join(", ", level.Unlocks)}" : $"kept back by {string.Join("; ", level.KeptBackBy)}";
            text.Append(CultureInfo.InvariantCulture, $"  level {level.Number}, {level.Name}: {stands}\n");
        }

        foreach (var fact in levels.Missing.Take(MostFacts))
            text.Append(CultureInfo.InvariantCulture, $"  missing: {fact.Fact}{Of(fact.Of)}: would unlock {fact.Unlocks}\n");
        if (levels.Missing.Length > MostFacts)
            text.Append(CultureInfo.InvariantCulture, $"  and {levels.Missing.Length - MostFacts} more facts; --json lists all\n");
        foreach (var note in read.Notes)
            text.Append("note: ").Append(MistakeText.WriteOne(note));
        return new Answer(Exit.Yes, text.ToString().TrimEnd(), Json(read));
    }

    private static Answer Bad(ModelReading.Refused refused) =>
        Answer.Refused(refused.Mistakes, refused.Unreadable ? Exit.BadInput : Exit.No) with { Consequence = "nothing was loaded" };

    private static string Of(IReadOnlyCollection<string> ids) => ids.Count switch
    {
        0 => "",
        <= 4 => $" of {string.Join(", ", ids)}",
        _ => $" of {string.Join(", ", ids.Take(4))} and {ids.Count - 4} more",
    };

    private static JsonObject Json(ModelReading.Read read) => new()
    {
        ["model"] = read.Model.Tool.Id,
        ["name"] = read.Model.Tool.Name,
        ["fingerprint"] = read.Model.Fingerprint,
        ["parts"] = read.Model.Parts.Length,
        ["level"] = read.Levels.Reached,
        ["levels"] = new JsonArray([.. read.Levels.Levels.Select(l => new JsonObject
        {
            ["level"] = l.Number,
            ["name"] = l.Name,
            ["complete"] = l.Complete,
            ["unlocks"] = Words(l.Unlocks),
            ["keptBackBy"] = Words(l.KeptBackBy),
        })]),
        ["missing"] = new JsonArray([.. read.Levels.Missing.Select(m => new JsonObject
        {
            ["level"] = m.Level,
            ["needed"] = m.Needed,
            ["fact"] = m.Fact,
            ["of"] = Words(m.Of),
            ["unlocks"] = m.Unlocks,
        })]),
        ["notes"] = MistakesJson.Of(read.Notes),
        ["mistakes"] = new JsonArray(),
    };

    private static JsonArray Words(IEnumerable<string> words) => new([.. words.Select(w => JsonValue.Create(w))]);
}
