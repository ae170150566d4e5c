using System.CommandLine;
using System.Globalization;
using Ramwright.App.CommandLine;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Metrology.Uncertainty.MonteCarlo;
using Ramwright.ServiceModels.Budgets;

namespace Ramwright.App.Verbs;

/// <summary><c>uncertainty BUDGET</c>: how well a result is known, by formula and by simulation.</summary>
internal sealed class UncertaintyVerb : Verb
{
    private readonly Argument<string> _budget = new("BUDGET") { Description = "YAML file of a budget (docs/reference/uncertainty-budget.md); - reads standard input" };
    private readonly Option<double?> _coverage = new("--coverage") { Description = "share that the expanded uncertainty shall hold, 0.5 to 0.9999; the file's, or 0.95, when not given", HelpName = "SHARE" };
    private readonly Option<long> _seed = new("--seed") { Description = "seed of the simulation, zero or more; the same seed gives the same answer again", HelpName = "N", DefaultValueFactory = _ => 1 };
    private readonly Option<int> _trials = new("--most-trials") { Description = "the most trials of the simulation, 20,000 to 20,000,000", HelpName = "N", DefaultValueFactory = _ => 2_000_000 };

    public override string Name => "uncertainty";

    public override string Summary => "how well a result is known: a budget by formula and by simulation, and whether the two agree";

    public override IReadOnlyList<Example> Examples =>
    [
        new("uncertainty force.yaml", "an output force and its uncertainty, line by line") { Files = ExampleFiles.Budgets },
        new("uncertainty force.yaml --coverage 0.99 --json", "the same with 99 % coverage, for programs") { Files = ExampleFiles.Budgets },
        new("uncertainty dominated.yaml", "one rectangular part outweighs the others: formula and simulation part, and the simulation is the one to report") { Files = ExampleFiles.Budgets },
    ];

    public override string ExitMeaning => "0 worked out, 2 bad input, 3 the model fails in some trials or the simulation did not settle";

    protected internal override IEnumerable<Symbol> Symbols => [_budget, _coverage, _seed, _trials];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var (coverage, seed, trials) = (given.GetValue(_coverage), given.GetValue(_seed), given.GetValue(_trials));
        if (coverage is not (null or (>= 0.5 and <= 0.9999)))
            return Answer.BadUse("--coverage", string.Create(CultureInfo.InvariantCulture, $"{coverage} is no coverage that is worked out"), "write a share of 0.5 to 0.9999, such as 0.95");
        if (seed < 0)
            return Answer.BadUse("--seed", string.Create(CultureInfo.InvariantCulture, $"{seed} is no seed"), "write a whole number, zero or more");
        if (trials is < 20_000 or > 20_000_000)
            return Answer.BadUse("--most-trials", string.Create(CultureInfo.InvariantCulture, $"{trials} trials: 20,000 at least are wanted, 20,000,000 at most"), "leave the option out for 2,000,000");
        var name = given.GetValue(_budget)!;
        var input = await InputFile.ReadAsync(name, BudgetReader.LargestFile, cancel);
        if (input is InputFile.Missing missing)
            return Answer.Refused([missing.Why]);
        var reading = BudgetReader.Read(name, ((InputFile.Got)input).Bytes);
        if (reading is not BudgetReading.Read { File: var file })
            return Answer.Refused(((BudgetReading.Refused)reading).Mistakes);
        var asked = coverage ?? file.Coverage;
        var linear = (LinearAnswer.Evaluated)Propagation.Evaluate(file.Budget, asked); // the reader refuses models without value or slope
        var ask = new MonteCarloAsk { Seed = (ulong)seed, Coverage = asked, MostTrials = trials };
        return UncertaintyAnswer.Of(file, linear, Simulation.Run(file.Budget, ask), ask);
    }
}
