using System.Collections.Immutable;
using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Uncertainty;

/// <summary>The law of propagation of uncertainty: what the inputs' uncertainties make of the result's, to first order.</summary>
/// <remarks>
/// JCGM 100:2008, 5.1.2 (independent), 5.2.2 (correlated), G.4 (effective degrees of freedom), G.6.4 (expanded); clauses from memory.
/// Sensitivities are exact derivatives. Effective degrees of freedom are not rounded down: t takes any number of them.
/// Inputs that move together count there as one term with the fewest degrees of freedom among them, since the formula is for independent ones.
/// </remarks>
public static class Propagation
{
    /// <summary>The budget worked out, or why it cannot be.</summary>
    /// <param name="budget">Model, inputs and correlations.</param>
    /// <param name="coverage">Share that the expanded uncertainty shall hold, above 0 and below 1.</param>
    public static LinearAnswer Evaluate(Budget budget, double coverage = 0.95)
    {
        ArgumentNullException.ThrowIfNull(budget);
        Probability.Inside(coverage);
        var at = budget.Model.WithSlopes([.. budget.Inputs.Select(i => i.Estimate)]);
        if (!double.IsFinite(at.Value))
            return new LinearAnswer.NoValue();
        for (var i = 0; i < at.Slopes.Length; i++)
            if (!double.IsFinite(at.Slopes[i]))
                return new LinearAnswer.NoSlope(budget.Inputs[i].Name);
        var lines = Lines(budget, at.Slopes);
        var joint = JointParts(budget, at.Slopes);
        double Variance(Effect effect) => Math.Max(0, lines.Where(l => l.Component.Effect == effect).Sum(l => l.Amount * l.Amount) + joint.Sum(p => p.Cross(effect)));
        var (systematic, random) = (Variance(Effect.Systematic), Variance(Effect.Random));
        var variance = systematic + random;
        var df = EffectiveDegreesOfFreedom(budget, lines, joint, variance);
        return new LinearAnswer.Evaluated(at.Value, Math.Sqrt(variance), Math.Sqrt(systematic), Math.Sqrt(random), df, coverage, Factor(coverage, df), lines);
    }

    /// <summary>Coverage factor: Student's t, or the normal score when degrees of freedom are infinite.</summary>
    /// <param name="coverage">Share inside ± k·u, above 0 and below 1.</param>
    /// <param name="degreesOfFreedom">0.5 or more.</param>
    public static double Factor(double coverage, double degreesOfFreedom)
    {
        var tail = 0.5 * (1 - Probability.Inside(coverage));
        return degreesOfFreedom > 1e7 ? Normal.TailQuantile(tail) : StudentT.TailQuantile(tail, degreesOfFreedom);
    }

    private static ImmutableArray<Contribution> Lines(Budget budget, double[] slopes)
    {
        var lines = budget.Inputs.SelectMany((input, i) => input.Components.Select(c => new Contribution(input.Name, c, slopes[i], Math.Abs(slopes[i]) * c.Spread.Standard, 0))).ToList();
        var sum = lines.Sum(l => l.Amount * l.Amount);
        return [.. lines.Select(l => l with { Share = sum > 0 ? l.Amount * l.Amount / sum : 0 })];
    }

    private static double EffectiveDegreesOfFreedom(Budget budget, ImmutableArray<Contribution> lines, ImmutableArray<JointPart> joint, double variance)
    {
        var together = budget.Joint.SelectMany(g => g.Members).Select(i => budget.Inputs[i].Name).ToHashSet(StringComparer.Ordinal);
        var sum = lines.Where(l => !together.Contains(l.Input)).Sum(l => Math.Pow(l.Amount, 4) / l.Component.DegreesOfFreedom)
            + joint.Sum(p => p.Variance * p.Variance / p.DegreesOfFreedom);
        return variance > 0 && sum > 0 ? variance * variance / sum : double.PositiveInfinity;
    }

    private static ImmutableArray<JointPart> JointParts(Budget budget, double[] slopes) => [.. budget.Joint.Select(g => new JointPart(budget, g, slopes))];

    /// <summary>What inputs that move together add; all their components have one effect.</summary>
    private sealed class JointPart
    {
        private readonly Effect effect;
        private readonly double cross;

        public JointPart(Budget budget, JointInputs group, double[] slopes)
        {
            var components = group.Members.SelectMany(i => budget.Inputs[i].Components).ToList();
            effect = components.Count > 0 ? components[0].Effect : Effect.Systematic;
            cross = budget.Correlations.Where(c => group.Members.Contains(c.First))
                .Sum(c => 2 * c.Coefficient * slopes[c.First] * slopes[c.Second] * budget.Inputs[c.First].Standard * budget.Inputs[c.Second].Standard);
            Variance = Math.Max(0, cross + group.Members.Sum(i => slopes[i] * slopes[i] * budget.Inputs[i].Standard * budget.Inputs[i].Standard));
            DegreesOfFreedom = components.Select(c => c.DegreesOfFreedom).Append(double.PositiveInfinity).Min();
        }

        /// <summary>The variance, a value in the result's unit squared.</summary>
        public double Variance { get; }

        /// <summary>Degrees of freedom.</summary>
        public double DegreesOfFreedom { get; }

        /// <summary>What correlation adds to the variance of this effect, a value in the result's unit squared.</summary>
        public double Cross(Effect asked) => asked == effect ? cross : 0;
    }
}
