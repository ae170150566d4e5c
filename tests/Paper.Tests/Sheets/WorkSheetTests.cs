using Ramwright.Metrology.Text;
using Ramwright.Paper.Sheets;
using Ramwright.Paper.Tests.Saltmarsh;

namespace Ramwright.Paper.Tests.Sheets;

public sealed class WorkSheetTests
{
    private static readonly Lazy<string> Shared = new(() => Run.Text(WorkSheet.Render(Works.Sheet, PaperSize.A4, UnitSystem.Metric)));

    [Theory]
    [InlineData("Work sheet: strip and rebuild")]
    [InlineData("Renew the ram seals: oil at the cap.")]
    [InlineData("8.5 min")]
    [InlineData("safe 11.4 min")]
    [InlineData("Make safe first: battery out, pressure released.")]
    [InlineData("Unscrew the cap nut")]
    [InlineData("left-hand thread: clockwise loosens · breakaway 85 N·m")]
    [InlineData("hook wrench 62 mm (made here)")]
    [InlineData("upright in the vice, soft jaws")]
    [InlineData("In the way of ram, ram seal.")]
    [InlineData("Renew: wiper (does not survive)")]
    [InlineData("Renew: ram seal × 2 (disturbed)")]
    [InlineData("Inspect: Draw a fingernail along the rod.")]
    [InlineData("Use again: no edge is felt and the chrome is whole; rod diameter at least 24.95 mm.")]
    [InlineData("C85-3111")]
    [InlineData("85 N·m ± 5 % (80.8..89.3 N·m)")]
    [InlineData("left-hand thread: anticlockwise tightens · thread grease")]
    [InlineData("lip towards the pressure")]
    [InlineData("New: ram seal")]
    [InlineData("oil, 95 ml")]
    [InlineData("In the kits, but not for this tool: grey back-up ring (made for the older gland).")]
    [InlineData("An injection injury is an emergency at once")]
    [InlineData("maker's instructions, local codes and licensed practice come first")]
    public void Says(string words) => Assert.Contains(words, Shared.Value, StringComparison.Ordinal);

    [Fact]
    public void Puts_the_caution_before_the_step_it_guards()
    {
        var caution = Shared.Value.IndexOf("1,450 N push the ram out", StringComparison.Ordinal);
        Assert.InRange(caution, 0, Shared.Value.IndexOf("Unscrew the cap nut", StringComparison.Ordinal));
        Assert.StartsWith("Warning. 1,450", Shared.Value[(caution - 9)..], StringComparison.Ordinal);
    }

    [Fact]
    public void Breaks_a_long_plan_over_pages_and_pauses_after_seven_steps()
    {
        var pdf = WorkSheet.Render(Works.Sheet with { Strip = Works.Long(60), Rebuild = null }, PaperSize.Letter, UnitSystem.Imperial);
        var pages = Run.Pages(pdf);
        Assert.InRange(pages, 5, 9);
        var text = Run.Text(pdf);
        for (var i = 1; i <= pages; i++)
            Assert.Contains($"{i} of {pages}", text, StringComparison.Ordinal);
        for (var i = 1; i <= 60; i++)
            Assert.Contains($"piece {i} of the long row", text, StringComparison.Ordinal);
        Assert.Contains("Pause. Steps 1 to 7 done", text, StringComparison.Ordinal);
        Assert.Contains("Pause. Steps 50 to 56 done", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Needs_a_plan() =>
        Assert.Throws<ArgumentException>(() => WorkSheet.Render(Works.Sheet with { Strip = null, Rebuild = null }, PaperSize.A4, UnitSystem.Metric));
}
