using System.CommandLine;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.App.Demo;

namespace Ramwright.App.Verbs;

/// <summary><c>demo</c>: one made-up tool through all nine stations, with its papers.</summary>
internal sealed class DemoVerb : Verb
{
    private readonly Option<string> _out = new("--out") { Description = "folder for records and papers; a new one is made in it for each demo", HelpName = "FOLDER", DefaultValueFactory = _ => "demo-out" };

    public override string Name => "demo";

    public override string Summary => "one made-up tool through all nine stations, on the simulated device; leaves its papers as PDF";

    public override IReadOnlyList<Example> Examples => [new("demo", "work sheet, quote and proof report in a folder that it names") { RunsAlone = false }];

    public override string ExitMeaning => "0 released, 1 the tool came to another end, 2 FOLDER is a file, 70 the folder cannot be used; then none is left behind";

    protected internal override IEnumerable<Symbol> Symbols => [_out];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var parent = Path.GetFullPath(given.GetValue(_out)!);
        if (FileOnTheWay(parent) is { } file)
            return Answer.BadUse("--out", $"{file} is a file, and a folder is wanted", "name a folder; it need not exist yet");
        var folder = NewFolder(parent);
        try
        {
            return await WalkAsync(folder, output, cancel);
        }
        catch
        {
            Directory.Delete(folder, recursive: true); // a demo that broke off is no demo
            throw;
        }
    }

    private static async Task<Answer> WalkAsync(string folder, CheckedOutput output, CancellationToken cancel)
    {
        using var walk = new DemoWalk(folder, TimeProvider.System, output.Say);
        var job = await walk.RunAsync(cancel);
        var papers = Directory.GetFiles(Path.Combine(folder, "papers"), "*.pdf").Order(StringComparer.Ordinal).ToList();
        var text = $"{job.Id} {(walk.Released ? "released: the proof conforms" : "not released")}\npapers in {Path.Combine(folder, "papers")}:\n{string.Join('\n', papers.Select(p => "  " + Path.GetFileName(p)))}";
        return new Answer(walk.Released ? Exit.Yes : Exit.No, text, new JsonObject
        {
            ["job"] = job.Id.Value,
            ["released"] = walk.Released,
            ["stations"] = new JsonArray([.. walk.Passed.Select(s => JsonValue.Create(s.ToString()))]),
            ["folder"] = folder,
            ["papers"] = new JsonArray([.. papers.Select(p => JsonValue.Create(Path.GetFileName(p)))]),
        });
    }

    private static string? FileOnTheWay(string folder)
    {
        for (var at = folder; at is not null; at = Path.GetDirectoryName(at))
        {
            if (File.Exists(at))
                return at;
        }

        return null;
    }

    private static string NewFolder(string parent)
    {
        for (var number = 1; ; number++)
        {
            var folder = Path.Combine(parent, $"demo-{number}");
            if (Directory.Exists(folder))
                continue;
            Directory.CreateDirectory(folder);
            return folder;
        }
    }
}
