using System.Collections.Immutable;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find;

/// <summary>Symptoms under one heading that were not answered yet.</summary>
public sealed record SymptomGroup(string Name, ImmutableArray<Symptom> Symptoms);

/// <summary>A remedy and what was seen that speaks for it.</summary>
/// <param name="SpeaksFor">Names of the symptoms seen that a fault which it mends can bring.</param>
public sealed record RemedyChoice(Remedy Remedy, ImmutableArray<string> SpeaksFor, ImmutableArray<string> Parts);

/// <summary>What Find shows.</summary>
public static class FindView
{
    /// <summary>The model's symptoms by heading, without those that were answered.</summary>
    public static ImmutableArray<SymptomGroup> Open(ServiceModel model, JobState job)
    {
        var answered = job.Findings.Select(f => f.What.Symptom).OfType<SymptomId>().ToHashSet();
        return [.. model.Symptoms.Where(s => !answered.Contains(s.Id)).GroupBy(s => s.Group, StringComparer.Ordinal).Select(g => new SymptomGroup(Web.Parts.Sentence.Head(g.Key), [.. g]))];
    }

    /// <summary>The model's remedies; those that more of what was seen speaks for come first. No probability is claimed here.</summary>
    public static ImmutableArray<RemedyChoice> Remedies(ServiceModel model, JobState job)
    {
        var seen = job.Findings.Where(f => f.What.Seen).Select(f => f.What.Symptom).OfType<SymptomId>().ToHashSet();
        var symptoms = model.Symptoms.Where(s => seen.Contains(s.Id)).ToArray();
        return
        [
            .. model.Remedies
                .Select(r => new RemedyChoice(r,
                    [.. symptoms.Where(s => s.Causes.Any(c => c.Probability > 0 && r.Mends.Any(m => m.Fault == c.Fault && m.Probability > 0))).Select(s => s.Name)],
                    [.. r.Frees.Concat(r.Renews).Distinct().Select(model.NameOf)]))
                .OrderByDescending(c => c.SpeaksFor.Length),
        ];
    }
}
