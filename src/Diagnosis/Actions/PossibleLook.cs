using System.Collections.Immutable;
using Ramwright.Diagnosis.Faults;
using Ramwright.Diagnosis.Measurements;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Actions;

/// <summary>A check or measurement that is still to be made.</summary>
/// <param name="Likelihood">By outcome and case: the share of the outcome with exactly these faults.</param>
/// <param name="Excludes">Ids of looks that tell the same.</param>
internal sealed record PossibleLook(ServiceAct Act, string Id, TimeSpan Time, ImmutableArray<NodeId> Needs, bool Live, ImmutableArray<(string Id, string Name)> Outcomes, double[][] Likelihood, ImmutableArray<string> Excludes)
{
    /// <summary>What of a look agrees with a symptom already counted; the rest of its outcomes are taken as slips. From judgement.</summary>
    private const double Agrees = 0.9;

    public static IEnumerable<PossibleLook> Of(FaultNetwork network, ImmutableArray<Datum> data, int[][] cases)
    {
        var known = data.Select(d => d switch { Datum.Checked c => c.Check.Value, Datum.Measured m => m.Measurement, _ => null }).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var recorded = data.OfType<Datum.Recorded>().SelectMany(r => r.Recording.Measures).ToHashSet(StringComparer.Ordinal);
        foreach (var check in network.Model.Checks)
        {
            var same = QuickMeasurement.All.Where(m => m.InsteadOfChecks.Contains(check.Id.Value, StringComparer.Ordinal)).Select(m => m.Id).ToImmutableArray();
            if (known.Contains(check.Id.Value) || recorded.Contains(check.Id.Value) || same.Any(m => known.Contains(m) || recorded.Contains(m)))
                continue;
            var shares = network.SharesOf(check.Id);
            var likelihood = check.Outcomes.Select(o => cases.Select(c => shares.Share(o.Id, c)).ToArray()).ToArray();
            yield return new(new ServiceAct.MakeCheck(check.Id), check.Id.Value, check.Time, check.Needs, check.Live, [.. check.Outcomes.Select(o => (o.Id, o.Name))],
                Informed(likelihood, data, [.. check.InsteadOf], o => check.Outcomes[o].Id != shares.Usual), same);
        }

        foreach (var measurement in network.Measurements)
        {
            if (known.Contains(measurement.Id) || recorded.Contains(measurement.Id) || measurement.InsteadOfChecks.Any(known.Contains))
                continue;
            var spread = network.Spreads.Of(measurement)!;
            var bands = cases.Select(c => spread.Bands(c)).ToArray();
            double[][] likelihood = [[.. bands.Select(b => b.Below)], [.. bands.Select(b => b.Within)], [.. bands.Select(b => b.Above)]];
            yield return new(new ServiceAct.Measure(measurement.Id), measurement.Id, measurement.Time, [], true, [("below", "below the usual"), ("usual", "as usual"), ("above", "above the usual")],
                Informed(likelihood, data, [.. measurement.InsteadOfSymptoms.Select(s => new SymptomId(s))], o => o != 1), measurement.InsteadOfChecks);
        }
    }

    /// <summary>Where a symptom that the look shows more exactly is already counted, the look mostly repeats it.</summary>
    private static double[][] Informed(double[][] likelihood, ImmutableArray<Datum> data, ImmutableArray<SymptomId> insteadOf, Func<int, bool> unusual)
    {
        bool? shown = data.Any(d => d is Datum.Seen s && insteadOf.Contains(s.Symptom)) ? true
            : insteadOf.Length > 0 && insteadOf.All(s => data.Contains(new Datum.NotSeen(s))) ? false : null;
        if (shown is not { } there)
            return likelihood;
        var agreed = likelihood.Select((row, o) => row.Select(p => p * (unusual(o) == there ? Agrees : 1 - Agrees)).ToArray()).ToArray();
        for (var h = 0; h < agreed[0].Length; h++)
        {
            var sum = agreed.Sum(row => row[h]);
            foreach (var row in agreed)
                row[h] /= sum;
        }

        return agreed;
    }
}
