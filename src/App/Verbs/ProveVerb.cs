using System.CommandLine;
using Ramwright.App.CommandLine;
using Ramwright.Instruments;
using Ramwright.Metrology.Text;
using Ramwright.Proving;
using Ramwright.Proving.Text;

namespace Ramwright.App.Verbs;

/// <summary><c>prove READINGS</c>: the verdict on a series of peaks.</summary>
internal sealed class ProveVerb : Verb
{
    private readonly Argument<string> _readings = new("READINGS") { Description = "CSV file of peaks, one run a line; - reads standard input" };
    private readonly Option<string?> _model = new("--model") { Description = "service model (file or bundled id) with limits and number of runs", HelpName = "MODEL" };
    private readonly Option<string?> _window = new("--window") { Description = "limits instead of a model, such as 679..721 (bar) or 9850psi..10460psi", HelpName = "LOW..HIGH" };
    private readonly Option<int?> _runs = new("--runs") { Description = "planned number of runs; the model's, or with --window as many as there are", HelpName = "N" };
    private readonly Option<string?> _systematic = new("--systematic") { Description = "what the device may be off, the same for every run: expanded (k = 2), such as 4bar or 0.6%; 0 when not given", HelpName = "U" };
    private readonly Option<double> _coverage = new("--coverage") { Description = "share of full runs asked per limit", HelpName = "SHARE", DefaultValueFactory = _ => 0.95 };
    private readonly Option<double> _confidence = new("--confidence") { Description = "confidence of each claim", HelpName = "SHARE", DefaultValueFactory = _ => 0.95 };
    private readonly Option<string?> _unit = new("--unit") { Description = "unit of the readings where the header names none: bar, MPa, kPa, psi or kN (with --model)", HelpName = "UNIT" };
    private readonly Option<string?> _decimal = new("--decimal") { Description = "decimal mark where the file leaves it open: point or comma", HelpName = "MARK" };

    public override string Name => "prove";

    public override string Summary => "does this tool open within its limits, run after run, allowing for how well we measure";

    public override IReadOnlyList<Example> Examples =>
    [
        new("prove series-07.csv --model corrie-85 --systematic 4bar", "twelve runs close to 700 bar: conforms") { Files = ExampleFiles.Series },
        new("prove series-08.csv --window 679..721 --runs 12 --systematic 0.6%", "the same mean with three times the scatter: undecided, with what would decide", Exit.Undecided) { Files = ExampleFiles.Series },
    ];

    public override string ExitMeaning => "0 conforms, 1 does not conform, 3 undecided, 2 bad input";

    protected internal override IEnumerable<Symbol> Symbols => [_readings, _model, _window, _runs, _systematic, _coverage, _confidence, _unit, _decimal];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var asked = new ProveAsked(given.GetValue(_model), given.GetValue(_window), given.GetValue(_runs), given.GetValue(_systematic),
            given.GetValue(_coverage), given.GetValue(_confidence), given.GetValue(_unit), given.GetValue(_decimal));
        var limits = ProveAsked.Read(asked, out var mistakes);
        if (limits is null)
            return Answer.Refused(mistakes);

        var name = given.GetValue(_readings)!;
        var file = await InputFile.ReadAsync(name, Readings.LargestFileBytes, cancel);
        if (file is InputFile.Missing missing)
            return Answer.Refused([missing.Why]);
        var bytes = ((InputFile.Got)file).Bytes;
        var read = Readings.Read(name, bytes, limits.ReadingsOptions);
        if (read is not ReadingsAnswer.Taken taken)
            return Answer.Refused(((ReadingsAnswer.Refused)read).Mistakes);

        var planned = limits.Runs ?? Math.Max(2, taken.Readings.Length);
        if (taken.Readings.Length > planned)
        {
            return Answer.Refused([new(new(name, taken.Readings[planned].Line, 1, 0), $"{taken.Readings.Length} readings, and {planned} runs were planned: none is dropped, so none is judged",
                "give the whole series as it was planned (--runs), or the file of the planned series", "too-many-runs")]);
        }

        var series = new ProofSeries
        {
            Limits = limits.Window,
            PlannedRuns = planned,
            Systematic = SystematicUncertainty.Symmetric(limits.Systematic),
            Coverage = limits.Coverage,
            Confidence = limits.Confidence,
            Rule = limits.Rule,
            Peaks = [.. taken.Readings.Select(r => r.Peak)],
        };
        var verdict = ProofDecision.Decide(series);
        var units = taken.Unit == ReadingUnit.Psi ? UnitSystem.Imperial : UnitSystem.Metric;
        var text = string.Join('\n', [VerdictText.Headline(verdict, units), .. VerdictText.Lines(verdict, series, units).Select(l => "  " + l)]);
        return new Answer(VerdictExit(verdict.Conformity), text, VerdictJson.Of(verdict, series));
    }

    internal static Exit VerdictExit(Conformity conformity) => conformity switch
    {
        Conformity.Conforms => Exit.Yes,
        Conformity.DoesNotConform => Exit.No,
        _ => Exit.Undecided,
    };
}
