using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;
using static System.FormattableString;

namespace Ramwright.ServiceModels.Lint;

/// <summary>Checks that decide nothing, and outcomes whose shares do not add up.</summary>
internal static class FindLint
{
    private const double Slack = 1e-6;

    public static void Look(Draft draft, MistakeList mistakes, MistakeList notes)
    {
        foreach (var check in draft.Model.Checks)
        {
            var id = check.Id.Value;
            if (check.Outcomes.Length < 2 && draft.Has("checks", id, "outcomes"))
                mistakes.Add(draft.KeyAt("checks", id, "outcomes"), $"the check '{id}' has {(check.Outcomes.IsEmpty ? "no outcome" : "one outcome only")}, so it tells nothing", "write each answer that it can give, two or more", "few-outcomes");
            else
                LookAtShares(check, draft, mistakes, notes);
        }
    }

    private static void LookAtShares(Check check, Draft draft, MistakeList mistakes, MistakeList notes)
    {
        var at = draft.KeyAt("checks", check.Id.Value, "outcomes");
        var sound = check.Outcomes.Sum(o => o.WhenSound);
        if (sound > 1 + Slack)
            mistakes.Add(at, Invariant($"the outcomes of '{check.Id}' come in {100 * sound:0.#} % of sound tools"), "let the when-sound shares of one check add up to 100 %", "outcome-sum");
        else if (check.Outcomes.Length > 0 && sound < 1 - Slack)
            notes.Add(at, Invariant($"the outcomes of '{check.Id}' cover {100 * sound:0.#} % of sound tools"), "add the outcome that is missing, or let the when-sound shares add up to 100 %", "outcome-sum");
        foreach (var fault in check.Outcomes.SelectMany(o => o.WhenFault).GroupBy(c => c.Fault))
            if (fault.Sum(c => c.Probability) is var sum && sum > 1 + Slack)
                mistakes.Add(at, Invariant($"with {fault.Key} the outcomes of '{check.Id}' come in {100 * sum:0.#} % of tools"), $"let the shares for {fault.Key} in one check add up to 100 %", "outcome-sum");
    }
}
