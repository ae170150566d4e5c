using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Paper.Sheets;
using Ramwright.Proving;
using Ramwright.Proving.Reference;
using Ramwright.Proving.Text;

namespace Ramwright.Paper.Signing;

/// <summary>A proof report as programs read it: <c>ramwright/proof-result/1</c>, signed. Pressures are gauge pressures in bar, uncertainties expanded with k = 2.</summary>
public static class ProofResult
{
    public const string Schema = "ramwright/proof-result/1";
    public const string FileName = "proof-result.json";

    /// <param name="code">The text of the code printed on the report.</param>
    public static byte[] Write(ProofReportInput input, string code, HouseKey key)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(key);
        return SignedJson.Write(Bare(new JsonObject
        {
            ["schema"] = Schema,
            ["report"] = Bare(new JsonObject
            {
                ["number"] = input.Number,
                ["replaces"] = input.Replaces,
                ["issued"] = Moment(input.Issued),
                ["tested"] = Day(input.Tested),
                ["house"] = input.House.Name,
                ["testedBy"] = input.TestedBy.Name,
                ["signatory"] = input.ReleasedBy.Name,
                ["signatoryRole"] = input.ReleasedBy.Role,
            }),
            ["job"] = Bare(new JsonObject
            {
                ["number"] = input.Job.Number,
                ["tool"] = input.Job.Tool,
                ["serial"] = input.Job.Serial,
                ["customer"] = input.Job.Customer,
                ["customerReference"] = input.Job.CustomerReference,
            }),
            ["unit"] = "bar",
            ["limits"] = new JsonObject { ["low"] = Bar(input.Series.Limits.Min), ["high"] = Bar(input.Series.Limits.Max), ["nominal"] = Bar(input.Limits.Nominal) },
            ["series"] = Series(input),
            ["verdict"] = Verdict(input.Verdict),
            ["device"] = Bare(new JsonObject
            {
                ["kind"] = input.Device.Kind,
                ["id"] = input.Device.Id,
                ["serial"] = input.Device.Serial,
                ["calibrated"] = Day(input.Device.Calibrated),
                ["calibrationDue"] = Day(input.Device.CalibrationDue),
                ["certificate"] = input.Device.Certificate,
            }),
            ["budget"] = new JsonArray([.. Budget(input.Reference)]),
            ["outputForce"] = input.OutputForce is { } force ? Force(force) : null,
            ["risk"] = input.Risk is { } risk ? Risk(risk) : null,
            ["asFound"] = new JsonArray([.. input.AsFound.Select(Run)]),
            ["ledger"] = new JsonObject { ["entry"] = input.Ledger.Entry, ["head"] = input.Ledger.Head },
            ["modelSha256"] = input.ModelFingerprint,
            ["code"] = code,
        }), key);
    }

    public static string Word(Conformity conformity) => conformity switch
    {
        Conformity.Conforms => "conforms",
        Conformity.DoesNotConform => "does-not-conform",
        _ => "undecided",
    };

    private static JsonObject Series(ProofReportInput input) => new()
    {
        ["plannedRuns"] = input.Series.PlannedRuns,
        ["coverage"] = input.Series.Coverage,
        ["confidence"] = input.Series.Confidence,
        ["rule"] = input.Series.Rule switch
        {
            ServiceModels.Model.DecisionRule.OneSidedPerLimit => "claims",
            ServiceModels.Model.DecisionRule.TwoSidedInterval => "interval",
            _ => "every-run",
        },
        ["systematicBelow"] = Bar(input.Series.Systematic.BelowLimit),
        ["systematicAbove"] = Bar(input.Series.Systematic.AboveLimit),
        ["runs"] = new JsonArray([.. input.Runs.Select(Run)]),
    };

    private static JsonObject Verdict(Verdict verdict) => Bare(new JsonObject
    {
        ["word"] = Word(verdict.Conformity),
        ["reasons"] = new JsonArray([.. verdict.Reasons.Select(r => new JsonObject { ["code"] = r.Code, ["text"] = ReasonText.Of(r, UnitSystem.Metric) })]),
        ["runs"] = verdict.Runs,
        ["mean"] = Bar(verdict.Mean),
        ["standardDeviation"] = Bar(verdict.StandardDeviation),
        ["scatterUsed"] = Bar(verdict.ScatterUsed),
        ["guardLow"] = Bar(verdict.GuardLow),
        ["guardHigh"] = Bar(verdict.GuardHigh),
        ["oneSidedFactor"] = verdict.OneSidedFactor is { } k && double.IsFinite(k) ? Math.Round(k, 6) : null,
        ["claims"] = new JsonArray([.. verdict.Claims.Select(c => new JsonObject { ["side"] = c.Side == LimitSide.Lower ? "lower" : "upper", ["guarded"] = Bar(c.Guarded), ["shareShown"] = Math.Round(c.ShareShown, 9), ["holds"] = c.Holds })]),
    });

    /// <summary>Every contribution expanded, and the capture, which moves the upper limit alone.</summary>
    private static IEnumerable<JsonNode> Budget(ReferenceBudget? budget)
    {
        if (budget is null)
            yield break;
        foreach (var line in budget.Lines)
        {
            var expanded = Bar((line.Effect == Effect.Random ? 2 : budget.Factor) * line.Standard);
            yield return Bare(new JsonObject
            {
                ["name"] = line.What,
                ["below"] = expanded,
                ["above"] = expanded!.DeepClone(),
                ["random"] = line.Effect == Effect.Random,
                ["shape"] = JsonNamingPolicy.KebabCaseLower.ConvertName(line.Shape.ToString()),
                ["standard"] = Bar(line.Standard),
                ["degreesOfFreedom"] = line.DegreesOfFreedom is { } df ? Math.Round(df, 2) : null,
            });
        }

        yield return new JsonObject { ["name"] = "peak capture", ["below"] = Bar(Pressure.FromBar(0)), ["above"] = Bar(budget.Capture), ["random"] = false };
    }

    private static JsonObject Force(ProofForce force) => new()
    {
        ["newtons"] = Math.Round(force.Estimate.Newtons, 1),
        ["expandedNewtons"] = Math.Round(force.Expanded.Newtons, 1),
        ["lowNewtons"] = Math.Round(force.Low.Newtons, 1),
        ["highNewtons"] = Math.Round(force.High.Newtons, 1),
        ["agree"] = force.Agree,
    };

    private static JsonObject Risk(ProofRisk risk) => Bare(new JsonObject
    {
        ["mean"] = Bar(risk.Mean),
        ["standard"] = Bar(risk.Standard),
        ["conformance"] = Math.Round(risk.Conformance, 9),
        ["specificFalseAccept"] = Math.Round(risk.SpecificFalseAccept, 9),
        ["globalFalseAccept"] = risk.Global is { } accept ? Math.Round(accept.FalseAccept, 9) : null,
        ["globalFalseReject"] = risk.Global is { } reject ? Math.Round(reject.FalseReject, 9) : null,
    });

    private static JsonObject Run(RunLine run) => Bare(new JsonObject { ["run"] = run.Number, ["peak"] = Bar(run.Peak), ["at"] = run.At is { } at ? Moment(at) : null, ["voidCause"] = run.VoidCause });

    /// <summary>What is not known is left out, not written as null.</summary>
    private static JsonObject Bare(JsonObject json)
    {
        foreach (var name in json.Where(m => m.Value is null).Select(m => m.Key).ToList())
            json.Remove(name);
        return json;
    }

    /// <summary>To a pascal, ten times finer than any device here shows.</summary>
    private static JsonNode? Bar(Pressure? pressure) => pressure is { } p ? JsonValue.Create(Math.Round(p.Bar, 5)) : null;

    private static string? Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Moment(DateTimeOffset at) => at.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture);
}
