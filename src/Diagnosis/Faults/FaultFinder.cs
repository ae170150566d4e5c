using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Faults;

/// <summary>Weighs evidence: which faults are likely, alone and together, and why.</summary>
public static class FaultFinder
{
    private const double SmallestReason = 0.05, Cap = 20;
    private const int MostSets = 12, SetsFrom = 14;

    /// <param name="network">Made once for a model.</param>
    /// <param name="evidence">Ids in it are the model's; the same symptom is not both seen and not seen.</param>
    /// <exception cref="ArgumentException">An id that the model does not have, or a symptom both seen and not: a bug in the caller.</exception>
    public static FaultAnswer Weigh(FaultNetwork network, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(evidence);
        Demand(network.Model, evidence);
        var (data, leftOut) = CountedOnce.Of(network, evidence);
        var problem = network.Problem(data);
        if (NoisyOrPosterior.Of(problem) is not { } posterior)
            return new FaultAnswer.Contradictory(Conflict(network, data));
        var without = data.Select((_, d) => NoisyOrPosterior.Of(network.Problem(data.RemoveAt(d)))!).ToList();
        var faults = network.Model.Faults.Select((fault, i) => new RankedFault(fault.Id, fault.Name, network.Problem([]).Present[i],
            Middle(posterior, i), posterior.Low[i], posterior.High[i], ReasonsOf(i)));
        return new FaultAnswer.Found(new()
        {
            Faults = [.. faults.OrderByDescending(f => f.Probability)],
            SoundProbability = Probability(problem, posterior, new HashSet<int>()),
            Sets = Sets(network.Model, problem, posterior),
            Data = data,
            LeftOut = leftOut,
            IsExact = posterior.IsExact,
        });

        ImmutableArray<Reason> ReasonsOf(int fault) =>
        [
            .. data.Select((datum, d) => new Reason(datum, LogOdds(Middle(posterior, fault)) - LogOdds(Middle(without[d], fault))))
                .Where(r => Math.Abs(r.LogOdds) >= SmallestReason).OrderByDescending(r => Math.Abs(r.LogOdds)),
        ];
    }

    /// <summary>Probabilities of exactly some faults and no others: none, one, two or three of those given.</summary>
    internal static List<(int[] Faults, double Probability)> AllSets(NoisyOr problem, NoisyOrPosterior posterior, List<int> likely)
    {
        var sets = new List<int[]> { Array.Empty<int>() };
        for (var a = 0; a < likely.Count; a++)
        {
            sets.Add([likely[a]]);
            for (var b = a + 1; b < likely.Count; b++)
            {
                sets.Add([likely[a], likely[b]]);
                for (var c = b + 1; c < likely.Count; c++)
                    sets.Add([likely[a], likely[b], likely[c]]);
            }
        }

        return [.. sets.Select(s => (s, Probability(problem, posterior, s.ToHashSet())))];
    }

    internal static double Middle(NoisyOrPosterior posterior, int fault) => 0.5 * (posterior.Low[fault] + posterior.High[fault]);

    private static double Probability(NoisyOr problem, NoisyOrPosterior posterior, HashSet<int> faults) =>
        Math.Min(1, Math.Exp(problem.LogJoint(faults) - posterior.LogEvidence.High));

    private static ImmutableArray<FaultSet> Sets(ServiceModel model, NoisyOr problem, NoisyOrPosterior posterior) =>
    [
        .. AllSets(problem, posterior, [.. Enumerable.Range(0, problem.Count).OrderByDescending(i => Middle(posterior, i)).Take(SetsFrom)]).OrderByDescending(s => s.Probability).Take(MostSets)
            .Select(s => new FaultSet([.. s.Faults.Select(i => model.Faults[i].Id)], s.Probability)),
    ];

    private static double LogOdds(double probability) => Math.Clamp(Math.Log(probability / (1 - probability)), -Cap, Cap);

    /// <summary>Takes data away as long as the rest still contradicts itself: what is left is a smallest conflict.</summary>
    private static ImmutableArray<Datum> Conflict(FaultNetwork network, ImmutableArray<Datum> data)
    {
        foreach (var datum in data)
        {
            var fewer = data.Remove(datum);
            if (NoisyOrPosterior.Of(network.Problem(fewer)) is null)
                data = fewer;
        }

        return data;
    }

    private static void Demand(ServiceModel model, Evidence evidence)
    {
        if (evidence.Seen.Intersect(evidence.NotSeen).Any() || evidence.Seen.Concat(evidence.NotSeen).Any(s => !model.Symptoms.Any(m => m.Id == s)))
            throw new ArgumentException("Symptoms are the model's, each seen or not seen.", nameof(evidence));
        if (evidence.Checks.Any(c => !model.Checks.Any(m => m.Id == c.Check && m.Outcomes.Any(o => o.Id == c.Outcome))))
            throw new ArgumentException("Checks and outcomes are the model's.", nameof(evidence));
        if (evidence.Recording is { } recording && recording.Factors.Values.Any(f => !(f > 0) || !double.IsFinite(f)))
            throw new ArgumentException("Factors of a recording lie above 0.", nameof(evidence));
    }
}
