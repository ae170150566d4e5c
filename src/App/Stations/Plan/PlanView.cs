using System.Collections.Immutable;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Metrology.Text;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Plan;

/// <summary>One step of the plan as it is read.</summary>
public sealed record PlanLine(int Number, string Operation, string Why, string With, string Minutes, ImmutableArray<Caution> Cautions, ImmutableArray<string> Renews);

/// <summary>A plan in words.</summary>
public static class PlanView
{
    public static ImmutableArray<PlanLine> Lines(ServiceModel model, StripPlan plan) =>
    [
        .. plan.Steps.Select((step, i) => new PlanLine(
            i + 1,
            Sentence.Head(step.Operation),
            Why(model, plan, step),
            string.Join(", ", new[] { step.Tool is { } tool ? model.FindTool(tool)?.Name ?? tool.Value : "by hand", step.Posture is { } posture ? PostureName(model, posture) : null }.OfType<string>()),
            TimeText.Minutes(step.Time + step.ChangeTime, 1),
            step.Cautions,
            [.. step.Renewals.Select(r => RenewalText(model, r))])),
    ];

    public static string Why(ServiceModel model, StripPlan plan, StripStep step) => step.Why switch
    {
        StepReason.InTheWayOf way => "in the way of " + string.Join(", ", way.Nodes.Take(3).Select(n => NodeWords(model, plan, n))) + (way.Nodes.Length > 3 ? " and more" : ""),
        _ => "asked for",
    };

    public static string RenewalText(ServiceModel model, Renewal renewal) =>
        (renewal.Count > 1 ? $"{renewal.Count} × " : "") + model.NameOf(renewal.Part) + " (" + Cause(renewal.Cause) + ")";

    public static string Cause(RenewalCause cause) => cause switch
    {
        RenewalCause.Rule => "by its rule",
        RenewalCause.Disturbed => "disturbed on the way",
        RenewalCause.Destroyed => "does not survive removal",
        RenewalCause.FailedInspection => "failed its inspection",
        _ => "asked for",
    };

    public static string PostureName(ServiceModel model, PostureId id) => model.Postures.FirstOrDefault(p => p.Id == id)?.Name ?? id.Value.Replace('-', ' ');

    /// <summary>The head of the plan: minutes, cost, oil.</summary>
    public static Facts Head(StripPlan plan, Words words) => new(
    [
        new("Likely", words.Show(plan.LikelyTime), $"{words.Show(plan.SafeTime)} is enough in nine of ten"),
        new("Cost of stripping", words.Show(plan.Cost), plan.ProvenOptimal ? "no cheaper way exists" : $"at most {words.Show(plan.Gap)} above the cheapest"),
    ]);

    private static string NodeWords(ServiceModel model, StripPlan plan, NodeId node)
    {
        for (var i = 0; i < plan.Steps.Length; i++)
        {
            if (plan.Steps[i].Node == node)
                return $"{model.NameOf(node)} ({i + 1})";
        }

        return model.NameOf(node);
    }
}
