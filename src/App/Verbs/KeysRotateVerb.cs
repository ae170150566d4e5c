using System.CommandLine;
using Ramwright.App.CommandLine;
using Ramwright.App.Installed;

namespace Ramwright.App.Verbs;

/// <summary><c>keys rotate</c>: a new key signs from now on.</summary>
internal sealed class KeysRotateVerb : Verb
{
    private readonly Option<string?> _data = DataOption.Create();

    public override string Name => "keys rotate";

    public override string Summary => "a new key signs from now on; the old one still proves what it signed, and its secret is destroyed";

    public override IReadOnlyList<Example> Examples => [new("keys rotate", "then export the list anew, and make a backup") { RunsAlone = false }];

    public override string ExitMeaning => "0 a new key signs, 2 the house has no key yet, 70 the list or the folder cannot be used";

    protected internal override IEnumerable<Symbol> Symbols => [_data];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var folder = DataFolder.Find(given.GetValue(_data));
        var ring = PaperKeys.In(folder);
        if (ring.List() is not { } old)
            return Task.FromResult(PaperKeys.None(folder));
        var list = ring.Rotate();
        return Task.FromResult(new Answer(Exit.Yes, $"{list.Signing!.Id} signs from now on{(old.Signing is { } before ? $"; {before.Id} still proves what it signed" : "")}\n  export the list anew for customers: ramwright keys export FILE; and keep a backup: ramwright keys backup FILE", PaperKeys.Json(list)));
    }
}
