using System.CommandLine;
using System.Text;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.App.Papers.Check;

namespace Ramwright.App.Verbs;

/// <summary><c>keys page FILE</c>: the check page as one file that works in any browser without a network.</summary>
internal sealed class KeysPageVerb : Verb
{
    private readonly Argument<string> _file = new("FILE") { Description = "HTML file to write; it must not exist yet" };
    private readonly Option<string?> _data = DataOption.Create();

    public override string Name => "keys page";

    public override string Summary => "a page in one file that checks papers in any browser, without a network; the list of keys is in it";

    public override IReadOnlyList<Example> Examples => [new("keys page check-saltmarsh.html", "give it to customers: they drop a report on it, or paste its code") { RunsAlone = false }];

    public override string ExitMeaning => "0 written, 2 FILE exists or the house has no key yet, 70 the key or the list cannot be used";

    protected internal override IEnumerable<Symbol> Symbols => [_file, _data];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel) => PaperKeys.WithListAsync(given, _file, _data, async (file, bytes) =>
        await PaperKeys.PutAsync(file, Encoding.UTF8.GetBytes(CheckPage.OneFile(bytes)), secret: false, cancel)
            ?? new Answer(Exit.Yes, $"{file} checks papers of this house as of now; write it anew when a key or a report was replaced", new JsonObject { ["file"] = file }), cancel);
}
