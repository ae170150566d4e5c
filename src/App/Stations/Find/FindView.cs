using System.Collections.Immutable;
using Ramwright.Diagnosis.Actions;
using Ramwright.Diagnosis.Faults;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find;

/// <summary>Symptoms under one heading, each with its last answer: seen, not seen, or not looked for.</summary>
public sealed record SymptomGroup(string Name, ImmutableArray<(Symptom Symptom, bool? Seen)> Symptoms)
{
    /// <summary>How many were answered, in a few words.</summary>
    public string Summary => (Symptoms.Count(s => s.Seen == true), Symptoms.Count(s => s.Seen == false)) switch
    {
        (0, 0) => $"{Symptoms.Length} to look for",
        (var seen, 0) => $"{seen} of {Symptoms.Length} seen",
        (0, var not) => $"{not} of {Symptoms.Length} not seen",
        var (seen, not) => $"{seen} seen, {not} not, of {Symptoms.Length}",
    };
}

/// <summary>A remedy, and what speaks for it.</summary>
/// <param name="SpeaksFor">Names of the symptoms seen that a fault which it mends can bring.</param>
/// <param name="Mends">Probability that the tool has a fault that it mends and that it mends it, 0 to 1; null where nothing was weighed.</param>
/// <param name="Advised">The next thing to do, or done in the same opening.</param>
public sealed record RemedyChoice(Remedy Remedy, ImmutableArray<string> SpeaksFor, double? Mends, bool Advised);

/// <summary>What Find shows.</summary>
public static class FindView
{
    /// <summary>The model's symptoms by heading.</summary>
    public static ImmutableArray<SymptomGroup> Groups(ServiceModel model, JobState job)
    {
        var answered = job.Findings.Where(f => f.What.Symptom is not null).GroupBy(f => f.What.Symptom!.Value).ToDictionary(g => g.Key, g => g.Last().What.Seen);
        return [.. model.Symptoms.GroupBy(s => s.Group, StringComparer.Ordinal)
            .Select(g => new SymptomGroup(Web.Parts.Sentence.Head(g.Key), [.. g.Select(s => (s, answered.TryGetValue(s.Id, out var seen) ? seen : (bool?)null))]))];
    }

    /// <summary>The model's remedies: the advised ones first, then by how likely each is to mend something.</summary>
    public static ImmutableArray<RemedyChoice> Remedies(ServiceModel model, JobState job, Diagnosed diagnosed)
    {
        var seen = job.Findings.Where(f => f.What.Seen).Select(f => f.What.Symptom).OfType<SymptomId>().ToHashSet();
        var symptoms = model.Symptoms.Where(s => seen.Contains(s.Id)).ToArray();
        var weighed = diagnosed as Diagnosed.Weighed;
        var advised = weighed is null ? [] : weighed.Advice.AlongWithIt.Prepend(weighed.Advice.Next.Act).OfType<ServiceAct.Repair>().Select(r => r.Remedy).ToHashSet();
        return
        [
            .. model.Remedies
                .Select(r => new RemedyChoice(r,
                    [.. symptoms.Where(s => s.Causes.Any(c => c.Probability > 0 && r.Mends.Any(m => m.Fault == c.Fault && m.Probability > 0))).Select(s => s.Name)],
                    weighed is null ? null : Mends(r, weighed.Report),
                    advised.Contains(r.Id)))
                .OrderByDescending(c => c.Advised).ThenByDescending(c => c.Mends ?? 0).ThenByDescending(c => c.SpeaksFor.Length),
        ];
    }

    /// <summary>That one of its faults is there and gets mended, the likeliest of them alone: a bound from below, 0 to 1.</summary>
    private static double Mends(Remedy remedy, FaultReport report) =>
        remedy.Mends.Select(m => m.Probability * (report.Faults.FirstOrDefault(f => f.Fault == m.Fault)?.Probability ?? 0)).DefaultIfEmpty(0).Max();
}
