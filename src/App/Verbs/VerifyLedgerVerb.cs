using System.CommandLine;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.App.Installed;
using Ramwright.Records.Store;

namespace Ramwright.App.Verbs;

/// <summary><c>verify ledger</c>: whether the records are as they were written.</summary>
internal sealed class VerifyLedgerVerb : Verb
{
    private readonly Option<string?> _head = new("--head") { Description = "a head printed on a paper, whole or its first eight digits; the ledger must hold it", HelpName = "H" };
    private readonly Option<string?> _data = DataOption.Create();
    private readonly Option<string?> _ledger = new("--ledger") { Description = "a ledger file instead of a folder, such as a backup", HelpName = "FILE" };

    public override string Name => "verify ledger";

    public override string Summary => "whether the records are as they were written: every entry, in order, none missing";

    public override IReadOnlyList<Example> Examples =>
    [
        new("verify ledger", "checks every entry from the first to the last") { RunsAlone = false },
        new("verify ledger --head 9f3c1ae0", "and that the entry a paper stands on is among them") { RunsAlone = false },
        new("verify ledger --ledger monday.ledger", "a backup, before anybody needs it") { RunsAlone = false },
    ];

    public override string ExitMeaning => "0 genuine, 1 altered, 3 unknown: no ledger there, or none of its entries has that head; 2 bad input, 70 not readable";

    protected internal override IEnumerable<Symbol> Symbols => [_head, _data, _ledger];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        string? head = null;
        if (given.GetValue(_head) is { } typed && !LedgerHead.TryReadHash(typed, out head))
            return Answer.BadUse("--head", $"'{typed}' is no head", "copy it from the paper: 8 to 64 digits 0-9 and a-f, spaces allowed");
        var file = given.GetValue(_ledger) is { } named ? Path.GetFullPath(named) : DataFolder.LedgerIn(DataFolder.Find(given.GetValue(_data)));
        if (!File.Exists(file))
        {
            var none = LedgerAnswer.None(file, Exit.Undecided);
            none.Json["ledger"] = "none";
            return none with { Text = $"unknown: there is no ledger at {file}" };
        }

        using var ledger = new Ledger(file, TimeProvider.System);
        return Of(await ledger.VerifyAsync(head, cancel));
    }

    private static Answer Of(Verification verification) => verification switch
    {
        Verification.Genuine { Head: var head, Asked: var asked } => new Answer(Exit.Yes,
            $"genuine: every entry up to no. {head.Number} is as it was written; head {head.Hash}{(asked is { } entry ? $"\n  the head asked for is that of entry no. {entry}" : "")}",
            With(Json("genuine", head), "askedEntry", asked?.Value)),
        Verification.Altered altered => new Answer(Exit.No, $"altered: entry no. {altered.First}: {altered.What}", new JsonObject
        {
            ["ledger"] = "altered",
            ["firstEntry"] = altered.First.Value,
            ["what"] = altered.What,
        }),
        Verification.TailCut { Head: var head, Witnessed: var witnessed } => new Answer(Exit.No,
            $"altered: the end is cut off; the last entry is no. {head.Number}, and a witness beside the ledger knows no. {witnessed.Number}",
            With(Json("altered", head), "witnessedEntry", witnessed.Number.Value)),
        Verification.UnknownHead { Head: var head, Asked: var asked } => new Answer(Exit.Undecided,
            $"unknown: no entry up to no. {head.Number} has the head {asked}: the paper is of another ledger, or the end was cut off",
            With(Json("unknown-head", head), "asked", asked)),
        _ => throw new InvalidOperationException("A verification is one of four."),
    };

    private static JsonObject Json(string word, LedgerHead head) => new() { ["ledger"] = word, ["lastEntry"] = head.Number.Value, ["head"] = head.Hash };

    private static JsonObject With(JsonObject json, string key, JsonNode? value)
    {
        json[key] = value;
        return json;
    }
}
