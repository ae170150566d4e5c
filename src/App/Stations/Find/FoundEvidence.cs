using System.Collections.Immutable;
using Ramwright.Diagnosis.Faults;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find;

/// <summary>What is written down on a job, as diagnosis takes it: of each symptom, reading and check the last word, of recordings the last.</summary>
public static class FoundEvidence
{
    /// <param name="model">What it no longer knows of (a symptom of an older version) is left out.</param>
    public static Evidence Of(ServiceModel model, JobState job)
    {
        var looked = job.Findings.Where(f => f.What.Symptom is not null).GroupBy(f => f.What.Symptom!.Value).Select(g => g.Last().What)
            .Where(f => model.Symptoms.Any(s => s.Id == f.Symptom)).ToList();
        return new()
        {
            Seen = [.. looked.Where(f => f.Seen).Select(f => f.Symptom!.Value)],
            NotSeen = [.. looked.Where(f => !f.Seen).Select(f => f.Symptom!.Value)],
            Checks = [.. job.Checks.Select(c => new CheckResult(c.What.Check, c.What.Outcome)).Where(c => model.Checks.Any(m => m.Id == c.Check && m.Outcomes.Any(o => o.Id == c.Outcome)))],
            Readings = [.. job.Measurements.Where(m => m.What.Reading is not null).GroupBy(m => m.What.Reading!, StringComparer.Ordinal).Select(g => new Reading(g.Key, g.Last().What.Value.Si))],
            Recording = job.Strokes is [.., var last] ? Of(last.What) : null,
        };
    }

    private static RecordingEvidence Of(Records.Events.StrokeRecorded stroke) => new(
        stroke.Faults.ToImmutableDictionary(f => f.Fault, f => f.Factor), [.. stroke.Shows], [.. stroke.Measures]);
}
