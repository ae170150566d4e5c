using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Proving.Text;

/// <summary>A verdict in words: the answer first, what it rests on under it.</summary>
public static class VerdictText
{
    /// <summary><c>conforms</c>, <c>does not conform</c> or <c>undecided</c>.</summary>
    public static string Word(Conformity conformity) => conformity switch
    {
        Conformity.Conforms => "conforms",
        Conformity.DoesNotConform => "does not conform",
        _ => "undecided",
    };

    /// <summary>The answer and its main reason: <c>undecided: the scatter is too large for 12 runs</c>.</summary>
    public static string Headline(Verdict verdict, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        return Word(verdict.Conformity) + ": " + (verdict.Reasons.IsDefaultOrEmpty ? "no reason given" : ReasonText.Short(verdict.Reasons[0], verdict));
    }

    /// <summary>The lines under the headline: figures, claims, reasons, flags; each without a full stop.</summary>
    public static ImmutableArray<string> Lines(Verdict verdict, ProofSeries series, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        ArgumentNullException.ThrowIfNull(series);
        var lines = ImmutableArray.CreateBuilder<string>();
        lines.Add(Figures(verdict, units) + "; " + Limits(verdict, series, units));
        if (ScatterText.Line(verdict, series, units) is { } scatter)
            lines.Add(scatter);
        if (verdict.ConfidenceOfEachLook is { } each)
            lines.Add(Text($"looked at twice, as declared before the series opened: each look asks {ShareText.Percent(each, 2)} confidence, so that both together keep {ShareText.Percent(series.Confidence, 2)}"));
        if (series.Rule != DecisionRule.EveryRunGuarded && verdict.ScatterUsed is not null)
            lines.AddRange(verdict.Claims.Select(c => Claim(c, series, units)));
        lines.AddRange(verdict.Reasons.Where(r => r is not Reason.BothClaimsHold).Select(r => ReasonText.Of(r, units)));
        lines.AddRange(verdict.Flags.Select(f => "flag: " + f.Text));
        return lines.ToImmutable();
    }

    /// <summary>What was declared before the series opened, where it is more than the number of runs; empty otherwise, else it ends with a blank.</summary>
    public static string DeclaredSentence(Declared declared) => ScatterText.Rule(declared);

    /// <summary>The rule of decision in words, as a report states it.</summary>
    public static string RuleSentence(ProofSeries series, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(series);
        var share = Text($"{ShareText.Percent(series.Coverage, 2)} of full runs");
        var confidence = Text($"with {ShareText.Percent(series.Confidence, 2)} confidence");
        return series.Rule switch
        {
            DecisionRule.EveryRunGuarded =>
                "Conforms when all planned runs lie inside the limits moved inward by the expanded uncertainty (k = 2) of one reading. "
                + "Does not conform when a run lies beyond a limit by more than that. Else undecided.",
            DecisionRule.TwoSidedInterval => Text(
                $"Conforms when all planned runs are there and the exact two-sided tolerance interval (ISO 16269-6), which {confidence} holds {share}, lies inside the limits moved inward by the expanded systematic uncertainty (k = 2). Does not conform when a run lies beyond a limit by more than its expanded uncertainty, or when {confidence} fewer than {share} lie on the right side of a limit moved outward. Else undecided."),
            _ => ScatterText.Rule(series.Declared) + Text(
                $"Conforms when all planned runs are there and for each limit, moved inward by the expanded systematic uncertainty (k = 2), {confidence} at least {share} lie on its right side ({(series.Declared is Declared.Moderated ? "one-sided tolerance bound" : "exact one-sided tolerance bound")}). Does not conform when a run lies beyond a limit by more than its expanded uncertainty, or when {confidence} fewer than {share} lie on the right side of a limit moved outward. Else undecided."),
        };
    }

    private static string Figures(Verdict verdict, UnitSystem units)
    {
        if (verdict.Mean is not { } mean)
            return Text($"no run of {verdict.PlannedRuns}");
        var runs = verdict.Runs == verdict.PlannedRuns ? Text($"{verdict.Runs} runs") : Text($"{verdict.Runs} of {verdict.PlannedRuns} runs");
        return verdict.StandardDeviation is { } s
            ? Text($"{runs}, mean {QuantityText.Show(mean, units)}, standard deviation {QuantityText.Show(s, units)}")
            : Text($"{runs}, {QuantityText.Show(mean, units)}");
    }

    private static string Limits(Verdict verdict, ProofSeries series, UnitSystem units)
    {
        var limits = "limits " + QuantityText.Show(series.Limits, units);
        var (below, above) = (series.Systematic.BelowLimit, series.Systematic.AboveLimit);
        if (below.Pascals == 0 && above.Pascals == 0)
            return limits + ", nothing taken off for the device";
        var guarded = verdict.GuardLow < verdict.GuardHigh
            ? QuantityText.Show(new PressureWindow(verdict.GuardLow, verdict.GuardHigh), units)
            : "nothing left";
        return QuantityText.Show(below, units) == QuantityText.Show(above, units)
            ? Text($"{limits}, {guarded} after {QuantityText.Show(below, units)} for what the device may be off")
            : Text($"{limits}, {guarded} after {QuantityText.Show(below, units)} at the lower and {QuantityText.Show(above, units)} at the upper limit for what the device may be off");
    }

    private static string Claim(LimitClaim claim, ProofSeries series, UnitSystem units)
    {
        var asked = ShareText.Percent(series.Coverage, 2);
        return Text(
            $"{SideText.RightSide(claim.Side)} {QuantityText.Show(claim.Guarded, units)}: with {ShareText.Percent(series.Confidence, 2)} confidence at least {ShareText.AtLeast(claim.ShareShown)} of full runs; {asked} is asked{(claim.Holds ? ": holds" : "")}");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
