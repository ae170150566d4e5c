using System.CommandLine;
using System.CommandLine.Invocation;
using System.Text;

namespace Ramwright.App.CommandLine;

/// <summary>Help with the examples before the options. The same words make docs/reference/cli.md.</summary>
internal sealed class ExamplesFirstHelp(RootCommand root, IReadOnlyDictionary<Command, Verb> verbs, TextWriter data) : SynchronousCommandLineAction
{
    public override int Invoke(ParseResult parseResult)
    {
        var asked = parseResult.CommandResult.Command;
        data.Write(verbs.TryGetValue(asked, out var verb) ? Of(verb) : Of(asked));
        return 0;
    }

    /// <summary>Help of one verb.</summary>
    public static string Of(Verb verb)
    {
        var text = new StringBuilder();
        text.Append(verb.Summary).Append("\n\n");
        foreach (var example in verb.Examples)
            text.Append("    $ ramwright ").Append(example.Line).Append('\n').Append("      ").Append(example.Shows).Append('\n');
        text.Append("\nuse: ramwright ").Append(Use(verb)).Append('\n');
        AppendTable(text, Rows(verb));
        text.Append("\nexit: ").Append(verb.ExitMeaning).Append('\n');
        return text.ToString();
    }

    /// <summary>The line that shows arguments and options in their order.</summary>
    public static string Use(Verb verb)
    {
        var words = new List<string> { verb.Name };
        foreach (var argument in verb.Symbols.OfType<Argument>())
            words.Add(argument.Arity.MinimumNumberOfValues == 0 ? $"[{argument.Name}]" : argument.Name);
        foreach (var option in verb.Symbols.OfType<Option>())
        {
            var value = option.ValueType == typeof(bool) ? option.Name : $"{option.Name} {Value(option)}";
            words.Add(option.Required ? value : $"[{value}]");
        }

        return string.Join(' ', words) + " [--json] [-q]";
    }

    /// <summary>Arguments and options with what they mean.</summary>
    public static IEnumerable<(string Name, string Meaning)> Rows(Verb verb)
    {
        foreach (var argument in verb.Symbols.OfType<Argument>())
            yield return (argument.Name, argument.Description ?? "");
        foreach (var option in verb.Symbols.OfType<Option>())
            yield return (option.ValueType == typeof(bool) ? option.Name : $"{option.Name} {Value(option)}", option.Description ?? "");
    }

    private string Of(Command group)
    {
        var text = new StringBuilder();
        text.Append(group == root ? group.Description : $"ramwright {group.Name}: {group.Description}").Append("\n\n");
        if (group == root)
        {
            text.Append("    $ ramwright demo\n      one made-up tool through all nine stations, with its papers\n");
            text.Append("    $ ramwright serve\n      the bench in the browser\n\n");
        }

        AppendTable(text, verbs.Values.Where(v => group == root || v.Name.StartsWith(group.Name + " ", StringComparison.Ordinal)).Select(v => (v.Name, v.Summary)));
        text.Append("\nramwright VERB --help shows examples, options and exit statuses; --json answers for programs.\n");
        return text.ToString();
    }

    private static string Value(Option option) => option.HelpName ?? option.Name.TrimStart('-').ToUpperInvariant();

    private static void AppendTable(StringBuilder text, IEnumerable<(string Name, string Meaning)> rows)
    {
        var all = rows.ToList();
        var width = all.Count == 0 ? 0 : all.Max(r => r.Name.Length) + 2;
        foreach (var (name, meaning) in all)
            text.Append("  ").Append(name.PadRight(width)).Append(meaning).Append('\n');
    }
}
