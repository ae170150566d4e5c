using System.Collections.Immutable;
using System.CommandLine;
using Ramwright.Metrology.Input;

namespace Ramwright.App.CommandLine;

/// <summary>Bad use of the command line, said like any other mistake: what is wrong and how to mend it.</summary>
internal static class BadUse
{
    public static Answer Of(ParseResult parsed, RootCommand root, Dictionary<Command, Verb> verbs, string? stray)
    {
        var asked = parsed.CommandResult.Command;
        if (!verbs.TryGetValue(asked, out var verb))
        {
            var choices = $"write one of: {string.Join(", ", asked.Subcommands.Select(c => c.Name))}";
            if (parsed.UnmatchedTokens.Count > 0)
                return One($"'{parsed.UnmatchedTokens[0]}' is no verb of ramwright", choices);
            return One(asked == root ? "no verb was given" : $"'{asked.Name}' wants a second word", choices);
        }

        var help = $"see: ramwright {verb.Name} --help";
        if (stray is not null)
            return One($"'{stray}' is no option of {verb.Name}", help);
        ImmutableArray<Mistake> mistakes = [.. parsed.Errors.Select(e => e.Message.TrimEnd('.')).Distinct(StringComparer.Ordinal).Select(m => Usage(m, help))];
        return Answer.Refused(mistakes);
    }

    private static Answer One(string what, string mend) => Answer.Refused([Usage(what, mend)]);

    private static Mistake Usage(string what, string mend) => new(Place.Whole("command line"), what, mend, "usage");
}
