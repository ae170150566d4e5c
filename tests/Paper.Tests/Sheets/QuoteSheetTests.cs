using Ramwright.Metrology.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Tests.Saltmarsh;

namespace Ramwright.Paper.Tests.Sheets;

public sealed class QuoteSheetTests
{
    private static readonly Lazy<string> Shared = new(() => Run.Text(QuoteSheet.Render(Quotes.Sheet, PaperSize.A4, UnitSystem.Metric)));

    [Theory]
    [InlineData("123.16 EUR")]
    [InlineData("358.19 EUR")]
    [InlineData("23 Dec 2026")]
    [InlineData("tax at 19 %")]
    [InlineData("Seal kit, ram end")]
    [InlineData("0.86 h")]
    [InlineData("Ram, where its rod is scored")]
    [InlineData("12 %")]
    [InlineData("197.50")]
    [InlineData("127.20")]
    [InlineData("Not firm for these parts")]
    [InlineData("C85-3112")]
    [InlineData("Yes: do the work of the firm part, and what inspection asks for up to the sum not to be exceeded.")]
    [InlineData("No: send the tool back unrepaired.")]
    [InlineData("No: retire the tool.")]
    [InlineData("4 Samphire Quay")]
    [InlineData("Your reference: SP 77-14")]
    public void Says(string words) => Assert.Contains(words, Shared.Value, StringComparison.Ordinal);

    [Fact]
    public void Says_when_nothing_depends_on_inspection()
    {
        var text = Run.Text(QuoteSheet.Render(Quotes.Sheet with { Quote = Quotes.Quote with { OnCondition = [], Unpriced = [] } }, PaperSize.Letter, UnitSystem.Metric));
        Assert.Contains("the firm part is all", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Not firm for these parts", text, StringComparison.Ordinal);
        Assert.DoesNotContain("ask again before anything on condition", text, StringComparison.Ordinal);
    }
}
