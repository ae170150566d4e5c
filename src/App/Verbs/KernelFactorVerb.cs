using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.Metrology.Tolerance;

namespace Ramwright.App.Verbs;

/// <summary><c>kernel factor</c>: the exact tolerance factor k, one- or two-sided.</summary>
internal sealed class KernelFactorVerb : Verb
{
    private readonly Option<int> _n = new("--n") { Description = "number of runs, 2 to 1,000,000", HelpName = "N", Required = true };
    private readonly Option<double> _coverage = new("--coverage") { Description = "share of runs asked, above 0 and below 1", HelpName = "SHARE", DefaultValueFactory = _ => 0.95 };
    private readonly Option<double> _confidence = new("--confidence") { Description = "confidence asked, above 0 and below 1", HelpName = "SHARE", DefaultValueFactory = _ => 0.95 };
    private readonly Option<bool> _oneSided = new("--one-sided") { Description = "for one limit (noncentral t); without it for both at once (ISO 16269-6)" };
    private readonly Option<double?> _df = new("--df") { Description = "degrees of freedom of the standard deviation; n - 1 when not given", HelpName = "V" };

    public override string Name => "kernel factor";

    public override string Summary => "the exact tolerance factor k: mean ± k·s holds the asked share with the asked confidence";

    public override IReadOnlyList<Example> Examples =>
    [
        new("kernel factor --n 12 --coverage 0.95 --confidence 0.95 --one-sided", "2.736 standard deviations to one limit"),
        new("kernel factor --n 12 --coverage 0.95 --confidence 0.95", "3.162 standard deviations to each side"),
    ];

    public override string ExitMeaning => "0 answered, 2 bad input";

    protected internal override IEnumerable<Symbol> Symbols => [_n, _coverage, _confidence, _oneSided, _df];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel) => Task.FromResult(Answer(given));

    private Answer Answer(ParseResult given)
    {
        var (n, coverage, confidence) = (given.GetValue(_n), given.GetValue(_coverage), given.GetValue(_confidence));
        var df = given.GetValue(_df);
        if (n is < 2 or > 1_000_000)
            return CommandLine.Answer.BadUse("--n", $"{n} runs: a factor wants at least two runs, and at most 1,000,000", "give the number of full runs");
        foreach (var (option, share) in new[] { ("--coverage", coverage), ("--confidence", confidence) })
        {
            if (share is not (> 0 and < 1))
                return CommandLine.Answer.BadUse(option, string.Create(CultureInfo.InvariantCulture, $"{share} is no share"), "write a share above 0 and below 1, such as 0.95");
        }

        if (df is { } v && v is not (>= 1 and <= 1e7))
            return CommandLine.Answer.BadUse("--df", string.Create(CultureInfo.InvariantCulture, $"{v} degrees of freedom: at least 1 is wanted, at most 10,000,000"), "leave --df out for n - 1");
        var oneSided = given.GetValue(_oneSided);
        var factor = oneSided ? ToleranceFactor.OneSided(n, coverage, confidence, df) : ToleranceFactor.TwoSided(n, coverage, confidence, df);
        return new Answer(Exit.Yes, factor.ToString("0.#####", CultureInfo.InvariantCulture), new JsonObject
        {
            ["factor"] = factor,
            ["n"] = n,
            ["coverage"] = coverage,
            ["confidence"] = confidence,
            ["oneSided"] = oneSided,
            ["degreesOfFreedom"] = df ?? n - 1,
        });
    }
}
