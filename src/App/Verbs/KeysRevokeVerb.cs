using System.CommandLine;
using Ramwright.App.CommandLine;
using Ramwright.App.Installed;
using Ramwright.Paper.Signing;

namespace Ramwright.App.Verbs;

/// <summary><c>keys revoke KEY --why WORDS</c>: papers under this key are no longer to be trusted.</summary>
internal sealed class KeysRevokeVerb : Verb
{
    private readonly Argument<string> _key = new("KEY") { Description = "name of the key, 16 digits 0-9 and a-f, as keys list shows it" };
    private readonly Option<string> _why = new("--why") { Description = "what happened; it stands on the list", HelpName = "WORDS", Required = true };
    private readonly Option<string?> _data = DataOption.Create();

    public override string Name => "keys revoke";

    public override string Summary => "papers under this key are no longer to be trusted, whatever day they bear; cannot be undone";

    public override IReadOnlyList<Example> Examples => [new("keys revoke 1f0c2ab3d4e5f607 --why \"the tablet with the records was stolen\"", "if it is the key that signs, a new one takes over") { RunsAlone = false }];

    public override string ExitMeaning => "0 revoked, 1 no key has that name, 2 bad input or the house has no key yet, 70 the list or the folder cannot be used";

    protected internal override IEnumerable<Symbol> Symbols => [_key, _why, _data];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var folder = DataFolder.Find(given.GetValue(_data));
        if (!KeyId.TryRead(given.GetValue(_key), out var id))
            return Task.FromResult(Answer.BadUse("KEY", $"'{given.GetValue(_key)}' is no name of a key", "copy it from ramwright keys list: 16 digits 0-9 and a-f"));
        var ring = PaperKeys.In(folder);
        if (ring.List() is null)
            return Task.FromResult(PaperKeys.None(folder));
        if (ring.Revoke(id, given.GetValue(_why)!) is not { } list)
            return Task.FromResult(new Answer(Exit.No, $"no key of this house is called {id}", PaperKeys.Json(ring.List()!)));
        return Task.FromResult(new Answer(Exit.Yes, $"{id} is revoked; {list.Signing?.Id} signs\n  send the new list to all who check papers: ramwright keys export FILE. Papers under the revoked key are told by the ledger: ramwright verify ledger --head", PaperKeys.Json(list)));
    }
}
