using System.Collections.Immutable;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Metrology.Uncertainty.Expressions;
using Ramwright.Metrology.Uncertainty.MonteCarlo;
using Ramwright.Proving.Reference;

namespace Ramwright.Proving;

/// <summary>The force at the jaws that a proof shows, at the mean of its peaks; told, not judged.</summary>
/// <param name="Estimate">Pressure × area − spring − friction; for a force cell what it read.</param>
/// <param name="Expanded">By the law of propagation (JCGM 100), 95 %.</param>
/// <param name="Factor">Coverage factor of it.</param>
/// <param name="Low">Lower end of the 95 % interval by simulation (JCGM 101).</param>
/// <param name="High">Upper end of it.</param>
/// <param name="Agree">Whether the two agree within half the second digit of the standard uncertainty (JCGM 101, 8.1); else the simulation is the one to report.</param>
/// <param name="Trials">Of the simulation.</param>
/// <param name="Capture">So much more the force may have been where peaks lie above their readings.</param>
/// <param name="Largest">The contribution that weighs most.</param>
public sealed record ProofForce(Force Estimate, Force Expanded, double Factor, Force Low, Force High, bool Agree, int Trials, Force Capture, string Largest)
{
    // Five times finer than the digits asked, so that the simulation's own error cannot part the two (JCGM 101, 8.2; from memory).
    private const int MostTrials = 1_000_000;
    private const ulong Seed = 1;

    /// <summary>The force; null below two runs, or where the simulation has no value.</summary>
    /// <param name="reference">What read the peaks.</param>
    /// <param name="verdict">Mean, scatter and number of the runs.</param>
    /// <param name="conversion">Area, spring and friction of the tool.</param>
    public static ProofForce? Of(ReferenceBudget reference, Verdict verdict, ForceConversion conversion)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(verdict);
        ArgumentNullException.ThrowIfNull(conversion);
        if (verdict is not { Mean: { } mean, StandardDeviation: { } deviation, Runs: >= 2 })
            return null;
        var scatter = new Component("scatter of the mean", new Spread.Normal(deviation.Pascals / Math.Sqrt(verdict.Runs)), Effect.Random, verdict.Runs - 1);
        var budget = reference.Kind == ReferenceKind.ForceCell ? AsRead(reference, conversion, mean, scatter) : FromPressure(reference, conversion, mean, scatter);
        if (Propagation.Evaluate(budget) is not LinearAnswer.Evaluated linear)
            return null;
        var figures = Simulation.Run(budget, new MonteCarloAsk { Seed = Seed, MostTrials = MostTrials, Finer = 5 }) switch
        {
            MonteCarloAnswer.Settled settled => settled.Figures,
            MonteCarloAnswer.AtLimit limit => limit.Figures,
            _ => null,
        };
        return figures is null ? null : new ProofForce(
            Force.FromNewtons(linear.Estimate), Force.FromNewtons(linear.Expanded), linear.Factor, Force.FromNewtons(figures.Low), Force.FromNewtons(figures.High),
            Comparison.Of(linear, figures).Agree, figures.Trials, reference.Capture * conversion.Area, linear.Lines.MaxBy(l => l.Amount)?.Component.Name ?? "none");
    }

    private static Budget FromPressure(ReferenceBudget reference, ForceConversion tool, Pressure mean, Component scatter)
    {
        var area = tool.Area.SquareMetres;
        return OutputForce.Of(
            new("pressure", mean.Pascals, [.. reference.Lines.Where(l => l.Effect == Effect.Systematic).Select(l => ComponentOf(l, 1)), scatter]),
            new("area", area, [new("ram diameter", new Spread.Rectangular(2 * area * (tool.DiameterLimit / tool.RamDiameter)), Effect.Systematic)]),
            tool.SpringInput, tool.FrictionInput);
    }

    /// <summary>A cell reads the force itself: ram, spring and friction stand between it and the pressure, not between it and the force.</summary>
    private static Budget AsRead(ReferenceBudget reference, ForceConversion tool, Pressure mean, Component scatter)
    {
        var area = tool.Area.SquareMetres;
        string[] between = [.. tool.SpringInput.Components.Concat(tool.FrictionInput.Components).Select(c => c.Name), "friction", "ram diameter"];
        var lines = reference.Lines.Where(l => l.Effect == Effect.Systematic && !between.Contains(l.What, StringComparer.Ordinal)).Select(l => ComponentOf(l, area));
        var random = new Component(scatter.Name, new Spread.Normal(scatter.Spread.Standard * area), Effect.Random, scatter.DegreesOfFreedom);
        return Expression.Read("force", ["force"]) is TextReading<Expression>.Good(var model)
            ? new Budget(model, [new("force", tool.Behind(mean).Newtons, [.. lines, random])])
            : throw new InvalidOperationException("The model does not read.");
    }

    /// <summary>A line with its own spread, in pascals or, times the area, in newtons.</summary>
    private static Component ComponentOf(BudgetLine line, double factor)
    {
        var size = line.Standard.Pascals * line.Divisor * factor;
        Spread spread = line.Shape switch
        {
            SpreadShape.Rectangular => new Spread.Rectangular(size),
            SpreadShape.Triangular => new Spread.Triangular(size),
            SpreadShape.UShaped => new Spread.UShaped(size),
            SpreadShape.Expanded => new Spread.Expanded(size, line.Divisor),
            _ => new Spread.Normal(size),
        };
        return new(line.What, spread, line.Effect, line.DegreesOfFreedom ?? double.PositiveInfinity);
    }
}
