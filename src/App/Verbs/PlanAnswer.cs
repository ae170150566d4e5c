using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.Metrology.Text;
using Ramwright.Planning.Rebuild;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary>A strip plan as text for people and as an object for programs.</summary>
internal static class PlanAnswer
{
    public static Answer Of(StripJob job, StripPlan plan, bool withRebuild)
    {
        var text = new StringBuilder();
        var json = PlanJson.Of(job, plan);
        AppendHead(text, job, plan);
        for (var i = 0; i < plan.Steps.Length; i++)
            AppendStep(text, job.Model, plan.Steps[i], i + 1);
        AppendFoot(text, job.Model, plan);
        if (withRebuild)
            AppendRebuild(text, json, job, plan);
        return new Answer(plan.ProvenOptimal ? Exit.Yes : Exit.Undecided, text.ToString().TrimEnd(), json);
    }

    public static Answer NoWay(StripJob job, StripAnswer.NoWay none)
    {
        var text = new StringBuilder("no way off exists\n");
        foreach (var target in none.Targets)
            text.Append(CultureInfo.InvariantCulture, $"  {job.Model.NameOf(target.Target)} ({target.Target}): nothing frees {string.Join(", ", target.Lacking)}\n");
        return new Answer(Exit.No, text.ToString().TrimEnd(), new JsonObject
        {
            ["model"] = job.Model.Tool.Id,
            ["unreachable"] = new JsonArray([.. none.Targets.Select(t => new JsonObject
            {
                ["part"] = t.Target.Value,
                ["lacking"] = new JsonArray([.. t.Lacking.Select(l => JsonValue.Create(l.Value))]),
            })]),
        });
    }

    private static void AppendHead(StringBuilder text, StripJob job, StripPlan plan)
    {
        var proven = plan.ProvenOptimal ? "proven cheapest" : $"best so far, at most {plan.Gap.Rounded()} above the cheapest, not proven";
        text.Append(CultureInfo.InvariantCulture, $"{plan.Steps.Length} steps, likely {Minutes(plan.LikelyTime)}, safe {Minutes(plan.SafeTime)} (nine times of ten), {plan.Cost.Rounded()}: {proven}\n");
        text.Append(CultureInfo.InvariantCulture, $"  labour {plan.CostParts.Labour.Rounded()}, renewals {plan.CostParts.Renewals.Rounded()}, risk {plan.CostParts.Risk.Rounded()}; {job.Model.Tool.Name}, to free {string.Join(", ", job.Targets.Select(job.Model.NameOf))}\n\n");
    }

    private static void AppendStep(StringBuilder text, ServiceModel model, StripStep step, int number)
    {
        foreach (var caution in step.Cautions)
            text.Append(CultureInfo.InvariantCulture, $"    ! {caution.Level.ToString().ToLowerInvariant()}: {caution.Text}\n");
        var tool = step.Tool is { } id ? $", {model.FindTool(id)?.Name ?? id.Value}" : "";
        var posture = step.Posture is { } p ? $", {model.Postures.FirstOrDefault(x => x.Id == p)?.Name ?? p.Value}" : "";
        text.Append(CultureInfo.InvariantCulture, $"{number,3}  {step.Operation}{tool}{posture}, {Minutes(step.Time + step.ChangeTime)}\n");
        text.Append("     why: ").Append(Why(model, step)).Append('\n');
        foreach (var renewal in step.Renewals)
            text.Append(CultureInfo.InvariantCulture, $"     renew: {renewal.Count} × {model.NameOf(renewal.Part)} ({Cause(renewal.Cause)})\n");
        foreach (var inspection in step.Inspections)
        {
            if (model.Parts.SelectMany(p => p.Inspections).FirstOrDefault(x => x.Id == inspection) is { } look)
                text.Append(CultureInfo.InvariantCulture, $"     inspect: {look.Look}; reuse: {look.Reuse}\n");
        }
    }

    private static void AppendFoot(StringBuilder text, ServiceModel model, StripPlan plan)
    {
        text.Append("\ntools: ").Append(plan.Tools.IsEmpty ? "none" : string.Join(", ", plan.Tools.Select(t => model.FindTool(t)?.Name ?? t.Value))).Append('\n');
        if (plan.OilLost.CubicMetres > 0)
            text.Append("oil lost: ").Append(QuantityText.Show(plan.OilLost, UnitSystem.Metric)).Append('\n');
        text.Append("The maker's instructions, local codes and licensed practice come first.\n");
    }

    private static void AppendRebuild(StringBuilder text, JsonObject json, StripJob job, StripPlan plan)
    {
        var rebuild = RebuildPlanner.Plan(PlanJson.RebuildOf(job, plan));
        json["rebuild"] = PlanJson.Of(rebuild);
        if (rebuild is RebuildAnswer.Circle circle)
        {
            text.Append("\nno rebuild order exists: these wait for each other: ").AppendJoin(", ", circle.Nodes).Append('\n');
            return;
        }

        var back = ((RebuildAnswer.Planned)rebuild).Plan;
        text.Append(CultureInfo.InvariantCulture, $"\nrebuild: {back.Steps.Length} steps, likely {Minutes(back.LikelyTime)}, safe {Minutes(back.SafeTime)}\n");
        for (var i = 0; i < back.Steps.Length; i++)
        {
            var step = back.Steps[i];
            var torque = step.Torque is { } t ? $", {QuantityText.Show(t.Torque, UnitSystem.Metric)} ± {t.Tolerance * 100:0.#} %" : "";
            var renewed = step.NewParts.IsEmpty || step.Operation.Contains("new", StringComparison.Ordinal) ? "" : ", new parts";
            text.Append(CultureInfo.InvariantCulture, $"{i + 1,3}  {step.Operation}{torque}{renewed}, {Minutes(step.Time + step.ChangeTime)}\n");
        }
    }

    private static string Why(ServiceModel model, StripStep step) => step.Why switch
    {
        StepReason.Target => "asked for",
        StepReason.InTheWayOf way => "in the way of " + string.Join(", ", way.Nodes.Take(5).Select(model.NameOf)) + (way.Nodes.Length > 5 ? $" and {way.Nodes.Length - 5} more" : ""),
        _ => "",
    };

    private static string Cause(RenewalCause cause) => cause switch
    {
        RenewalCause.Rule => "by its rule",
        RenewalCause.Disturbed => "disturbed",
        RenewalCause.Destroyed => "does not survive",
        RenewalCause.FailedInspection => "failed its inspection",
        _ => "asked for",
    };

    private static string Minutes(TimeSpan time) => string.Create(CultureInfo.InvariantCulture, $"{time.TotalMinutes:0.0} min");
}
