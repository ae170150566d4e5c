using System.Text;

namespace Ramwright.App.CommandLine;

/// <summary>Writes docs/reference/cli.md from the verbs themselves.</summary>
public static class CommandLineReference
{
    public static string Write(IEnumerable<Verb> verbs)
    {
        var text = new StringBuilder();
        text.Append("# Verbs\n\n");
        text.Append("Made from the verbs themselves; a test holds this page to them. Data go to standard output, words about mistakes and progress to standard error.\n\n");
        text.Append("- `--json` on every verb: one object with `schema` (`ramwright/VERB/1`); exit 2 brings `mistakes[]` with `code`, `file`, `line`, `column`, `length`, `what`, `mend`. Money stands beside `currency`.\n");
        text.Append("- `-q`: no progress; mistakes still show.\n");
        text.Append("- exit: 0 yes, 1 the answer is no, 2 bad use or input, 3 undecided, 70 our own fault or the machine's. The same with and without `--json`.\n");
        foreach (var verb in verbs)
            Append(text, verb);
        return text.ToString();
    }

    private static void Append(StringBuilder text, Verb verb)
    {
        text.Append("\n## ").Append(verb.Name).Append("\n\n").Append(char.ToUpperInvariant(verb.Summary[0])).Append(verb.Summary.AsSpan(1)).Append(".\n\n");
        text.Append("```\n");
        foreach (var example in verb.Examples)
            text.Append("ramwright ").Append(example.Line).Append("    # ").Append(example.Shows).Append('\n');
        text.Append("```\n\nUse: `ramwright ").Append(ExamplesFirstHelp.Use(verb)).Append("`\n\n");
        var rows = ExamplesFirstHelp.Rows(verb).ToList();
        if (rows.Count > 0)
            text.Append("| | |\n|---|---|\n");
        foreach (var (name, meaning) in rows)
            text.Append("| `").Append(name).Append("` | ").Append(meaning.Replace("|", "\\|", StringComparison.Ordinal)).Append(" |\n");
        if (verb.JsonKeys.Count > 0)
            text.Append("\nIn the JSON:\n\n");
        foreach (var (key, meaning) in verb.JsonKeys)
            text.Append("- `").Append(key).Append("`: ").Append(meaning).Append(".\n");
        text.Append("\nExit: ").Append(verb.ExitMeaning).Append(".\n");
    }
}
