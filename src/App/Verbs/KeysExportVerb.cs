using System.CommandLine;
using Ramwright.App.CommandLine;
using Ramwright.Paper.Signing;

namespace Ramwright.App.Verbs;

/// <summary><c>keys export FILE</c>: the list that whoever checks papers needs. Nothing in it is secret.</summary>
internal sealed class KeysExportVerb : Verb
{
    private readonly Argument<string> _file = new("FILE") { Description = "file to write; it must not exist yet" };
    private readonly Option<string?> _data = DataOption.Create();

    public override string Name => "keys export";

    public override string Summary => "public keys, revocations and replaced reports as of now, for those who check papers; nothing secret";

    public override IReadOnlyList<Example> Examples => [new("keys export saltmarsh-keys.json", "a signed list; give it to customers, then: ramwright verify paper REPORT --keys saltmarsh-keys.json") { RunsAlone = false }];

    public override string ExitMeaning => "0 written, 2 FILE exists or the house has no key yet, 70 the key or the list cannot be used";

    protected internal override IEnumerable<Symbol> Symbols => [_file, _data];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel) => PaperKeys.WithListAsync(given, _file, _data, async (file, bytes) =>
    {
        if (await PaperKeys.PutAsync(file, bytes, secret: false, cancel) is { } refused)
            return refused;
        var list = ((KeyListRead.Got)KeyListFile.Read(bytes)).List;
        var json = PaperKeys.Json(list);
        json["file"] = file;
        return new Answer(Exit.Yes, $"{file}: {list.Keys.Length} {(list.Keys.Length == 1 ? "key" : "keys")} of {list.House}, as of {list.AsOf:yyyy-MM-dd HH:mm} UTC\n  the key that signs is {list.Signing!.Id}: say it to the customer on another way than the file", json);
    }, cancel);
}
