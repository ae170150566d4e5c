using System.Globalization;
using Ramwright.Metrology.Text;

namespace Ramwright.Proving.Text;

/// <summary>Whose scatter the claims rest on, in words.</summary>
internal static class ScatterText
{
    /// <summary>The line under a verdict; null where the claims simply rest on the standard deviation shown.</summary>
    public static string? Line(Verdict verdict, ProofSeries series, UnitSystem units)
    {
        if (verdict.ScatterUsed is not { } used || verdict.StandardDeviation is not { } own)
            return null;
        var shown = QuantityText.Show(used, units);
        if (verdict.Moderation is not { Moderated: { } moderated } by)
            return used.Pascals > own.Pascals ? Text($"the steps of the readings may hide scatter: the claims rest on {shown} instead") : null;
        var tools = Text($"{by.Series} earlier series (typical tool {QuantityText.Show(by.Typical, units)})");
        var factor = Text($"factor {verdict.OneSidedFactor:0.00}");
        return used.Pascals > moderated.Pascals
            ? Text($"scatter of this tool's own, {shown}: it is larger than moderated by {tools}, {QuantityText.Show(moderated, units)}; {factor}")
            : Text($"scatter moderated by {tools}: {shown}; {factor}");
    }

    /// <summary>What stands before the rule of decision where the tool's own scatter in one look is not all.</summary>
    public static string Rule(Declared declared) => declared switch
    {
        Declared.Moderated m => Text(
            $"The scatter is this tool's own moderated by {m.Earlier.Series.Length} earlier series of the model; where its own is larger, its own counts. "),
        Declared.Extension e => Text(
            $"Declared before the series opened: {e.MoreRuns} more runs if and only if the planned ones leave it undecided, then all runs together decide; the confidence is that of both looks together. "),
        _ => "",
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
