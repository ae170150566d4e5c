using System.Collections.Immutable;
using Ramwright.Metrology.Uncertainty.Expressions;

namespace Ramwright.Metrology.Uncertainty;

/// <summary>An input of a measurement: its estimate and the reasons why it may be off.</summary>
/// <param name="Name">As the model calls it.</param>
/// <param name="Estimate">In the input's unit, finite.</param>
/// <param name="Components">None for an exact number.</param>
public sealed record BudgetInput(string Name, double Estimate, ImmutableArray<Component> Components)
{
    /// <summary>The standard uncertainty of all components together, a value in the input's unit.</summary>
    public double Standard => Math.Sqrt(Components.Sum(c => c.Spread.Standard * c.Spread.Standard));
}

/// <summary>How two inputs move together.</summary>
/// <param name="First">Which input, from 0.</param>
/// <param name="Second">Which other.</param>
/// <param name="Coefficient">−1 to 1.</param>
public readonly record struct Correlation(int First, int Second, double Coefficient);

/// <summary>What a result is computed from: a model, its inputs, and how they move together.</summary>
public sealed record Budget
{
    /// <summary>The most components that are taken, and the most inputs.</summary>
    public const int MostComponents = 1_000;

    /// <param name="model">Names the inputs in the same order.</param>
    /// <param name="inputs">One for each name.</param>
    /// <param name="correlations">Each pair at most once.</param>
    /// <exception cref="ArgumentException">A bug in the caller: names differ, an estimate is no number, too many components, or correlations that cannot be.</exception>
    public Budget(Expression model, ImmutableArray<BudgetInput> inputs, ImmutableArray<Correlation> correlations = default)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (!model.Inputs.SequenceEqual(inputs.Select(i => i.Name)))
            throw new ArgumentException("The model and the inputs name different things.", nameof(inputs));
        if (inputs.Any(i => !double.IsFinite(i.Estimate)) || inputs.Sum(i => i.Components.Length) > MostComponents || inputs.Length > MostComponents)
            throw new ArgumentException($"Estimates are finite, and at most {MostComponents} inputs and components are taken.", nameof(inputs));
        (Model, Inputs, Correlations) = (model, inputs, correlations.IsDefault ? [] : correlations);
        if (Correlations.Any(c => !OneEffect(inputs[c.First], inputs[c.Second])))
            throw new ArgumentException("Inputs that move together are all systematic or all random.", nameof(correlations));
        Joint = JointInputs.Of(inputs.Length, Correlations) ?? throw new ArgumentException("No quantities can be correlated like this.", nameof(correlations));
    }

    public Expression Model { get; }

    public ImmutableArray<BudgetInput> Inputs { get; }

    public ImmutableArray<Correlation> Correlations { get; }

    /// <summary>The inputs that move together, group by group.</summary>
    internal ImmutableArray<JointInputs> Joint { get; }

    /// <summary>Whether two inputs can be said to move together: all their components are systematic, or all random.</summary>
    public static bool OneEffect(BudgetInput first, BudgetInput second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return first.Components.Concat(second.Components).Select(c => c.Effect).Distinct().Count() <= 1;
    }

    /// <summary>Whether quantities can be correlated like this: the matrix has no negative eigenvalue.</summary>
    public static bool CanBe(int inputs, ImmutableArray<Correlation> correlations) => JointInputs.Of(inputs, correlations) is not null;
}
