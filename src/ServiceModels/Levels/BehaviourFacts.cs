using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Levels;

/// <summary>Facts of level 3 that are not there.</summary>
internal static class BehaviourFacts
{
    public static IEnumerable<MissingFact> Missing(ServiceModel model)
    {
        var behaviour = model.Behaviour ?? new Behaviour();
        if (behaviour.Relief is null)
            yield return new(3, Needed: true, "relief valve", [], "the prior for Set: how far a turn of the screw moves the pressure", PartFacts.Station + 20);
        ImmutableArray<string> groups = [.. Groups(behaviour)];
        if (!groups.IsEmpty)
            yield return new(3, Needed: true, "behaviour", groups, "Find from a recording: the stroke model", PartFacts.Station / 2 + groups.Length);
        if (model.Faults.IsEmpty)
            yield return new(3, Needed: true, "faults", [], "Find: what can be wrong, and how often", PartFacts.Station);
        else
        {
            if (model.Symptoms.IsEmpty)
                yield return new(3, Needed: true, "symptoms", [], "Find from what is seen, heard or felt", PartFacts.Station / 2);
            if (model.Checks.IsEmpty)
                yield return new(3, Needed: true, "checks", [], "Find: which check is worth making next", PartFacts.Station / 2);
            var mended = model.Remedies.SelectMany(r => r.Mends).Select(m => m.Fault).ToHashSet();
            ImmutableArray<string> unmended = [.. model.Faults.Where(f => !mended.Contains(f.Id)).Select(f => f.Id.Value)];
            if (!unmended.IsEmpty)
                yield return new(3, Needed: false, "remedy", unmended, "what to do about the fault", 3 * unmended.Length);
        }

        if (behaviour.MemoryDepth is null)
            yield return new(3, Needed: false, "memory depth", [], "the tool's own memory as evidence, where it has one", 1);
    }

    private static IEnumerable<string> Groups(Behaviour behaviour)
    {
        if (behaviour.Ram is null)
            yield return "ram";
        if (behaviour.Pump is null)
            yield return "pump";
        if (behaviour.Drive is null)
            yield return "drive";
        if (behaviour.Oil is null)
            yield return "oil";
    }
}
