using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>Strip and rebuild plans as programs read them: minutes as numbers, money beside its currency.</summary>
internal static class PlanJson
{
    public static JsonObject Of(StripJob job, StripPlan plan) => new()
    {
        ["model"] = job.Model.Tool.Id,
        ["targets"] = Ids(job.Targets),
        ["steps"] = new JsonArray([.. plan.Steps.Select(Step)]),
        ["totalMinutes"] = Minutes(plan.LikelyTime),
        ["safeMinutes"] = Minutes(plan.SafeTime),
        ["totalCost"] = plan.Cost.Amount,
        ["currency"] = plan.Cost.Currency,
        ["costParts"] = new JsonObject
        {
            ["labour"] = plan.CostParts.Labour.Amount,
            ["renewals"] = plan.CostParts.Renewals.Amount,
            ["risk"] = plan.CostParts.Risk.Amount,
        },
        ["provenOptimal"] = plan.ProvenOptimal,
        ["gap"] = plan.Gap.Amount,
        ["renew"] = new JsonArray([.. plan.Renewals.Select(Renew)]),
        ["inspections"] = new JsonArray([.. plan.Inspections.Select(i => new JsonObject { ["part"] = i.Part.Value, ["inspection"] = i.Inspection.Value, ["afterStep"] = i.AfterStep + 1 })]),
        ["tooling"] = new JsonArray([.. plan.Tools.Select(t => JsonValue.Create(t.Value))]),
        ["states"] = Ids(plan.States),
        ["oilLostMillilitres"] = plan.OilLost.Millilitres,
        ["statesSearched"] = plan.StatesSearched,
    };

    public static JsonObject Of(RebuildAnswer answer) => answer switch
    {
        RebuildAnswer.Planned { Plan: var plan } => new JsonObject
        {
            ["steps"] = new JsonArray([.. plan.Steps.Select(s => new JsonObject
            {
                ["kind"] = Kebab.Of(s.Kind),
                ["part"] = s.Node?.Value,
                ["unit"] = s.Unit?.Value,
                ["parts"] = Ids(s.Parts),
                ["operation"] = s.Operation,
                ["tool"] = s.Tool?.Value,
                ["posture"] = s.Posture?.Value,
                ["minutes"] = Minutes(s.Time + s.ChangeTime),
                ["torqueNewtonMetres"] = s.Torque?.Torque.NewtonMetres,
                ["torqueTolerance"] = s.Torque?.Tolerance,
                ["newParts"] = Ids(s.NewParts),
            })]),
            ["totalMinutes"] = Minutes(plan.LikelyTime),
            ["safeMinutes"] = Minutes(plan.SafeTime),
        },
        RebuildAnswer.Circle circle => new JsonObject { ["circle"] = Ids(circle.Nodes) },
        _ => [],
    };

    /// <summary>The rebuild that follows a strip plan carried out whole.</summary>
    public static RebuildJob RebuildOf(StripJob job, StripPlan plan) => new()
    {
        Model = job.Model,
        Rates = job.Rates,
        Done = job.Done.Union(plan.Steps.Select(s => s.Node)),
        Renewals = plan.Renewals,
        WaysUsed = plan.Steps.Where(s => s.Way is not null).ToImmutableDictionary(s => s.Node, s => s.Way!.Value),
    };

    private static JsonObject Step(StripStep step) => new()
    {
        ["part"] = step.Node.Value,
        ["operation"] = step.Operation,
        ["tool"] = step.Tool?.Value,
        ["posture"] = step.Posture?.Value,
        ["minutes"] = Minutes(step.Time + step.ChangeTime),
        ["wayOff"] = step.Way is { } way ? way + 1 : null,
        ["why"] = step.Why is StepReason.InTheWayOf inTheWay ? Ids(inTheWay.Nodes) : JsonValue.Create("target"),
        ["cautions"] = new JsonArray([.. step.Cautions.Select(c => new JsonObject { ["level"] = c.Level.ToString().ToLowerInvariant(), ["hazard"] = c.Hazard, ["text"] = c.Text })]),
    };

    private static JsonObject Renew(Renewal renewal) => new()
    {
        ["part"] = renewal.Part.Value,
        ["count"] = renewal.Count,
        ["cause"] = Kebab.Of(renewal.Cause),
        ["by"] = renewal.By?.Value,
    };

    private static JsonArray Ids(IEnumerable<NodeId> ids) => new([.. ids.Select(i => JsonValue.Create(i.Value))]);

    private static double Minutes(TimeSpan time) => Math.Round(time.TotalMinutes, 6);
}
