using System.CommandLine;

namespace Ramwright.App.CommandLine;

/// <summary>A command line to try, what it shows, and the exit status that a test holds it to.</summary>
public sealed record Example(string Line, string Shows, Exit Exit = Exit.Yes)
{
    /// <summary>Files that the example reads, by name; a test writes them, and the help shows the line alone.</summary>
    public IReadOnlyDictionary<string, string> Files { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>False where running it needs a person, a port or a house with records.</summary>
    public bool RunsAlone { get; init; } = true;
}

/// <summary>One verb of the command line: its words, its options, its call. Help and docs/reference/cli.md are made from it.</summary>
public abstract class Verb
{
    /// <summary>The words after <c>ramwright</c>, such as <c>plan</c> or <c>kernel factor</c>.</summary>
    public abstract string Name { get; }

    /// <summary>One line: what it answers.</summary>
    public abstract string Summary { get; }

    /// <summary>Examples, shown first in help and run by a test.</summary>
    public abstract IReadOnlyList<Example> Examples { get; }

    /// <summary>What each exit status means here.</summary>
    public abstract string ExitMeaning { get; }

    /// <summary>Keys of the JSON answer that do not say by their name what they hold, for the reference.</summary>
    public virtual IReadOnlyList<(string Key, string Meaning)> JsonKeys => [];

    /// <summary>Schema word of the JSON answer: <c>ramwright/WORD/1</c>.</summary>
    public virtual string SchemaWord => Name.Replace(' ', '-');

    protected internal abstract IEnumerable<Symbol> Symbols { get; }

    /// <summary>Does the work. Bad input is an answer; what throws is our own fault or the machine's.</summary>
    protected internal abstract Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel);

    public Command ToCommand(CommandRunner runner)
    {
        var command = new Command(Name.Split(' ')[^1], Summary);
        foreach (var symbol in Symbols)
        {
            if (symbol is Argument argument)
                command.Arguments.Add(argument);
            else if (symbol is Option option)
                command.Options.Add(option);
        }

        command.SetAction((parsed, cancel) => runner.RunAsync(this, parsed, cancel));
        return command;
    }
}

/// <summary>Standard output for data and standard error for words, as the caller asked for them.</summary>
public sealed record CheckedOutput(TextWriter Data, TextWriter Words, bool Json, bool Quiet)
{
    /// <summary>Progress for a person who waits; silent with <c>--json</c> or <c>-q</c>.</summary>
    public void Say(string line)
    {
        if (!Json && !Quiet)
            Words.WriteLine(line);
    }
}
