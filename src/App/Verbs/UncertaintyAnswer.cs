using System.Globalization;
using System.Text;
using Ramwright.App.CommandLine;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Text;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Metrology.Uncertainty.MonteCarlo;
using Ramwright.ServiceModels.Budgets;

namespace Ramwright.App.Verbs;

/// <summary>A budget worked out, in words: the result first, then the simulation beside it, then line by line.</summary>
internal static class UncertaintyAnswer
{
    public static Answer Of(BudgetFile file, LinearAnswer.Evaluated linear, MonteCarloAnswer simulated, MonteCarloAsk ask)
    {
        var text = new StringBuilder();
        var shown = new ShownIn(file.Unit, RoundedText.PlaceOf(linear.Expanded / Factor(file.Unit)));
        var df = double.IsInfinity(linear.DegreesOfFreedom) ? "infinite" : RoundedText.Digits(linear.DegreesOfFreedom, 3);
        text.Append(CultureInfo.InvariantCulture, $"{file.Name} = {shown.Value(linear.Estimate)} ± {shown.Amount(linear.Expanded)}  ({Percent(linear.Coverage)}, k = {linear.Factor:0.00})\n");
        text.Append(CultureInfo.InvariantCulture, $"  standard uncertainty {shown.Fine(linear.Standard)}: {shown.Fine(linear.Systematic)} the same in every run, {shown.Fine(linear.Random)} new in each; effective degrees of freedom {df}\n");
        var exit = AppendSimulation(text, shown, linear, simulated, ask);
        AppendLines(text, file, linear);
        return new Answer(exit, text.ToString().TrimEnd(), UncertaintyJson.Of(file, linear, simulated, ask));
    }

    private static Exit AppendSimulation(StringBuilder text, ShownIn shown, LinearAnswer.Evaluated linear, MonteCarloAnswer simulated, MonteCarloAsk ask)
    {
        if (simulated is MonteCarloAnswer.NotEverywhere(var failed, var of))
        {
            text.Append(CultureInfo.InvariantCulture, $"  by simulation: in {failed:N0} of {of:N0} trials the model has no value, so neither answer is to be relied on; see to the values and the model\n");
            return Exit.Undecided;
        }

        var figures = simulated is MonteCarloAnswer.Settled(var settled) ? settled : ((MonteCarloAnswer.AtLimit)simulated).Figures;
        text.Append(CultureInfo.InvariantCulture, $"  by simulation: {shown.Value(figures.Mean)}, standard uncertainty {shown.Fine(figures.Standard)}, {Percent(ask.Coverage)} from {shown.Value(figures.Low)} to {shown.Value(figures.High)} ({figures.Trials:N0} trials, seed {ask.Seed})\n");
        var comparison = Comparison.Of(linear, figures);
        var apart = Math.Max(comparison.LowApart, comparison.HighApart);
        var verdict = (comparison.Agree, comparison.IsSure) switch
        {
            (true, true) => "the two agree",
            (false, true) => "the two part, and the simulation is the one to report",
            _ => "more trials would be wanted to say whether the two agree",
        };
        text.Append(CultureInfo.InvariantCulture, $"  {verdict}: the ends are {shown.Finest(apart)} apart, and {shown.Finest(comparison.Tolerance)} would not change two digits\n");
        if (simulated is MonteCarloAnswer.Settled)
            return Exit.Yes;
        text.Append(CultureInfo.InvariantCulture, $"  the simulation did not settle to two digits: its figures may be off by {shown.Finest(figures.OwnError)}; --most-trials gives it more\n");
        return Exit.Undecided;
    }

    private static void AppendLines(StringBuilder text, BudgetFile file, LinearAnswer.Evaluated linear)
    {
        string[] head = ["input", "part", "stated", "standard", "sensitivity", "adds", "share", "dof", "effect"];
        var rows = new List<string[]> { head };
        foreach (var line in linear.Lines.OrderByDescending(l => l.Share))
            rows.Add(Row(file, line));
        var widths = Enumerable.Range(0, head.Length).Select(c => rows.Max(r => r[c].Length)).ToArray();
        text.Append('\n');
        foreach (var row in rows)
            text.Append(("  " + string.Join("  ", row.Select((cell, c) => c is 0 or 1 or 2 or 8 ? cell.PadRight(widths[c]) : cell.PadLeft(widths[c])))).TrimEnd()).Append('\n');
    }

    private static string[] Row(BudgetFile file, Contribution line)
    {
        var unit = file.InputUnits[file.Budget.Model.Inputs.IndexOf(line.Input)];
        var spread = line.Component.Spread;
        var size = With((spread.Given / Factor(unit)).ToString("G6", CultureInfo.InvariantCulture), unit);
        var stated = spread switch
        {
            Spread.Expanded => string.Create(CultureInfo.InvariantCulture, $"{size} expanded, k = {spread.Divisor:0.##}"),
            Spread.Rectangular => $"± {size} rectangular",
            Spread.Triangular => $"± {size} triangular",
            Spread.UShaped => $"± {size} u-shaped",
            _ => $"{size} normal",
        };
        return
        [
            line.Input, line.Component.Name, stated, With(RoundedText.Digits(spread.Standard / Factor(unit), 3), unit), Sensitivity(line.Sensitivity * Factor(unit) / Factor(file.Unit), file.Unit, unit), With(RoundedText.Digits(line.Amount / Factor(file.Unit), 3), file.Unit),
            string.Create(CultureInfo.InvariantCulture, $"{100 * line.Share:0.0} %"), double.IsInfinity(line.Component.DegreesOfFreedom) ? "∞" : RoundedText.Digits(line.Component.DegreesOfFreedom, 3), line.Component.Effect == Effect.Systematic ? "systematic" : "random",
        ];
    }

    private static string Sensitivity(double value, Unit? result, Unit? input) => (result, input) switch
    {
        (null, null) => RoundedText.Digits(value, 4),
        (not null, null) => $"{RoundedText.Digits(value, 4)} {result.Symbol}",
        _ => $"{RoundedText.Digits(value, 4)} {result?.Symbol ?? "1"}/{(input.Symbol.AsSpan().IndexOfAny('/', '·') >= 0 ? $"({input.Symbol})" : input.Symbol)}",
    };

    private static string Percent(double share) => (100 * share).ToString("0.####", CultureInfo.InvariantCulture) + " %";

    private static double Factor(Unit? unit) => unit?.Factor ?? 1;

    private static string With(string number, Unit? unit) => unit is null ? number : new Shown(number, unit.Symbol).ToString();

    /// <summary>The result's unit and the decimal place of its figures.</summary>
    private sealed record ShownIn(Unit? Unit, int Place)
    {
        public string Value(double si) => With(RoundedText.At(Unit?.FromSi(si) ?? si, Place), Unit);

        public string Amount(double si) => With(RoundedText.At(si / Factor(Unit), Place), Unit);

        public string Fine(double si) => With(RoundedText.At(si / Factor(Unit), Place + 1), Unit);

        public string Finest(double si) => With(RoundedText.Digits(si / Factor(Unit), 2), Unit);
    }
}
