using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;

namespace Ramwright.Proving.Text;

/// <summary>Reasons in words.</summary>
public static class ReasonText
{
    /// <summary>One sentence without a full stop, lower case at the start; every figure with its unit.</summary>
    public static string Of(Reason reason, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(reason);
        string Show(Pressure p) => QuantityText.Show(p, units);
        return reason switch
        {
            Reason.RunOutside r => Text(
                $"run {r.Run} read {Show(r.Peak)}, {Beyond(r.Side)} the {SideText.Limit(r.Side)}, {Show(r.Limit)}, by more than {Show(r.Uncertainty)}, what that reading may be off"),
            Reason.ShareTooSmall r => Text(
                $"at most {ShareText.AtMost(r.ShareAtMost)} of full runs lie {SideText.RightSide(r.Side)} {Show(r.MovedOutward)}, the {SideText.Limit(r.Side)} moved outward by what the device may be off"),
            Reason.BothClaimsHold => "both claims hold, and all planned runs are there",
            Reason.IntervalInside => "the two-sided interval lies inside the guarded limits, and all planned runs are there",
            Reason.EveryRunInside => "every planned run lies inside the guarded limits",
            Reason.NoRun => "no run was taken",
            Reason.TooFewRuns r => Text($"{r.Taken} of {r.Planned} planned runs {(r.Taken == 1 ? "is" : "are")} there"),
            Reason.CentreOff r => Text($"the mean, {Show(r.Mean)}, lies off the middle; set it towards {Show(r.Aim)} and prove with a new series"),
            Reason.ScatterTooLarge r => Text(
                $"the scatter is too large for this number of runs: standard deviation {Show(r.StandardDeviation)}, at most {Floor(r.LargestThatPasses, units)} would pass"),
            Reason.DeviceTooCoarse r => Text(
                $"the device is too coarse: what it may be off takes {Show(r.GuardsTogether)} of a window of {Show(r.Window)}"),
            Reason.ExtensionDue r => Text(
                $"{r.MoreRuns} more {(r.MoreRuns == 1 ? "run is" : "runs are")} due, as declared before the series opened; they {Decide(r.Chance)} ({ShareText.About(r.Chance)} that they do)"),
            Reason.LongerSeriesWouldDecide r => Text($"a new series of {r.Runs} runs would probably decide ({ShareText.About(r.Chance)})"),
            Reason.NoSeriesWouldDecide r => Text($"no new series of up to {r.Tried} runs would probably decide; the scatter itself must come down, or the mean lie better"),
            Reason.EqualReadings r => Text($"all readings are {Show(r.Value)}: the steps of the device hide the scatter; state its resolution or read with finer steps"),
            Reason.RunInGuard r => Text(
                $"run {r.Run} read {Show(r.Peak)}, {Beyond(r.Side)} {Show(r.Guarded)}, the {SideText.Limit(r.Side)} moved inward by what that reading may be off"),
            Reason.RuleNotMet r => Text($"the rule of this model is not met: {Rule(r.Rule)}"),
            _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "This reason has no words yet."),
        };
    }

    /// <summary>The reason in a few words, for a headline; no figure that the lines below repeat.</summary>
    internal static string Short(Reason reason, Verdict verdict) => reason switch
    {
        Reason.RunOutside r => Text($"run {r.Run} lies {Beyond(r.Side)} the {SideText.Limit(r.Side)}"),
        Reason.ShareTooSmall r => Text($"too few full runs lie {SideText.RightSide(r.Side)} the {SideText.Limit(r.Side)}"),
        Reason.BothClaimsHold => "both claims hold",
        Reason.IntervalInside => "the two-sided interval lies inside the guarded limits",
        Reason.EveryRunInside => "every run lies inside the guarded limits",
        Reason.NoRun => "no run was taken",
        Reason.TooFewRuns r => Text($"{r.Taken} of {r.Planned} planned runs {(r.Taken == 1 ? "is" : "are")} there"),
        Reason.CentreOff => "the mean lies off the middle: set it",
        Reason.ScatterTooLarge => Text($"the scatter is too large for {verdict.Runs} runs"),
        Reason.DeviceTooCoarse => "the device is too coarse for these limits",
        Reason.EqualReadings => "all readings are equal, so the scatter is hidden",
        Reason.ExtensionDue r => Text($"{r.MoreRuns} more {(r.MoreRuns == 1 ? "run is" : "runs are")} due"),
        Reason.RunInGuard r => Text($"run {r.Run} lies too near the {SideText.Limit(r.Side)}"),
        _ => "the rule is not met",
    };

    private static string Decide(double chance) => chance switch
    {
        >= 0.6 => "will probably decide",
        < 0.4 => "will probably not decide",
        _ => "may decide or not",
    };

    private static string Beyond(LimitSide side) => side == LimitSide.Lower ? "below" : "above";

    private static string Rule(string rule) => rule switch
    {
        "two-sided-interval" => "the two-sided interval must lie inside the guarded limits",
        _ => rule,
    };

    private static string Floor(Pressure p, UnitSystem units) // rounded down: at most this
    {
        var step = units == UnitSystem.Metric ? 1e4 : ImperialUnits.PascalsPerPsi;
        return QuantityText.Show(Pressure.FromPascals(Math.Floor(p.Pascals / step) * step), units);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
