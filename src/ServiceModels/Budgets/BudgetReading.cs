using System.Collections.Immutable;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Uncertainty;

namespace Ramwright.ServiceModels.Budgets;

/// <summary>An uncertainty budget as a file holds it; all quantities in SI, with the units they were written in.</summary>
/// <param name="Name">What the result is called.</param>
/// <param name="Unit">The unit that the result is shown in; null for a plain number.</param>
/// <param name="InputUnits">The unit of each input, null for a plain number; in the budget's order.</param>
/// <param name="Coverage">Share that the expanded uncertainty shall hold, above 0 and below 1.</param>
/// <param name="Budget">Model, inputs, correlations.</param>
public sealed record BudgetFile(string Name, Unit? Unit, ImmutableArray<Unit?> InputUnits, double Coverage, Budget Budget);

/// <summary>What reading a budget gave: the budget, or every mistake in it.</summary>
public abstract record BudgetReading
{
    private BudgetReading() { }

    public sealed record Read(BudgetFile File) : BudgetReading;

    public sealed record Refused(ImmutableArray<Mistake> Mistakes) : BudgetReading;
}
