using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Proving;
using Ramwright.Proving.Text;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Paper.Sheets.Proof;

/// <summary>The verdict and the rule it was reached by, in sentences with their figures.</summary>
internal static class DecisionWords
{
    /// <summary>What the verdict says, under its mark.</summary>
    public static string Answer(ProofReportInput input, UnitSystem units)
    {
        var (series, verdict) = (input.Series, input.Verdict);
        if (verdict.Conformity == Conformity.Conforms && series.Rule == DecisionRule.OneSidedPerLimit)
        {
            var (share, confidence) = (SheetText.Percent(series.Coverage), SheetText.Percent(series.Confidence));
            return $"With {confidence} confidence, at least {share} of full runs stay above {Show(series.Limits.Min, units)}, and at least {share} stay below {Show(series.Limits.Max, units)}, after {Moved(series, units)} for what the device may be off.";
        }

        return string.Join(" ", verdict.Reasons.Select(r => SheetText.Sentence(ReasonText.Of(r, units))));
    }

    /// <summary>By how much each limit was moved inward: <c>4 bar on each side</c>.</summary>
    public static string Moved(ProofSeries series, UnitSystem units)
    {
        var (low, high) = (Show(series.Systematic.BelowLimit, units), Show(series.Systematic.AboveLimit, units));
        return low == high ? $"{low} on each side" : $"{low} at the lower and {high} at the upper limit";
    }

    public static string Rule(ProofReportInput input)
    {
        var series = input.Series;
        var (share, confidence) = (SheetText.Percent(series.Coverage), SheetText.Percent(series.Confidence));
        var wrong = SheetText.Percent(1 - series.Confidence);
        var factor = input.Verdict.OneSidedFactor is { } k ? $"In figures: the mean keeps at least k\u00a0=\u00a0{SheetText.Factor(k)} standard deviations from each moved limit ({From(input.Verdict)}, n\u00a0=\u00a0{input.Verdict.Runs}). " : "";
        var main = series.Rule switch
        {
            DecisionRule.TwoSidedInterval =>
                $"The tool conforms when the two-sided statistical tolerance interval (coverage {share}, confidence {confidence}, ISO 16269-6) lies inside both limits, each moved inward by what the device may be off (systematic uncertainty, k = 2). ",
            DecisionRule.EveryRunGuarded =>
                "The tool conforms when every planned run lies inside both limits, each moved inward by what one reading may be off (expanded uncertainty, k = 2). No claim is made about later runs. ",
            _ => VerdictText.DeclaredSentence(series.Declared) +
                $"The tool conforms when for each limit it is shown with {confidence} confidence that at least {share} of full runs lie on its right side, after the limit has been moved inward by what the device may be off (systematic uncertainty, k = 2; the random part is in the scatter already). {factor}"
                + $"By this rule at most {wrong} of the tools that miss a limit so moved are called conforming. ",
        };
        return main
            + "It does not conform when a valid run lies beyond a limit by more than its total expanded uncertainty, or when beyond a limit moved outward the share is shown to be smaller than asked. Else it is undecided. "
            + "The number of runs was fixed before the first; none is added to pass, and a run is void only for a cause recorded apart from its value.";
    }

    public static string Scatter(Verdict verdict) => verdict.ScatterFrom == ScatterSource.Own ? "this tool's own" : "moderated by earlier series of the model";

    /// <summary>Where the factor comes from.</summary>
    private static string From(Verdict verdict) => verdict switch
    {
        { ScatterFrom: ScatterSource.Moderated } => "calibrated by the number of earlier series",
        { ConfidenceOfEachLook: { } each } => $"noncentral t, {SheetText.Percent(each, 2)} at each of two looks",
        _ => "noncentral t",
    };

    private static string Show(Pressure p, UnitSystem units) => QuantityText.Show(p, units);
}
