using System.Text;
using System.Text.RegularExpressions;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Budgets;
using Ramwright.ServiceModels.Tests.Samples;

namespace Ramwright.ServiceModels.Tests;

public sealed partial class MistakePagesTests
{
    public static TheoryData<string> CodesWithModels => [.. MistakePages.Codes.Where(c => YamlBlocks(c).Count > 0)];

    [Theory]
    [MemberData(nameof(CodesWithModels))]
    public void The_bad_sample_of_a_page_has_its_code_and_the_good_one_has_not(string code)
    {
        var blocks = YamlBlocks(code);
        Assert.Equal(2, blocks.Count);
        Assert.Contains(code, CodesOf(blocks[0]), StringComparer.Ordinal);
        var good = ModelReader.Read("good.yaml", Sample.Whole(blocks[1]));
        Assert.True(good is ModelReading.Read, good is ModelReading.Refused r ? MistakeText.Write(r.Mistakes) : "");
        Assert.DoesNotContain(code, CodesOf(blocks[1]), StringComparer.Ordinal);
    }

    public static TheoryData<string> CodesWithBudgets => [.. MistakePages.Codes.Where(c => BudgetBlock().IsMatch(MistakePages.Find(c)!))];

    [Theory]
    [MemberData(nameof(CodesWithBudgets))]
    public void The_bad_budget_of_a_page_has_its_code_and_the_good_one_reads(string code)
    {
        var blocks = BudgetBlock().Matches(MistakePages.Find(code)!).Select(m => BudgetReader.Read("sample.yaml", Encoding.UTF8.GetBytes(m.Groups[1].Value))).ToList();
        Assert.Equal(2, blocks.Count);
        Assert.Contains(Assert.IsType<BudgetReading.Refused>(blocks[0]).Mistakes, m => m.Code == code);
        Assert.True(blocks[1] is BudgetReading.Read, blocks[1] is BudgetReading.Refused r ? MistakeText.Write(r.Mistakes) : "");
    }

    [Fact]
    public void A_page_says_what_and_why_and_shows_both_samples()
    {
        foreach (var code in MistakePages.Codes)
        {
            var page = MistakePages.Find(code)!;
            Assert.StartsWith($"# {code}\n", page, StringComparison.Ordinal);
            foreach (var heading in (string[])["\n## Why it matters at the tool\n", "\n## Bad\n", "\n## Good\n"])
                Assert.True(page.Contains(heading, StringComparison.Ordinal), $"{code}: {heading.Trim()} is missing");
        }
    }

    [Fact]
    public void Every_code_that_the_reader_can_give_has_its_page()
    {
        var codes = Directory.EnumerateFiles(Repository.Folder("src/ServiceModels"), "*.cs", SearchOption.AllDirectories)
            .Concat(Directory.EnumerateFiles(Repository.Folder("src/Metrology/Input"), "*.cs"))
            .Concat(Directory.EnumerateFiles(Repository.Folder("src/Metrology/Uncertainty"), "*.cs", SearchOption.AllDirectories))
            .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/Keys/", StringComparison.Ordinal))
            .SelectMany(f => Code().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value))
            .Concat(["unknown-tool", "unknown-posture", "unknown-fault"])
            .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        Assert.True(codes.Count > 50, $"only {codes.Count} codes were found");
        Assert.Empty(codes.Except(MistakePages.Codes, StringComparer.Ordinal));
    }

    [Fact]
    public void A_code_that_is_none_has_no_page() => Assert.Null(MistakePages.Find("no-such-code"));

    private static List<string> YamlBlocks(string code) => [.. YamlBlock().Matches(MistakePages.Find(code)!).Select(m => m.Groups[1].Value)];

    private static IEnumerable<string> CodesOf(string yaml) => ModelReader.Read("sample.yaml", Sample.Whole(yaml)) switch
    {
        ModelReading.Refused refused => refused.Mistakes.Select(m => m.Code),
        ModelReading.Read read => read.Notes.Select(m => m.Code),
        _ => [],
    };

    [GeneratedRegex("```yaml\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex YamlBlock();

    [GeneratedRegex("```budget\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex BudgetBlock();

    [GeneratedRegex("""[,?:] "([a-z]+(?:-[a-z]+)+|alias|tab|tag|circle)"\)""")]
    private static partial Regex Code();
}
