using System.Text.Json.Nodes;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Proving;
using Ramwright.Proving.Text;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>A verdict as programs read it; pressures in bar.</summary>
internal static class VerdictJson
{
    public static JsonObject Of(Verdict verdict, ProofSeries series) => new()
    {
        ["verdict"] = Word(verdict.Conformity),
        ["reasons"] = new JsonArray([.. verdict.Reasons.Select(r => new JsonObject { ["code"] = r.Code, ["text"] = ReasonText.Of(r, UnitSystem.Metric) })]),
        ["unit"] = "bar",
        ["n"] = verdict.Runs,
        ["plannedRuns"] = verdict.PlannedRuns,
        ["mean"] = Bar(verdict.Mean),
        ["standardDeviation"] = Bar(verdict.StandardDeviation),
        ["rule"] = series.Rule switch { DecisionRule.TwoSidedInterval => "interval", DecisionRule.EveryRunGuarded => "every-run", _ => "claims" },
        ["scatterFrom"] = verdict.ScatterFrom == ScatterSource.Own ? "own" : "moderated",
        ["scatterUsed"] = Bar(verdict.ScatterUsed),
        ["moderation"] = verdict.Moderation is { } by
            ? new JsonObject { ["earlierSeries"] = by.Series, ["typical"] = by.Typical.Bar, ["alikeDegrees"] = by.AlikeDegrees, ["moderated"] = Bar(by.Moderated) }
            : null,
        ["extension"] = series.Declared is Declared.Extension extension
            ? new JsonObject { ["moreRuns"] = extension.MoreRuns, ["confidenceOfEachLook"] = verdict.ConfidenceOfEachLook }
            : null,
        ["coverage"] = series.Coverage,
        ["confidence"] = series.Confidence,
        ["limitLow"] = series.Limits.Min.Bar,
        ["limitHigh"] = series.Limits.Max.Bar,
        ["guardLow"] = verdict.GuardLow.Bar,
        ["guardHigh"] = verdict.GuardHigh.Bar,
        ["claims"] = new JsonArray([.. verdict.Claims.Select(c => new JsonObject
        {
            ["side"] = c.Side == LimitSide.Lower ? "lower" : "upper",
            ["limit"] = c.Limit.Bar,
            ["guarded"] = c.Guarded.Bar,
            ["distanceInStandardDeviations"] = double.IsFinite(c.DistanceInS) ? c.DistanceInS : null,
            ["shareShown"] = c.ShareShown,
            ["holds"] = c.Holds,
        })]),
        ["oneSidedFactor"] = verdict.OneSidedFactor,
        ["toleranceFactor"] = verdict.ToleranceFactor,
        ["intervalLow"] = Bar(verdict.Interval?.Min),
        ["intervalHigh"] = Bar(verdict.Interval?.Max),
        ["flags"] = new JsonArray([.. verdict.Flags.Select(f => new JsonObject { ["code"] = f.Code, ["run"] = f.Run, ["pValue"] = f.PValue, ["text"] = f.Text })]),
    };

    public static string Word(Conformity conformity) => conformity switch
    {
        Conformity.Conforms => "conforms",
        Conformity.DoesNotConform => "does-not-conform",
        _ => "undecided",
    };

    private static JsonNode? Bar(Pressure? pressure) => pressure is { } p ? JsonValue.Create(p.Bar) : null;
}
