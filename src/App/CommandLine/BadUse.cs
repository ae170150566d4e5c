using System.CommandLine;
using System.Globalization;
using Ramwright.Metrology.Input;

namespace Ramwright.App.CommandLine;

/// <summary>Bad use of the command line, said like any other mistake: what is wrong and how to mend it, all at once.</summary>
internal static class BadUse
{
    /// <summary>The answer to a line that no verb can take; null when one can.</summary>
    public static Answer? Of(ParseResult parsed, RootCommand root, IReadOnlyDictionary<Command, Verb> verbs)
    {
        var asked = parsed.CommandResult.Command;
        if (!verbs.TryGetValue(asked, out var verb))
        {
            var choices = $"write one of: {string.Join(", ", asked.Subcommands.Select(c => c.Name))}";
            if (parsed.UnmatchedTokens.Count > 0)
                return Answer.Refused([Usage("command line", $"'{parsed.UnmatchedTokens[0]}' is no verb of ramwright{Near(parsed.UnmatchedTokens[0], asked.Subcommands.Select(c => c.Name))}", choices)]);
            return Answer.Refused([Usage("command line", asked == root ? "no verb was given" : $"'{asked.Name}' wants a second word", choices)]);
        }

        var found = new List<Mistake>();
        foreach (var symbol in verb.Symbols)
        {
            if (symbol is Option option)
                Look(parsed, option, found);
            else if (symbol is Argument argument)
                Look(parsed, verb, argument, found);
        }

        foreach (var extra in parsed.UnmatchedTokens)
            found.Add(Unknown(verb, extra));
        if (found.Count == 0)
            found.AddRange(parsed.Errors.Select(e => Usage("command line", e.Message.TrimEnd('.'), See(verb)))); // none is known that comes here
        return found.Count == 0 ? null : Answer.Refused([.. found]);
    }

    private static void Look(ParseResult parsed, Option option, List<Mistake> found)
    {
        var mend = $"write {option.Name} {Value(option)}: {option.Description}";
        if (parsed.GetResult(option) is not { Implicit: false } given)
        {
            if (option.Required)
                found.Add(Usage(option.Name, $"{option.Name} is not given", mend));
            return;
        }

        if (option.ValueType != typeof(bool) && (given.Tokens.Count == 0 || given.Tokens.Any(t => IsOptionWord(t.Value))))
            found.Add(Usage(option.Name, $"{option.Name} has no value", mend));
        else if (given.Tokens.Count > option.Arity.MaximumNumberOfValues)
            found.Add(Usage(option.Name, $"{option.Name} is given more than once", "give it once"));
        else if (given.Tokens.FirstOrDefault(t => !Reads(t.Value, option.ValueType)) is { } token)
            found.Add(Usage(option.Name, $"'{token.Value}' is no {Kind(option.ValueType)}", mend));
    }

    private static void Look(ParseResult parsed, Verb verb, Argument argument, List<Mistake> found)
    {
        var tokens = parsed.GetResult(argument)?.Tokens ?? [];
        if (tokens.Count < argument.Arity.MinimumNumberOfValues)
            found.Add(Usage(argument.Name, $"{argument.Name} is not given", $"write {ExamplesFirstHelp.Use(verb)}; {argument.Name} is the {argument.Description}"));
        foreach (var token in tokens.Where(t => IsOptionWord(t.Value)))
            found.Add(Unknown(verb, token.Value));
    }

    private static Mistake Unknown(Verb verb, string word)
    {
        var options = verb.Symbols.OfType<Option>().Append(CommandRunner.Json).Append(CommandRunner.Quiet).Select(o => o.Name).ToList();
        return IsOptionWord(word)
            ? Usage(word, $"'{word}' is no option of {verb.Name}", NearName.Find(word, options) is { } near ? $"write {near}; {See(verb)}" : See(verb))
            : Usage(word, $"'{word}' is one word too many", See(verb));
    }

    /// <summary>A word that can only be meant as an option; a negative number or a lone dash is none.</summary>
    private static bool IsOptionWord(string word) => word.Length > 2 && word.StartsWith("--", StringComparison.Ordinal);

    private static bool Reads(string word, Type type) => (Nullable.GetUnderlyingType(type) ?? type) switch
    {
        var t when t == typeof(int) => int.TryParse(word, NumberStyles.Integer, CultureInfo.InvariantCulture, out _),
        var t when t == typeof(double) => double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out _),
        var t when t == typeof(decimal) => decimal.TryParse(word, NumberStyles.Number, CultureInfo.InvariantCulture, out _),
        var t when t == typeof(bool) => bool.TryParse(word, out _),
        _ => true,
    };

    private static string Kind(Type type) => (Nullable.GetUnderlyingType(type) ?? type) switch
    {
        var t when t == typeof(int) => "whole number of at most nine digits",
        var t when t == typeof(decimal) => "amount of money",
        _ => "number",
    };

    private static string Value(Option option) => option.HelpName ?? option.Name.TrimStart('-').ToUpperInvariant();

    private static string Near(string word, IEnumerable<string> known) => NearName.Find(word, known) is { } near ? $"; '{near}' is" : "";

    private static string See(Verb verb) => $"see: ramwright {verb.Name} --help";

    private static Mistake Usage(string at, string what, string mend) => new(Place.Whole(at), what, mend, "usage");
}
