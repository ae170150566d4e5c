using System.Globalization;
using Ramwright.Metrology.Screens;

namespace Ramwright.Metrology.Text;

/// <summary>What a screen found, in words.</summary>
public static class ScreenText
{
    /// <summary>One sentence: what stands out, by which screen, how likely by chance, and what it may be.</summary>
    /// <param name="finding">Flagged or not.</param>
    /// <param name="reading">What one reading is called, such as <c>run</c>.</param>
    public static string Explain(ScreenFinding finding, string reading = "reading")
    {
        ArgumentNullException.ThrowIfNull(finding);
        var chance = Chance(finding.Adjusted);
        return finding.Screen switch
        {
            Screen.Apart => $"{reading} {Numbers(finding)} lies apart from the others (Grubbs, {chance}); it counts unless a cause is recorded",
            Screen.SeveralApart => $"{(finding.Readings.Length == 1 ? reading : reading + "s")} {Numbers(finding)} {(finding.Readings.Length == 1 ? "lies" : "lie")} apart (generalized ESD, {chance}); {(finding.Readings.Length == 1 ? "it counts" : "they count")} unless a cause is recorded",
            Screen.Trend => $"the {reading}s {(finding.Rises ? "climb" : "fall")} in the order taken (Mann–Kendall, {chance}): warm-up, or something giving way",
            Screen.Neighbours => finding.Rises
                ? $"each {reading} resembles the one before (von Neumann, {chance}): something wanders, such as oil warming or a reading not let settle"
                : $"the {reading}s go up and down by turns (von Neumann, {chance}): look at rests between them, or at two ways of reading",
            Screen.Jump => $"{reading} {Numbers(finding)} is far out against the steps from one to the next (individuals chart, {chance})",
            Screen.Drift => $"the level moves {(finding.Rises ? "up" : "down")}, most by {reading} {Numbers(finding)} (EWMA, {chance})",
            _ => $"the {reading}s are not spread as normal ones are (Shapiro–Wilk, {chance}): the claim rests on a normal scatter",
        };
    }

    private static string Numbers(ScreenFinding finding) => string.Join(", ", finding.Readings.Select(i => (i + 1).ToString(CultureInfo.InvariantCulture)));

    private static string Chance(double p) => p < 0.001 ? "less than 0.1 % by chance" : string.Create(CultureInfo.InvariantCulture, $"{100 * p:0.0} % by chance");
}
