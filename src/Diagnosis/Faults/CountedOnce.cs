using System.Collections.Immutable;
using Ramwright.Diagnosis.Measurements;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Faults;

/// <summary>Turns evidence into data of which each counts once: a recording before a measurement, that before a check, that before what was seen.</summary>
internal static class CountedOnce
{
    public static (ImmutableArray<Datum> Kept, ImmutableArray<CountedWith> LeftOut) Of(FaultNetwork network, Evidence evidence)
    {
        var finer = new List<(Datum Datum, Func<Datum, bool> Covers)>();
        var leftOut = ImmutableArray.CreateBuilder<CountedWith>();
        if (evidence.Recording is { } recording)
            finer.Add((new Datum.Recorded(recording), d => IsCovered(d, recording)));
        foreach (var (measurement, datum) in Measured(network, evidence))
            Take(datum, d => IsCovered(d, measurement));
        foreach (var made in evidence.Checks)
        {
            var check = network.Model.Checks.First(c => c.Id == made.Check);
            Take(new Datum.Checked(made.Check, made.Outcome), d => SymptomOf(d) is { } s && check.InsteadOf.Contains(s));
        }

        foreach (var seen in evidence.Seen.Distinct())
            Take(new Datum.Seen(seen), _ => false);
        foreach (var not in evidence.NotSeen.Distinct())
            Take(new Datum.NotSeen(not), _ => false);
        return ([.. finer.Select(f => f.Datum)], leftOut.ToImmutable());

        void Take(Datum datum, Func<Datum, bool> covers)
        {
            if (finer.Find(f => f.Covers(datum)) is { Datum: { } by })
                leftOut.Add(new(datum, by));
            else
                finer.Add((datum, covers));
        }
    }

    /// <summary>Measurements all of whose readings are there and which this tool family can be weighed by.</summary>
    private static IEnumerable<(QuickMeasurement, Datum)> Measured(FaultNetwork network, Evidence evidence)
    {
        foreach (var measurement in QuickMeasurement.All)
        {
            var values = measurement.Readings.Select(r => evidence.Readings.FirstOrDefault(e => e.Name == r.Name)?.Si).OfType<double>().ToArray();
            if (values.Length == measurement.Readings.Length && double.IsFinite(measurement.Value(values)) && network.Spreads.Of(measurement) is not null)
                yield return (measurement, new Datum.Measured(measurement.Id, measurement.Value(values)));
        }
    }

    private static bool IsCovered(Datum datum, RecordingEvidence recording) => datum switch
    {
        Datum.Measured m => recording.Measures.Contains(m.Measurement),
        Datum.Checked c => recording.Measures.Contains(c.Check.Value),
        _ => SymptomOf(datum) is { } s && recording.Shows.Contains(s),
    };

    private static bool IsCovered(Datum datum, QuickMeasurement measurement) => datum switch
    {
        Datum.Checked c => measurement.InsteadOfChecks.Contains(c.Check.Value, StringComparer.Ordinal),
        _ => SymptomOf(datum) is { } s && measurement.InsteadOfSymptoms.Contains(s.Value, StringComparer.Ordinal),
    };

    private static SymptomId? SymptomOf(Datum datum) => datum switch
    {
        Datum.Seen s => s.Symptom,
        Datum.NotSeen n => n.Symptom,
        _ => null,
    };
}
