using System.Text.Json.Nodes;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Metrology.Uncertainty.MonteCarlo;
using Ramwright.ServiceModels.Budgets;

namespace Ramwright.App.Verbs;

/// <summary>A budget worked out, for programs: unrounded, in the units of the file.</summary>
internal static class UncertaintyJson
{
    public static JsonObject Of(BudgetFile file, LinearAnswer.Evaluated linear, MonteCarloAnswer simulated, MonteCarloAsk ask)
    {
        var factor = file.Unit?.Factor ?? 1;
        double Value(double si) => file.Unit?.FromSi(si) ?? si;
        return new JsonObject
        {
            ["result"] = file.Name,
            ["unit"] = file.Unit?.Symbol ?? "1",
            ["value"] = Value(linear.Estimate),
            ["standardUncertainty"] = linear.Standard / factor,
            ["systematic"] = linear.Systematic / factor,
            ["random"] = linear.Random / factor,
            ["degreesOfFreedom"] = Finite(linear.DegreesOfFreedom),
            ["coverage"] = linear.Coverage,
            ["coverageFactor"] = linear.Factor,
            ["expandedUncertainty"] = linear.Expanded / factor,
            ["lines"] = new JsonArray([.. linear.Lines.Select(l => Line(file, l, factor))]),
            ["simulation"] = Simulated(linear, simulated, ask, factor, Value),
        };
    }

    private static JsonObject Line(BudgetFile file, Contribution line, double factor)
    {
        var unit = file.InputUnits[file.Budget.Model.Inputs.IndexOf(line.Input)];
        var inputFactor = unit?.Factor ?? 1;
        return new JsonObject
        {
            ["input"] = line.Input,
            ["part"] = line.Component.Name,
            ["unit"] = unit?.Symbol ?? "1",
            ["shape"] = line.Component.Spread switch
            {
                Spread.Expanded => "expanded",
                Spread.Rectangular => "rectangular",
                Spread.Triangular => "triangular",
                Spread.UShaped => "u-shaped",
                _ => "normal",
            },
            ["stated"] = line.Component.Spread.Given / inputFactor,
            ["divisor"] = line.Component.Spread.Divisor,
            ["standardUncertainty"] = line.Component.Spread.Standard / inputFactor,
            ["sensitivity"] = line.Sensitivity * inputFactor / factor,
            ["adds"] = line.Amount / factor,
            ["share"] = line.Share,
            ["degreesOfFreedom"] = Finite(line.Component.DegreesOfFreedom),
            ["effect"] = line.Component.Effect == Effect.Systematic ? "systematic" : "random",
        };
    }

    private static JsonObject Simulated(LinearAnswer.Evaluated linear, MonteCarloAnswer simulated, MonteCarloAsk ask, double factor, Func<double, double> value)
    {
        if (simulated is MonteCarloAnswer.NotEverywhere(var failed, var of))
            return new JsonObject { ["outcome"] = "not-everywhere", ["failed"] = failed, ["trials"] = of, ["seed"] = ask.Seed };
        var (outcome, figures) = simulated is MonteCarloAnswer.Settled(var settled) ? ("settled", settled) : ("at-limit", ((MonteCarloAnswer.AtLimit)simulated).Figures);
        var comparison = Comparison.Of(linear, figures);
        return new JsonObject
        {
            ["outcome"] = outcome,
            ["mean"] = value(figures.Mean),
            ["standardUncertainty"] = figures.Standard / factor,
            ["low"] = value(figures.Low),
            ["high"] = value(figures.High),
            ["trials"] = figures.Trials,
            ["seed"] = ask.Seed,
            ["ownError"] = figures.OwnError / factor,
            ["tolerance"] = comparison.Tolerance / factor,
            ["lowApart"] = comparison.LowApart / factor,
            ["highApart"] = comparison.HighApart / factor,
            ["agree"] = comparison.Agree,
            ["sure"] = comparison.IsSure,
        };
    }

    /// <summary>JSON has no infinity: null stands for it.</summary>
    private static JsonNode? Finite(double value) => double.IsFinite(value) ? JsonValue.Create(value) : null;
}
