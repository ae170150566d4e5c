namespace Ramwright.Diagnosis.Faults;

/// <summary>Probabilities of the faults, exact or between two bounds.</summary>
/// <param name="LogEvidence">Logarithm of P(e): low and high.</param>
/// <param name="Low">P(fault | e) at least, by fault.</param>
/// <param name="High">P(fault | e) at most, by fault.</param>
internal sealed record NoisyOrPosterior((double Low, double High) LogEvidence, double[] Low, double[] High)
{
    /// <summary>Cells of all tables together up to which the sum is exact: 34 MB, some 20 ms.</summary>
    public const double UsualLimit = 4_194_304;

    public bool IsExact => ReferenceEquals(Low, High);

    /// <summary>The posterior, or null when what is known has probability zero.</summary>
    /// <remarks>
    /// Past the limit the weakest links are thinned out until the tables fit. A link left out makes every present finding less likely under every set
    /// of faults; a link turned into leak, as if its fault were there, makes it more likely. So the two thinned problems bound P(xᵢ, e) from
    /// below (L) and above (U), and L₁/(L₁ + U₀) ≤ P(fault | e) ≤ U₁/(U₁ + L₀).
    /// </remarks>
    public static NoisyOrPosterior? Of(NoisyOr problem, double cellLimit = UsualLimit)
    {
        var order = FrontierOrder.Of(problem);
        if (order.Cells <= cellLimit)
        {
            var exact = FrontierSum.Of(problem, order);
            return double.IsFinite(exact.LogEvidence) ? new((exact.LogEvidence, exact.LogEvidence), exact.Marginals, exact.Marginals) : null;
        }

        var kept = Thinned(problem, cellLimit);
        var lower = FrontierSum.Of(kept.Without, FrontierOrder.Of(kept.Without));
        var upper = FrontierSum.Of(kept.AsLeak, FrontierOrder.Of(kept.AsLeak));
        if (!double.IsFinite(upper.LogEvidence))
            return null;
        var scale = Math.Exp(lower.LogEvidence - upper.LogEvidence); // 0 when the lower problem explains nothing: then the bounds say nothing
        double[] low = new double[problem.Count], high = new double[problem.Count];
        for (var i = 0; i < low.Length; i++)
        {
            var (least, most) = (lower.Marginals is [] ? 0 : scale * lower.Marginals[i], upper.Marginals[i]);
            var (leastNot, mostNot) = (lower.Marginals is [] ? 0 : scale * (1 - lower.Marginals[i]), 1 - upper.Marginals[i]);
            low[i] = least > 0 ? least / (least + mostNot) : 0;
            high[i] = most > 0 ? most / (most + leastNot) : 0;
        }

        return new((lower.LogEvidence, upper.LogEvidence), low, high);
    }

    private static (NoisyOr Without, NoisyOr AsLeak) Thinned(NoisyOr problem, double cellLimit)
    {
        var links = problem.Positives.SelectMany((p, d) => p.Causes.Select(c => (Finding: d, c.Fault, Weight: problem.Present[c.Fault] * c.Chance))).OrderBy(l => l.Weight).ToList();
        var dropped = new HashSet<(int, int)>();
        var (without, asLeak) = (problem, problem);
        for (var at = 0; at < links.Count && FrontierOrder.Of(without).Cells > cellLimit;)
        {
            for (var until = Math.Min(links.Count, at + Math.Max(1, links.Count / 40)); at < until; at++)
                dropped.Add((links[at].Finding, links[at].Fault));
            (without, asLeak) = (Thinned(problem, dropped, intoLeak: false), Thinned(problem, dropped, intoLeak: true));
        }

        return (without, asLeak);
    }

    private static NoisyOr Thinned(NoisyOr problem, HashSet<(int Finding, int Fault)> dropped, bool intoLeak)
    {
        var thin = new NoisyOr(problem.Present) { LogConstant = problem.LogConstant };
        Array.Copy(problem.Absent, thin.Absent, problem.Count);
        for (var d = 0; d < problem.Positives.Count; d++)
        {
            var (leak, causes) = problem.Positives[d];
            var stays = 1 - leak;
            if (intoLeak)
            {
                foreach (var cause in causes.Where(c => dropped.Contains((d, c.Fault))))
                    stays *= 1 - cause.Chance;
            }

            thin.Positives.Add(new(intoLeak ? 1 - stays : leak, [.. causes.Where(c => !dropped.Contains((d, c.Fault)))]));
        }

        return thin;
    }
}
