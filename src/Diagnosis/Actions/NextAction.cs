using Ramwright.Diagnosis.Faults;

namespace Ramwright.Diagnosis.Actions;

/// <summary>The next best act: check, measurement, repair, run or stop, by expected cost from where the tool stands.</summary>
public static class NextAction
{
    /// <exception cref="ArgumentException">Ids that the model does not have: a bug in the caller.</exception>
    public static ActionAnswer Advise(FaultNetwork network, Evidence evidence, ActionOptions options)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(options);
        if (options.Tried.Any(t => network.Model.Remedies.All(r => r.Id != t)) || options.StateLimit < 1)
            throw new ArgumentException("Remedies tried are the model's, and the state limit is 1 or more.", nameof(options));
        var (data, _) = CountedOnce.Of(network, evidence);
        var problem = network.Problem(data);
        if (NoisyOrPosterior.Of(problem) is not { } posterior)
            return FaultFinder.Weigh(network, evidence) is FaultAnswer.Contradictory { Conflict: var conflict } ? new ActionAnswer.Contradictory(conflict)
                : throw new InvalidOperationException("Without a posterior the evidence contradicts itself.");
        var writer = new AdviceProblem(network, options, data, AdviceCases.Of(problem, posterior, network.Problem([]), options.LeastProbability));
        return new ActionAnswer.Advised(writer.Advise());
    }
}

/// <summary>Sets of faults that the search weighs, with weights that sum to 1.</summary>
/// <remarks>
/// Live are the faults that the evidence raised above their rate. What it says nothing about (a worn pack in a tool that leaks) is independent of it, is left to the
/// proof, and changes no choice among the rest.
/// </remarks>
internal sealed record AdviceCases(int[][] Faults, double[] Weights, double LeftOut)
{
    private const int MostLive = 12, MostCases = 32;
    private const double Least = 0.002, Raised = 1.1;

    public static AdviceCases Of(NoisyOr problem, NoisyOrPosterior posterior, NoisyOr prior, double leastProbability)
    {
        double Now(int fault) => FaultFinder.Middle(posterior, fault);
        var live = Enumerable.Range(0, problem.Count).Where(i => Now(i) >= leastProbability && Now(i) >= Math.Min(0.5, Raised * prior.Present[i]))
            .OrderByDescending(Now).Take(MostLive).ToList();
        var sets = FaultFinder.AllSets(problem, posterior, live).OrderByDescending(s => s.Probability).Take(MostCases).ToList();
        sets.RemoveAll(s => s.Probability < Least * sets[0].Probability);
        var sum = sets.Sum(s => s.Probability);
        var others = Enumerable.Range(0, problem.Count).Except(live).Aggregate(1.0, (p, i) => p * (1 - Now(i)));
        return new([.. sets.Select(s => s.Faults)], [.. sets.Select(s => s.Probability / sum)], Math.Clamp(1 - sum / others, 0, 1));
    }
}
