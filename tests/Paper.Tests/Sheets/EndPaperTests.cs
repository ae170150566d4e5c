using Ramwright.Metrology.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Tests.Saltmarsh;

namespace Ramwright.Paper.Tests.Sheets;

public sealed class EndPaperTests
{
    internal static EndPaperInput Input(EndKind kind) => new()
    {
        Number = "SM-0409-E1",
        House = House.Header,
        Job = House.Job,
        Kind = kind,
        Why = "the customer said no to the quote SM-0409-Q1",
        SentTo = kind == EndKind.SentOut ? "Skerry" : null,
        Found = ["oil at the cap: the ram seal leaks"],
        Done = ["checks only, nothing opened"],
        StateOfTool = ["assembled", "battery apart, contacts covered"],
        Ended = new(2026, 11, 26),
        SignedBy = House.Lead,
        Ledger = House.Ledger,
    };

    [Theory]
    [InlineData(EndKind.ReturnedUnrepaired, "Do not use it until it has been repaired and proven.")]
    [InlineData(EndKind.Retired, "It must not be used again")]
    [InlineData(EndKind.NotProven, "could not be shown to keep its limits")]
    [InlineData(EndKind.SentOut, "sent out to Skerry")]
    public void Each_end_says_what_it_means_on_one_page(EndKind kind, string words)
    {
        var pdf = EndPaper.Render(Input(kind), PaperSize.A4, UnitSystem.Metric);
        var text = Run.Text(pdf);
        Assert.Contains(words, text, StringComparison.Ordinal);
        Assert.Contains("The customer said no to the quote SM-0409-Q1.", text, StringComparison.Ordinal);
        Assert.Contains("battery apart, contacts covered", text, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(1, Run.Pages(pdf));
        Assert.DoesNotContain("conforms", text, StringComparison.Ordinal);
    }
}
