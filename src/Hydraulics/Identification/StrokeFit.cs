namespace Ramwright.Hydraulics.Identification;

/// <summary>One hypothesis about the leaks, fitted.</summary>
/// <param name="Leaks">Which may have grown.</param>
/// <param name="Problem">Its unknowns.</param>
/// <param name="Best">Where the sum of squares is least.</param>
/// <param name="LogEvidence">ln of prior × evidence by Laplace, up to a constant.</param>
internal sealed record FittedLeaks(LeakSet Leaks, StrokeProblem Problem, Minimum Best, double LogEvidence);

/// <summary>Fits every hypothesis about the leaks and weighs them against each other.</summary>
internal static class StrokeFit
{
    /// <summary>Simple explanations from which all others are begun.</summary>
    private static readonly LeakSet[] Simple = [new(false, false, true, false), new(true, false, false, false), new(true, true, false, false)];

    /// <summary>Hypotheses further behind than this (ln) are not fitted again when the noise is known better.</summary>
    private const double HopelessBehind = 25;

    /// <summary>Hypotheses that were no further behind (ln) at first are tried again where they are the simpler story; where little is seen convergence is poor, and they may be further.</summary>
    private const double FarBehind = 30, FarBehindInLittle = 80;

    private const double EarlyPascals = 3e5;

    private const int MostRounds = 3, GiversOfMany = 3;

    public static List<FittedLeaks> All(StrokeEvidence evidence)
    {
        var seeds = new List<double[]>();
        (StrokeProblem Problem, Minimum Found)? first = null;
        foreach (var leaks in Simple.Where(s => evidence.Signal.Amperes is not null || !s.Chamber))
        {
            var problem = new StrokeProblem(evidence, leaks);
            var found = Seed.Of(evidence, problem, 2).Select(seed => LeastSquares.Solve(problem, seed, 9)).MinBy(m => m.Cost)!;
            found = Reclosed(evidence, problem, found);
            seeds.Add(found.Unknowns);
            if (first is null || found.Cost < first.Value.Found.Cost)
                first = (problem, found);
        }

        Noise.Measure(evidence, first!.Value.Problem, first.Value.Found.Unknowns, EarlyPascals);
        var fitted = Fitted(evidence, [.. LeakSet.Of(evidence.Signal.Amperes is not null)], seeds);
        var top = fitted.Max(f => f.LogEvidence);
        var little = evidence.TopIsMissing || !evidence.TurnsAreSeen || evidence.Signal.Amperes is null;
        var near = fitted.Where(f => f.LogEvidence > top - (little ? FarBehindInLittle : FarBehind)).Select(f => f.Leaks).ToHashSet();
        for (var round = 1; round < MostRounds; round++)
        {
            var best = fitted.MaxBy(f => f.LogEvidence)!;
            var reclosed = Reclosed(evidence, best.Problem, best.Best);
            var changed = Noise.Measure(evidence, best.Problem, reclosed.Unknowns);
            if (!changed && reclosed.Cost > best.Best.Cost - 1)
                break;
            var last = fitted.Where(f => f.LogEvidence > best.LogEvidence - HopelessBehind).ToDictionary(f => f.Leaks, f => f.Best.Unknowns);
            fitted = Fitted(evidence, [.. last.Keys], [reclosed.Unknowns], last);
        }

        return Simpler(evidence, fitted, near, little);
    }

    /// <summary>
    /// Fewer faults are the likelier story, and lose by poor convergence alone: each is tried again from where the best ones ended, its leaks put back and the pump's angles and
    /// the closing of the dies sought anew. Until none of them wins.
    /// </summary>
    private static List<FittedLeaks> Simpler(StrokeEvidence evidence, List<FittedLeaks> fitted, HashSet<LeakSet> near, bool little)
    {
        for (var round = 0; round < MostRounds; round++)
        {
            var best = fitted.MaxBy(f => f.LogEvidence)!;
            var givers = fitted.OrderByDescending(f => f.LogEvidence).Take(little ? GiversOfMany : 1).ToList();
            var better = near.Where(s => s.Any && s.LogPrior(evidence.Tool.Inlet) > best.Leaks.LogPrior(evidence.Tool.Inlet))
                .Select(leaks => givers.Where(g => g.Leaks != leaks).Select(g => Again(evidence, leaks, g.Best.Unknowns)).MaxBy(f => f.LogEvidence)).OfType<FittedLeaks>().ToList();
            var won = false;
            foreach (var again in better)
            {
                var at = fitted.FindIndex(f => f.Leaks == again.Leaks);
                if (at >= 0 && fitted[at].LogEvidence >= again.LogEvidence - 0.1)
                    continue;
                won |= again.LogEvidence > best.LogEvidence - (little ? HopelessBehind : 0);
                if (at >= 0)
                    fitted[at] = again;
                else
                    fitted.Add(again);
            }

            if (!won)
                break;
        }

        return fitted;
    }

    private static FittedLeaks Again(StrokeEvidence evidence, LeakSet leaks, double[] from)
    {
        var problem = new StrokeProblem(evidence, leaks);
        var starts = Seed.Starts(evidence, problem, leaks, from).Select(start =>
        {
            for (var build = 0; build < evidence.Builds.Count; build++)
                _ = Seed.BestAngle(evidence, problem, start, build);
            return start;
        });
        var promising = starts.Select(start => LeastSquares.Solve(problem, start, 6)).MinBy(m => m.Cost)!;
        var found = Reclosed(evidence, problem, LeastSquares.Solve(problem, promising.Unknowns, 30));
        return new(leaks, problem, found, Evidence(evidence, problem, leaks, found));
    }

    /// <summary>While the pump draws in, it does not matter when the dies close: no slope leads from there, so other moments are tried.</summary>
    private static Minimum Reclosed(StrokeEvidence evidence, StrokeProblem problem, Minimum found)
    {
        if (evidence.Builds.Count == 0 || !evidence.Builds[0].Rise.FromFoot || !evidence.TurnsAreSeen)
            return found;
        var best = found;
        foreach (var later in new[] { -0.009, -0.005, 0.004, 0.008 })
        {
            var start = (double[])found.Unknowns.Clone();
            start[problem.PlaceOfBuild(0) + Unknown.Begin] += later;
            var other = LeastSquares.Solve(problem, start, 8);
            if (other.Cost < best.Cost)
                best = other;
        }

        return best;
    }

    /// <summary>Each hypothesis from the most promising of its beginnings.</summary>
    private static List<FittedLeaks> Fitted(StrokeEvidence evidence, IReadOnlyList<LeakSet> sets, IReadOnlyList<double[]> seeds, Dictionary<LeakSet, double[]>? last = null)
    {
        var fitted = new List<FittedLeaks>();
        foreach (var leaks in sets)
        {
            var problem = new StrokeProblem(evidence, leaks);
            var starts = seeds.SelectMany(seed => Seed.Starts(evidence, problem, leaks, seed));
            if (last is not null)
                starts = starts.Append(last[leaks]);
            var promising = starts.Select(start => LeastSquares.Solve(problem, start, 4)).MinBy(m => m.Cost)!;
            var found = LeastSquares.Solve(problem, promising.Unknowns, 30);
            fitted.Add(new FittedLeaks(leaks, problem, found, Evidence(evidence, problem, leaks, found)));
        }

        return fitted;
    }

    /// <summary>Laplace: ln prior − cost − ½ ln det(JᵀJ) − Σ ln σ of the priors; the rest is the same for all.</summary>
    private static double Evidence(StrokeEvidence evidence, StrokeProblem problem, LeakSet leaks, Minimum found)
    {
        var sum = leaks.LogPrior(evidence.Tool.Inlet) - found.Cost - 0.5 * (PositiveMatrix.LogDeterminant(found.Normal) ?? 1e6);
        foreach (var prior in problem.AllPriors)
            sum -= Math.Log(prior.Deviation);
        return sum;
    }
}
