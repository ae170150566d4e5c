using System.Collections.Immutable;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Metrology.Uncertainty.Expressions;

namespace Ramwright.Metrology.Tests.Uncertainty;

/// <summary>Short ways to write a budget in a test.</summary>
internal static class Models
{
    public static Budget Of(string model, params ImmutableArray<BudgetInput> inputs) => new(Read(model, [.. inputs.Select(i => i.Name)]), inputs);

    public static Budget With(this Budget budget, params ImmutableArray<Correlation> correlations) => new(budget.Model, budget.Inputs, correlations);

    public static Expression Read(string model, params ImmutableArray<string> inputs) => Expression.Read(model, inputs) switch
    {
        TextReading<Expression>.Good good => good.Value,
        TextReading<Expression>.Bad bad => throw new ArgumentException(bad.Fault.What, nameof(model)),
        _ => throw new InvalidOperationException(),
    };

    public static BudgetInput X(string name, double estimate, params ImmutableArray<Component> components) => new(name, estimate, components);

    public static Component Normal(double u, double degreesOfFreedom = double.PositiveInfinity, Effect effect = Effect.Random) => new("stated", new Spread.Normal(u), effect, degreesOfFreedom);

    public static Component Rectangular(double halfWidth, double degreesOfFreedom = double.PositiveInfinity, Effect effect = Effect.Random) => new("within", new Spread.Rectangular(halfWidth), effect, degreesOfFreedom);

    public static LinearAnswer.Evaluated Linear(this Budget budget, double coverage = 0.95) => Assert.IsType<LinearAnswer.Evaluated>(Propagation.Evaluate(budget, coverage));
}
