using System.Text.RegularExpressions;

namespace Ramwright.House.Tests;

/// <summary>Every code that a verb or a page can show has its page for <c>ramwright explain</c>, and every page has a code.</summary>
public sealed partial class MistakeCodesTests
{
    /// <summary>Codes that the model reader puts together from the kind of name: unknown-tool for a tool that is not in the model.</summary>
    private static readonly string[] PutTogether = ["unknown-tool", "unknown-posture", "unknown-fault", "unknown-symptom"];

    [Fact]
    public void Every_code_in_the_source_has_a_page()
    {
        var pages = Pages();
        var broken = Codes().Where(c => !pages.Contains(c.Code)).Select(c => new Broken(c.Path, c.Line, c.Code));
        Broken.None(broken, "Write docs/reference/mistakes/CODE.md: what it is, why it matters at the tool, bad and good.");
    }

    [Fact]
    public void Every_page_has_a_code_in_the_source()
    {
        var codes = Codes().Select(c => c.Code).Concat(PutTogether).ToHashSet(StringComparer.Ordinal);
        var broken = Pages().Where(p => !codes.Contains(p)).Order(StringComparer.Ordinal).Select(p => new Broken($"docs/reference/mistakes/{p}.md", 1, p));
        Broken.None(broken, "Nothing shows this code any more: delete its page, or name the code where it is used.");
    }

    [Fact]
    public void The_codes_are_found_where_they_are_known_to_stand()
    {
        var codes = Codes().Select(c => c.Code).ToHashSet(StringComparer.Ordinal);
        foreach (var known in new[] { "usage", "no-file", "bad-number", "disk-full", "no-access", "defect", "backup-exists", "series-is-open", "run-outside", "grubbs", "no-answer", "unknown-made-up-unit" })
            Assert.Contains(known, codes);
    }

    private static HashSet<string> Pages() => [.. House.Files("docs/reference/mistakes", ".md").Select(f => f.Name)];

    private static IEnumerable<(string Path, int Line, string Code)> Codes() => House.Code("src").SelectMany(file =>
        FormsIn(file.Path).SelectMany(form => file.Lines.SelectMany((line, i) => form.Matches(line).Select(m => (file.Path, i + 1, m.Groups["code"].Value)))));

    /// <summary>How a room writes its codes.</summary>
    private static IEnumerable<Regex> FormsIn(string path) => path.Split('/')[1] switch
    {
        "ServiceModels" when path.EndsWith("/NameBook.cs", StringComparison.Ordinal) => [LastArgument(), Arm()],
        "ServiceModels" when !path.Contains("/Keys/", StringComparison.Ordinal) => [LastArgument()],
        "Metrology" when path.Contains("/Input/", StringComparison.Ordinal) || path.Contains("/Expressions/", StringComparison.Ordinal) => [LastArgument()],
        "Instruments" or "Hydraulics" when path.EndsWith("Codes.cs", StringComparison.Ordinal) => [Constant()],
        "Diagnosis" when path.Contains("/Networks/", StringComparison.Ordinal) => [LastArgument()],
        "Proving" => [Property(), Flag()],
        "Setting" => [BeforeWords()],
        "Records" => [BeforeWords()],
        "Paper" when path.EndsWith("/KeyRing.cs", StringComparison.Ordinal) => [BeforeWords()],
        "App" when path.StartsWith("src/App/CommandLine/", StringComparison.Ordinal) || path.StartsWith("src/App/Verbs/", StringComparison.Ordinal) => [LastArgument(), BeforeWords(), OfFault()],
        _ => [],
    };

    // A code that is one word is told from other words by being listed.
    [GeneratedRegex("""[,?:] "(?<code>[a-z]+(?:-[a-z]+)+|alias|tab|tag|circle|usage)"\)""")]
    private static partial Regex LastArgument();

    [GeneratedRegex("""\b(?:No|Refused|new|LedgerUnavailableException|KeyRingException)\("(?<code>[a-z]+(?:-[a-z]+)+)", (?:\$?"|what)|\bnew\("(?<code>[a-z]+(?:-[a-z]+)+)",$""")]
    private static partial Regex BeforeWords();

    [GeneratedRegex("""\bOf\("(?<code>[a-z]+(?:-[a-z]+)*)", """)]
    private static partial Regex OfFault();

    [GeneratedRegex("""Code => "(?<code>[a-z]+(?:-[a-z]+)*)";""")]
    private static partial Regex Property();

    [GeneratedRegex("""flags\.Add\(new\("(?<code>[a-z]+(?:-[a-z]+)*)",""")]
    private static partial Regex Flag();

    [GeneratedRegex("""const string \w+ = "(?<code>[a-z]+(?:-[a-z]+)*)";""")]
    private static partial Regex Constant();

    [GeneratedRegex("""=> "(?<code>unknown-[a-z-]+)",""")]
    private static partial Regex Arm();
}
