using System.CommandLine;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.App.Installed;
using Ramwright.Records.Store;

namespace Ramwright.App.Verbs;

/// <summary><c>backup FILE</c>: a copy of the ledger as it stands at one instant, checked.</summary>
internal sealed class BackupVerb : Verb
{
    private readonly Argument<string> _file = new("FILE") { Description = "file to write; it must not exist yet" };
    private readonly Option<string?> _data = DataOption.Create();

    public override string Name => "backup";

    public override string Summary => "a copy of the ledger in one file, also while the bench is open; its chain is checked before it counts";

    public override IReadOnlyList<Example> Examples =>
    [
        new("backup monday.ledger", "the entry up to which it reaches, and the head to keep apart from it") { RunsAlone = false },
        new("backup /media/stick/monday.ledger --data /srv/ramwright", "of another house; papers and models lie beside the ledger as plain files and are copied by hand, the keys by ramwright keys backup") { RunsAlone = false },
    ];

    public override string ExitMeaning => "0 written and sound, 1 the ledger is not sound, 2 FILE exists or there is no ledger, 70 disk, rights or a lock";

    protected internal override IEnumerable<Symbol> Symbols => [_file, _data];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var file = Path.GetFullPath(given.GetValue(_file)!);
        var path = DataFolder.LedgerIn(DataFolder.Find(given.GetValue(_data)));
        if (!File.Exists(path))
            return LedgerAnswer.None(path);
        if (Path.GetDirectoryName(file) is { } folder && !Directory.Exists(folder))
            return Answer.BadUse("FILE", $"there is no folder {folder}", "make the folder, or name a file in one that is there");
        using var ledger = new Ledger(path, TimeProvider.System);
        return await LedgerBackup.CopyAsync(ledger, file, cancel) switch
        {
            BackupAnswer.Done done => new Answer(Exit.Yes, $"{done.Path} holds every entry up to no. {done.Head.Number}; head {done.Head.Hash}\n  put it back with: ramwright restore {given.GetValue(_file)}", new JsonObject
            {
                ["backup"] = done.Path,
                ["lastEntry"] = done.Head.Number.Value,
                ["head"] = done.Head.Hash,
            }),
            BackupAnswer.Refused refused => LedgerAnswer.Of(refused, file),
            _ => throw new InvalidOperationException("A backup is done or refused."),
        };
    }
}
