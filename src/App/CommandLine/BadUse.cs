using System.CommandLine;
using System.Collections.Immutable;
using Ramwright.Metrology.Input;

namespace Ramwright.App.CommandLine;

/// <summary>Bad use of the command line, said like any other mistake: what is wrong and how to mend it.</summary>
internal static class BadUse
{
    public static Answer Of(ParseResult parsed, RootCommand root, Dictionary<Command, Verb> verbs)
    {
        var asked = parsed.CommandResult.Command;
        if (!verbs.ContainsKey(asked) && parsed.UnmatchedTokens.Count == 0)
        {
            var choices = string.Join(", ", asked.Subcommands.Select(c => c.Name));
            return One(asked == root ? "no verb was given" : $"'{asked.Name}' wants a second word", $"write one of: {choices}");
        }

        if (!verbs.ContainsKey(asked))
        {
            var choices = string.Join(", ", asked.Subcommands.Select(c => c.Name));
            return One($"'{parsed.UnmatchedTokens[0]}' is no verb of ramwright", $"write one of: {choices}");
        }

        var help = $"see: ramwright {verbs[asked].Name} --help";
        ImmutableArray<Mistake> mistakes = [.. parsed.Errors.Select(e => e.Message.TrimEnd('.')).Distinct(StringComparer.Ordinal).Select(m => Usage(m, help))];
        return Answer.Refused(mistakes);
    }

    private static Answer One(string what, string mend) => Answer.Refused([Usage(what, mend)]);

    private static Mistake Usage(string what, string mend) => new(Place.Whole("command line"), what, mend, "usage");
}
