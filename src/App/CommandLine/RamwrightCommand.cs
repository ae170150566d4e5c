using System.CommandLine;
using System.CommandLine.Help;
using Ramwright.App.Verbs;

namespace Ramwright.App.CommandLine;

/// <summary>The whole command line: every verb, its groups, help with examples first, and bad use as an answer.</summary>
public sealed class RamwrightCommand
{
    /// <summary>Words that stand before several verbs, and what they have in common.</summary>
    private static readonly Dictionary<string, string> Groups = new(StringComparer.Ordinal)
    {
        ["instrument"] = "read a measuring device, or act as one for practice",
        ["kernel"] = "run a computing core on a published form of its input, so that anybody can check it",
        ["keys"] = "the house's keys, with which its proof reports are signed",
        ["schema"] = "write the schema of a file form, for editors",
        ["verify"] = "tell genuine from altered",
    };

    private readonly RootCommand _root = new("The service bench for battery-hydraulic tools: find, plan, price, set and prove, on models that can be checked.");
    private readonly Dictionary<Command, Verb> _verbs = [];
    private readonly CommandRunner _runner;
    private readonly TextWriter _data;
    private readonly TextWriter _words;

    public RamwrightCommand(TextWriter data, TextWriter words)
    {
        _data = data;
        _words = words;
        _runner = new CommandRunner(data, words);
        _root.Options.Add(CommandRunner.Json);
        _root.Options.Add(CommandRunner.Quiet);
        foreach (var verb in AllVerbs.List())
            Add(verb);
        foreach (var help in _root.Options.OfType<HelpOption>())
            help.Action = new ExamplesFirstHelp(_root, _verbs, data);
    }

    /// <summary>All verbs, in the order in which help lists them.</summary>
    public IReadOnlyCollection<Verb> Verbs => _verbs.Values;

    /// <summary>Parses and runs; the result is the exit status.</summary>
    public async Task<int> RunAsync(string[] args, CancellationToken cancel = default)
    {
        if (args.Length == 0)
            args = ["--help"];
        var parsed = _root.Parse(args);
        var asked = parsed.CommandResult.Command;
        var bad = IsRunByTheLibrary(parsed) ? null : BadUse.Of(parsed, _root, _verbs);
        if (bad is null)
            return await parsed.InvokeAsync(new InvocationConfiguration { Output = _data, Error = _words, EnableDefaultExceptionHandler = false }, cancel);

        var word = _verbs.TryGetValue(asked, out var verb) ? verb.SchemaWord : "usage";
        return _runner.Refuse(word, bad, args.Contains("--json", StringComparer.Ordinal));
    }

    /// <summary>Help, the version, and what the shell's completion asks.</summary>
    private static bool IsRunByTheLibrary(ParseResult parsed) =>
        parsed.Action is ExamplesFirstHelp || (parsed.Errors.Count == 0 && parsed.Action is not null && !ReferenceEquals(parsed.Action, parsed.CommandResult.Command.Action));

    private void Add(Verb verb)
    {
        var command = verb.ToCommand(_runner);
        _verbs.Add(command, verb);
        var words = verb.Name.Split(' ');
        if (words.Length == 1)
        {
            _root.Subcommands.Add(command);
            return;
        }

        var group = _root.Subcommands.FirstOrDefault(c => c.Name == words[0]);
        if (group is null)
            _root.Subcommands.Add(group = new Command(words[0], Groups[words[0]]));
        group.Subcommands.Add(command);
    }
}
