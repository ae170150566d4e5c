using Ramwright.Fluids.Classes;
using Ramwright.Fluids.Viscosity;
using Ramwright.Metrology.Input;
using Ramwright.Seals.Materials;
using Ramwright.Seals.Sizes;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;
using static System.FormattableString;

namespace Ramwright.ServiceModels.Lint;

/// <summary>Seals and oil: sizes that no table has, seals disturbed without a rule, rubbers that the oil spoils.</summary>
internal static class SealLint
{
    public static void Look(Draft draft, MistakeList mistakes, MistakeList notes)
    {
        LookAtFluid(draft, mistakes);
        foreach (var part in draft.Model.Parts)
        {
            if (part.Size is SealSize.Dash(var standard, var number) && ORingSize.ByDash(number) is null)
                mistakes.Add(draft.ValueAt("parts", part.Id.Value, "size"), Invariant($"{standard}-{number:000} is in no table of O-ring sizes"), "write a dash number of ISO 3601-1, or inner diameter x section as measured", "unknown-size");
            if (draft.Model.Fluid is { } fluid && part.Material is { } material && Compatibility.Of(fluid.Class, material) is { Bearing: Bearing.NotSuitable, Remark: var remark })
                notes.Add(draft.ValueAt("parts", part.Id.Value, "material"), $"{material} does not usually bear {fluid.Class}{(remark is null ? "" : $": {remark}")}", "see what the maker fits; the immersion test of the compound's maker decides", "elastomer-fluid");
        }

        LookAtDisturbed(draft, mistakes);
    }

    private static void LookAtFluid(Draft draft, MistakeList mistakes)
    {
        if (draft.Model.Fluid is not { } fluid)
            return;
        var codes = FluidClass.All.Select(c => c.Code).ToList();
        if (FluidClass.Find(fluid.Class) is null)
            mistakes.Add(draft.ValueAt("fluid", "class"), $"ISO 6743-4 has no fluid class '{fluid.Class}'", NearName.Find(fluid.Class, codes) is { } near ? $"write {near}; the classes are {string.Join(", ", codes)}" : $"write one of {string.Join(", ", codes)}", "unknown-fluid");
        if (fluid.Grade is { } grade && ViscosityGrade.Find(grade) is null)
            mistakes.Add(draft.ValueAt("fluid", "grade"), Invariant($"ISO 3448 has no grade VG {grade}"), $"write one of {string.Join(", ", ViscosityGrade.All.Select(g => Invariant($"{g.Grade}")))}", "unknown-grade");
    }

    private static void LookAtDisturbed(Draft draft, MistakeList mistakes)
    {
        var seals = draft.Model.Parts.Where(IsSeal).Select(p => p.Id).ToHashSet();
        var told = new HashSet<NodeId>();
        foreach (var part in draft.Model.Parts)
            for (var way = 0; way < part.WaysOff.Length; way++)
                foreach (var id in part.WaysOff[way].Disturbs)
                    if (seals.Contains(id) && !draft.Has("parts", id.Value, "renew") && told.Add(id))
                        mistakes.Add(EntryAt(draft, part.Id, way, id), $"'{id}' is a seal, this disturbs it, and nothing says whether it is then renewed", Invariant($"write 'renew: when-disturbed' (or another rule) at {id} in line {draft.LineOf("parts", id.Value)}"), "no-renewal-rule");
    }

    /// <summary>A part with an O-ring size or of an elastomer.</summary>
    private static bool IsSeal(Part part) => part.Size is not null || (part.Material is { } material && Elastomer.Find(material) is not null);

    private static Place EntryAt(Draft draft, NodeId part, int way, NodeId entry)
    {
        for (var i = 0; draft.Has("parts", part.Value, "ways-off", way, "disturbs", i); i++)
            if (draft.TextAt("parts", part.Value, "ways-off", way, "disturbs", i) == entry.Value)
                return draft.ValueAt("parts", part.Value, "ways-off", way, "disturbs", i);
        return draft.KeyAt("parts", part.Value, "ways-off", way, "disturbs");
    }
}
