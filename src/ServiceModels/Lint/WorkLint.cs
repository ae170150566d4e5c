using System.Collections.Immutable;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;
using static System.FormattableString;

namespace Ramwright.ServiceModels.Lint;

/// <summary>Work that cannot be done or judged as written: criteria without limits, places inside out, states undone that are never reached.</summary>
internal static class WorkLint
{
    public static void Look(Draft draft, MistakeList mistakes, MistakeList notes)
    {
        foreach (var part in draft.Model.Parts)
        {
            LookAtInspections(part, draft, mistakes);
            if (part.Place is { } place && (place.To.Metres <= place.From.Metres || place.Outer.Metres <= place.Inner.Metres))
                mistakes.Add(draft.KeyAt("parts", part.Id.Value, "place"), $"the place of '{part.Id}' is inside out: 'to' must lie beyond 'from', and 'outer' outside 'inner'", "swap the two, or correct the figure", "bad-place");
            if (part.Renew == RenewalRule.Never && part.WaysOff.Any(w => w.Destroys.Contains(part.Id)))
                mistakes.Add(draft.ValueAt("parts", part.Id.Value, "renew"), $"'{part.Id}' is never renewed, but its own way off destroys it", "write renew: always, or another way off", "destroyed-never-renewed");
        }

        foreach (var state in draft.Model.States)
            if (state is { Undo: not null, Reach: null })
                notes.Add(draft.KeyAt("states", state.Id.Value, "undo"), $"'{state.Id}' is undone on rebuild, but nothing reaches it", "add 'reach', or take 'undo' away", "undo-without-reach");
        LookAtHazards(draft, notes);
    }

    private static void LookAtInspections(Part part, Draft draft, MistakeList mistakes)
    {
        for (var i = 0; i < part.Inspections.Length; i++)
        {
            if (part.Inspections[i].Measure is not { } measure)
                continue;
            var at = draft.KeyAt("parts", part.Id.Value, "inspections", i, "measure");
            if (measure is { Least: null, Most: null } && !draft.Has("parts", part.Id.Value, "inspections", i, "measure", "least") && !draft.Has("parts", part.Id.Value, "inspections", i, "measure", "most"))
                mistakes.Add(at, $"the measure '{measure.What}' has no limit, so nothing can be judged by it", "add 'least', 'most' or both", "no-limit");
            else if (measure is { Least: { } least, Most: { } most } && least.Metres > most.Metres)
                mistakes.Add(at, Invariant($"the lower limit {least.Millimetres} mm lies above the upper limit {most.Millimetres} mm"), "swap 'least' and 'most'", "bad-window");
        }
    }

    private static void LookAtHazards(Draft draft, MistakeList notes)
    {
        var words = Hazards.All.Select(h => h.Word).ToList();
        foreach (var (caution, at) in CautionsOf(draft))
            if (caution.Hazard.Length > 0 && !words.Contains(caution.Hazard, StringComparer.Ordinal))
                notes.Add(at, $"'{caution.Hazard}' is no hazard word, so the general sign is shown", NearName.Find(caution.Hazard, words) is { } near ? $"write {near}" : $"write one of {string.Join(", ", words)}", "unknown-hazard");
    }

    private static IEnumerable<(Caution Caution, Place At)> CautionsOf(Draft draft)
    {
        var model = draft.Model;
        IEnumerable<(ImmutableArray<Caution> Cautions, object[] Path)> all =
        [
            .. model.Parts.SelectMany(p => p.WaysOff.Select((w, i) => (w.Cautions, (object[])["parts", p.Id.Value, "ways-off", i]))),
            .. model.Parts.Where(p => p.Fit is not null).Select(p => (p.Fit!.Cautions, (object[])["parts", p.Id.Value, "fit"])),
            .. model.States.Where(s => s.Reach is not null).Select(s => (s.Reach!.Cautions, (object[])["states", s.Id.Value, "reach"])),
            .. model.States.Where(s => s.Undo is not null).Select(s => (s.Undo!.Cautions, (object[])["states", s.Id.Value, "undo"])),
            .. model.Units.Select(u => (u.Cautions, (object[])["units", u.Id.Value])),
            .. model.Checks.Select(c => (c.Cautions, (object[])["checks", c.Id.Value])),
        ];
        foreach (var (cautions, path) in all)
        {
            if (cautions.IsEmpty)
                continue;
            var single = draft.Has([.. path, "caution"]);
            for (var i = 0; i < cautions.Length; i++)
                yield return (cautions[i], single && i == 0 ? draft.ValueAt([.. path, "caution", "hazard"]) : draft.ValueAt([.. path, "cautions", single ? i - 1 : i, "hazard"]));
        }
    }
}
