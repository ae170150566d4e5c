using System.Text.RegularExpressions;

namespace Ramwright.House.Tests;

public sealed partial class WordsTests
{
    [Fact]
    public void No_file_is_called_helper_manager_or_utility()
    {
        var broken = new[] { "src", "tests", "bench" }.SelectMany(House.Code)
            .Where(f => Emptiness().IsMatch(f.Name))
            .Select(f => new Broken(f.Path, 1, f.Name));
        Broken.None(broken, "Name the file for the idea it holds.");
    }

    [Fact]
    public void No_path_of_somebodys_machine_is_written_down()
    {
        var broken = new[] { "src", "tests", "bench", "docs", "models" }
            .SelectMany(folder => House.Files(folder, ".cs", ".cshtml", ".md", ".yaml", ".csproj", ".css", ".js"))
            .Where(f => f.Name != nameof(WordsTests))
            .SelectMany(f => f.Lines.Select((line, i) => (f, line, i)))
            .Where(at => MachinePath().IsMatch(at.line))
            .Select(at => new Broken(at.f.Path, at.i + 1, at.line.Trim()));
        Broken.None(broken, "Nothing in the project points outside its clone: use a path relative to the root.");
    }

    [Fact]
    public void Time_comes_from_a_TimeProvider_and_chance_from_a_seed()
    {
        var broken = House.Code("src")
            .SelectMany(f => f.Lines.Select((line, i) => (f, line, i)))
            .Where(at => Unruly().IsMatch(at.line) && !at.line.TrimStart().StartsWith("//", StringComparison.Ordinal))
            .Select(at => new Broken(at.f.Path, at.i + 1, at.line.Trim()));
        Broken.None(broken, "Take a TimeProvider for time and a seed for chance: the same input gives the same answer.");
    }

    [Fact]
    public void A_property_draws_the_same_cases_on_every_run()
    {
        var broken = House.Code("tests")
            .Where(f => f.Name is not nameof(WordsTests))
            .SelectMany(f => f.Lines.Select((line, i) => (f, line, i)))
            .Where(at => DrawnAnew().IsMatch(at.line))
            .Select(at => new Broken(at.f.Path, at.i + 1, at.line.Trim()));
        Broken.None(broken, "Use cases.ForAll(…) of tests/DrawnCases.cs, or a Random with a seed: CsCheck's own Sample draws all but its first case anew.");
    }

    [Fact]
    public void A_file_holds_one_idea()
    {
        const int Limit = 300;
        var broken = new[] { "src", "tests", "bench" }.SelectMany(House.Code)
            .Where(f => f.Lines.Length > Limit)
            .Select(f => new Broken(f.Path, Limit, $"{f.Lines.Length} lines"));
        Broken.None(broken, "Past 300 lines a file holds two ideas: part them.");
    }

    [Fact]
    public void A_public_number_says_its_unit()
    {
        var broken = House.Code("src")
            .Where(f => !f.Path.StartsWith("src/App/", StringComparison.Ordinal))
            .Where(f => !f.Path.StartsWith("src/Paper/", StringComparison.Ordinal)) // lengths there are points or picture units, as its page says
            .SelectMany(f => f.Lines.Select((line, i) => (f, line, i)))
            .Where(at => PublicDouble().Match(at.line) is { Success: true } m && !UnitWord().IsMatch(m.Groups["name"].Value) && !UnitWord().IsMatch(DocAbove(at.f.Lines, at.i)))
            .Select(at => new Broken(at.f.Path, at.i + 1, at.line.Trim()));
        Broken.None(broken, "Name the unit in the property's name or in its doc comment (or say that it is a share, factor, probability, ratio, count).");
    }

    private static string DocAbove(string[] lines, int at)
    {
        var doc = new List<string>();
        for (var i = at - 1; i >= 0 && (lines[i].TrimStart().StartsWith("///", StringComparison.Ordinal) || lines[i].TrimStart().StartsWith('[')); i--)
            doc.Add(lines[i]);
        return string.Join(' ', doc);
    }

    [GeneratedRegex("(Helper|Helpers|Utils?|Utility|Utilities|Manager|Misc)$")]
    private static partial Regex Emptiness();

    [GeneratedRegex(@"(^|[^A-Za-z0-9_.])/(work|home|Users|tmp/w)/[a-z]")]
    private static partial Regex MachinePath();

    [GeneratedRegex(@"DateTime(Offset)?\.(Now|UtcNow|Today)|new Random\(\)|Random\.Shared")]
    private static partial Regex Unruly();

    [GeneratedRegex(@"new Random\(\)|Random\.Shared|\.Sample\(")]
    private static partial Regex DrawnAnew();

    [GeneratedRegex(@"^\s+public (required |static |virtual |override )*double\??(\[\])? (?<name>\w+)\s*(\{|=>|=|;|\()")]
    private static partial Regex PublicDouble();

    [GeneratedRegex("(pascal|bar|newton|metre|litre|radian|degree|turn|second|minute|hour|year|kelvin|celsius|kilogram|volt|ohm|amp|N·m|N·s|kg|mm|px|point|share|factor|probab|chance|ratio|fraction|relative|standard deviations|dK/dp|percent|spread|coefficient|density|quantile|degrees of freedom|statistic|log|exponent|dimensionless|shape|SI\\b|0 to 1|value in|number of|modulus|cSt|mm²/s)", RegexOptions.IgnoreCase)]
    private static partial Regex UnitWord();
}
