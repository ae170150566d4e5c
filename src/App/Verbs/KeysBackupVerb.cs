using System.CommandLine;
using System.Text;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.App.Installed;

namespace Ramwright.App.Verbs;

/// <summary><c>keys backup FILE</c>: the secret key and the list in one file, to be kept under lock.</summary>
internal sealed class KeysBackupVerb : Verb
{
    private readonly Argument<string> _file = new("FILE") { Description = "file to write; it must not exist yet" };
    private readonly Option<string?> _data = DataOption.Create();

    public override string Name => "keys backup";

    public override string Summary => "the secret key and the list in one file, readable by its owner alone; keep it under lock, off this machine";

    public override IReadOnlyList<Example> Examples => [new("keys backup /media/stick/keys-backup", "whoever has this file can sign as the house") { RunsAlone = false }];

    public override string ExitMeaning => "0 written, 2 FILE exists or the house has no key yet, 70 the key or the list cannot be used";

    protected internal override IEnumerable<Symbol> Symbols => [_file, _data];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var (file, folder) = (Path.GetFullPath(given.GetValue(_file)!), DataFolder.Find(given.GetValue(_data)));
        var ring = PaperKeys.In(folder);
        if (ring.List() is not { } list)
            return PaperKeys.None(folder);
        return await PaperKeys.PutAsync(file, Encoding.UTF8.GetBytes(ring.Backup()), secret: true, cancel)
            ?? new Answer(Exit.Yes, $"{file} holds the secret key {list.Signing!.Id} and the list\n  it is not encrypted: keep it under lock. Put it back with: ramwright keys restore {given.GetValue(_file)}", new JsonObject { ["file"] = file, ["signing"] = list.Signing.Id.Hex });
    }
}
