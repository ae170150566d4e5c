using System.Text;
using System.Text.RegularExpressions;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Budgets;

namespace Ramwright.ServiceModels.Tests.Budgets;

/// <summary>docs/reference/uncertainty-budget.md says what the reader reads.</summary>
public sealed partial class BudgetPageTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(Repository.Folder("docs"), "reference", "uncertainty-budget.md"));

    [Fact]
    public void Its_sample_reads()
    {
        var read = BudgetReader.Read("page.yaml", Encoding.UTF8.GetBytes(Sample().Match(Page).Groups[1].Value));
        Assert.True(read is BudgetReading.Read, read is BudgetReading.Refused refused ? MistakeText.Write(refused.Mistakes) : "");
    }

    [Fact]
    public void It_lists_every_unit_and_no_other()
    {
        var section = Page[Page.IndexOf("## Units", StringComparison.Ordinal)..Page.IndexOf("## The answer", StringComparison.Ordinal)];
        var listed = section.Split('\n').Where(l => l.StartsWith("| ", StringComparison.Ordinal)).Skip(1).SelectMany(l => l.Split('|')[2].Split([',', ';'], StringSplitOptions.TrimEntries)).ToList();
        Assert.Equal(UnitTable.All.Select(u => u.Symbol).Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
    }

    [GeneratedRegex("```budget\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Sample();
}
