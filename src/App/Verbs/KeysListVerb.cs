using System.CommandLine;
using Ramwright.App.CommandLine;
using Ramwright.App.Installed;

namespace Ramwright.App.Verbs;

/// <summary><c>keys list</c>: which keys the house has, and which of them sign, prove or are revoked.</summary>
internal sealed class KeysListVerb : Verb
{
    private readonly Option<string?> _data = DataOption.Create();

    public override string Name => "keys list";

    public override string Summary => "which keys the house has, which one signs, and which reports were replaced";

    public override IReadOnlyList<Example> Examples => [new("keys list", "each key with its name, from when, and how it stands") { RunsAlone = false }];

    public override string ExitMeaning => "0 listed, 2 the house has no key yet, 70 the list is damaged";

    protected internal override IEnumerable<Symbol> Symbols => [_data];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var folder = DataFolder.Find(given.GetValue(_data));
        if (PaperKeys.In(folder).List() is not { } list)
            return Task.FromResult(PaperKeys.None(folder));
        List<string> lines = [$"{list.Keys.Length} {(list.Keys.Length == 1 ? "key" : "keys")} of {list.House}"];
        lines.AddRange(list.Keys.Select(k => $"  {k.Id}  from {k.From:yyyy-MM-dd}  {PaperKeys.State(k)}"));
        lines.AddRange(list.Superseded.Select(s => $"  report {s.Number} was replaced by {s.By}"));
        return Task.FromResult(new Answer(Exit.Yes, string.Join('\n', lines), PaperKeys.Json(list)));
    }
}
