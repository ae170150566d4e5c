using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.App.Installed;
using Ramwright.Metrology.Input;
using Ramwright.Paper.Signing;

namespace Ramwright.App.Verbs;

/// <summary><c>verify paper PAPER</c>: whether a proof report is what the house gave out. Needs no ledger and no network, only the list of keys.</summary>
internal sealed class VerifyPaperVerb : Verb
{
    private const int LargestList = 16 * 1024 * 1024;

    private readonly Argument<string> _paper = new("PAPER") { Description = "report as PDF, its result as JSON, a text file with its code, the code itself (RW1:...), or - for standard input" };
    private readonly Option<string?> _keys = new("--keys") { Description = "list of keys that the house exported; else the list of the house's own records", HelpName = "FILE" };
    private readonly Option<string?> _data = DataOption.Create();

    public override string Name => "verify paper";

    public override string Summary => "whether a proof report is genuine: file, result or code, off line, against the list of the house's keys";

    public override IReadOnlyList<Example> Examples =>
    [
        new("verify paper SM-0409-P1.pdf", "in the house itself") { RunsAlone = false },
        new("verify paper SM-0409-P1.pdf --keys saltmarsh-keys.json", "at the customer's") { RunsAlone = false },
        new("verify paper RW1:KQZ...", "the code, as a reader took it off a print") { RunsAlone = false },
    ];

    public override string ExitMeaning => "0 genuine; 1 altered, superseded or revoked; 3 unknown: not signed, or by a key that is not on the list; 2 bad input, 70 not readable";

    protected internal override IEnumerable<Symbol> Symbols => [_paper, _keys, _data];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var (name, folder) = (given.GetValue(_paper)!, DataFolder.Find(given.GetValue(_data)));
        InputFile read = name.StartsWith(ProofCode.Mark, StringComparison.OrdinalIgnoreCase)
            ? new InputFile.Got(Encoding.UTF8.GetBytes(name))
            : await InputFile.ReadAsync(name, PaperCheck.LargestBytes, cancel);
        if (read is not InputFile.Got paper)
            return Answer.Refused([((InputFile.Missing)read).Why]);
        if (given.GetValue(_keys) is not { } file)
            return PaperKeys.In(folder).List() is { } own ? Of(name, PaperCheck.Of(paper.Bytes, own), own with { AsOf = TimeProvider.System.GetUtcNow() }) : PaperKeys.None(folder, Exit.Undecided);
        var keys = await InputFile.ReadAsync(file, LargestList, cancel);
        if (keys is not InputFile.Got listed)
            return Answer.Refused([((InputFile.Missing)keys).Why]);
        return KeyListFile.Read(listed.Bytes) switch
        {
            KeyListRead.Got { List: var list } => Of(name, PaperCheck.Of(paper.Bytes, list), list),
            KeyListRead.Damaged damaged => Answer.Refused([new(Place.Whole(file), $"this list of keys cannot be used: {damaged.What}", "ask the house for a new one: ramwright keys export FILE", "paper-list-damaged")]),
            _ => throw new InvalidOperationException("A list is got or damaged."),
        };
    }

    private static Answer Of(string name, PaperAnswer answer, KeyList list)
    {
        var asOf = $"as of the list of {list.House}, {list.AsOf.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)} UTC";
        return answer switch
        {
            PaperAnswer.Genuine g => Said(Exit.Yes, "genuine", $"genuine, {asOf}", g.Paper, list),
            PaperAnswer.Superseded s => Said(Exit.No, "superseded", $"superseded: {s.By} took its place; {asOf}", s.Paper, list, ("by", s.By)),
            PaperAnswer.Revoked r => Said(Exit.No, "revoked", $"revoked: the house no longer stands by key {r.Key}, since {r.Why.On:yyyy-MM-dd}: {r.Why.Why}; {asOf}", r.Paper, list, ("why", r.Why.Why)),
            PaperAnswer.Altered a => new Answer(Exit.No, $"altered: {a.What}", Json("altered", list, ("what", a.What))),
            PaperAnswer.Unknown u => new Answer(Exit.Undecided, $"unknown: {u.What}; {asOf}", Json("unknown", list, ("what", u.What))),
            PaperAnswer.NoPaper n => Answer.Refused([new(Place.Whole(name.Length > 60 ? name[..60] + "…" : name), n.What, "name the PDF file or the JSON file of a proof report, or the text of its code", "no-paper")]),
            _ => throw new InvalidOperationException("A paper is one of six."),
        };
    }

    private static Answer Said(Exit exit, string word, string first, ProofCode p, KeyList list, params (string Name, string Value)[] more)
    {
        List<string> lines =
        [
            first,
            $"  report {p.Number}, job {p.Job}: {p.Tool}{(p.Serial.Length > 0 ? $", no. {p.Serial}" : ", no number")}: {p.Verdict}",
            $"  {p.Runs} runs, mean {p.Mean} bar, standard deviation {p.Spread} bar; limits {p.Limits}",
            $"  released {p.Issued} by {p.Signatory}; ledger entry {p.LedgerEntry}, head {p.LedgerHead}; key {p.Key}",
        ];
        if (p.Replaces.Length > 0)
            lines.Add($"  takes the place of {p.Replaces}");
        if (string.CompareOrdinal(p.Issued, list.AsOf.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)) > 0)
            lines.Add("  the list is older than the report: whether it was replaced since is not known");
        var json = Json(word, list, more);
        json["report"] = new JsonObject
        {
            ["number"] = p.Number,
            ["job"] = p.Job,
            ["tool"] = p.Tool,
            ["serial"] = p.Serial,
            ["verdict"] = p.Verdict,
            ["runs"] = p.Runs,
            ["meanBar"] = p.Mean,
            ["standardDeviationBar"] = p.Spread,
            ["limits"] = p.Limits,
            ["issued"] = p.Issued,
            ["signatory"] = p.Signatory,
            ["ledgerEntry"] = p.LedgerEntry,
            ["ledgerHead"] = p.LedgerHead,
            ["replaces"] = p.Replaces,
            ["key"] = p.Key,
        };
        return new Answer(exit, string.Join('\n', lines), json);
    }

    private static JsonObject Json(string word, KeyList list, params (string Name, string Value)[] more)
    {
        var json = new JsonObject { ["paper"] = word, ["house"] = list.House, ["asOf"] = list.AsOf.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture) };
        foreach (var (name, value) in more)
            json[name] = value;
        return json;
    }
}
