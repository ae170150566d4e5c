using System.CommandLine;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.App.Installed;
using Ramwright.Metrology.Input;
using Ramwright.Records.Store;

namespace Ramwright.App.Verbs;

/// <summary><c>restore FILE</c>: puts a backup in the ledger's place, after checking it; what lay there is set aside.</summary>
internal sealed class RestoreVerb : Verb
{
    private readonly Argument<string> _file = new("FILE") { Description = "file that ramwright backup wrote" };
    private readonly Option<bool> _replace = new("--replace") { Description = "a ledger that is there already is set aside under a new name beside it; nothing is removed" };
    private readonly Option<string?> _data = DataOption.Create();

    public override string Name => "restore";

    public override string Summary => "puts a backup in the ledger's place, after checking its chain; never overwrites";

    public override IReadOnlyList<Example> Examples =>
    [
        new("restore monday.ledger", "into a house that has no ledger yet") { RunsAlone = false },
        new("restore monday.ledger --replace", "sets the present ledger aside first; the bench (ramwright serve) must be closed") { RunsAlone = false },
    ];

    public override string ExitMeaning => "0 restored, 1 the backup is not sound, 2 no such file or a ledger is there already, 70 disk, rights or a lock; except for 0 nothing was changed";

    protected internal override IEnumerable<Symbol> Symbols => [_file, _replace, _data];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var file = Path.GetFullPath(given.GetValue(_file)!);
        var folder = DataFolder.Find(given.GetValue(_data));
        var path = DataFolder.LedgerIn(folder);
        if (!File.Exists(file))
            return Answer.Refused([new(Place.Whole(file), Directory.Exists(file) ? "this is a folder, and the file of a backup is wanted" : "there is no such file", "name the file that ramwright backup wrote", "no-file")]);
        if (File.Exists(path) && !given.GetValue(_replace))
            return Answer.Refused([new(Place.Whole(path), "a ledger is there already, and nothing is overwritten", "add --replace to set it aside under a new name, or name another folder with --data", "ledger-exists")]);
        Directory.CreateDirectory(folder);
        return await LedgerBackup.RestoreAsync(file, path, TimeProvider.System, cancel) switch
        {
            BackupAnswer.Done done => Of(done),
            BackupAnswer.Refused refused => LedgerAnswer.Of(refused, file),
            _ => throw new InvalidOperationException("A restore is done or refused."),
        };
    }

    private static Answer Of(BackupAnswer.Done done)
    {
        List<string> lines = [$"{done.Path} holds every entry up to no. {done.Head.Number}; head {done.Head.Hash}"];
        lines.AddRange(done.SetAside.Select(s => $"  set aside: {s}"));
        if (done.Lost is { } lost)
            lines.Add($"  the ledger set aside went on to entry no. {lost.Number}: the entries after no. {done.Head.Number} stand only there");
        return new Answer(Exit.Yes, string.Join('\n', lines), new JsonObject
        {
            ["ledger"] = done.Path,
            ["lastEntry"] = done.Head.Number.Value,
            ["head"] = done.Head.Hash,
            ["setAside"] = new JsonArray([.. done.SetAside.Select(s => JsonValue.Create(s))]),
            ["lostAfter"] = done.Lost is { } gone ? new JsonObject { ["lastEntry"] = gone.Number.Value, ["head"] = gone.Hash } : null,
        });
    }
}
