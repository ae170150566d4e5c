using System.CommandLine;
using System.Globalization;
using Ramwright.App.CommandLine;
using Ramwright.Instruments;
using Ramwright.Metrology.Input;
using Ramwright.Proving;

namespace Ramwright.App.Verbs;

/// <summary><c>prove READINGS</c>: the verdict on a series of peaks.</summary>
internal sealed class ProveVerb : Verb
{
    private readonly Argument<string> _readings = new("READINGS") { Description = "CSV file of peaks, one run a line; - reads standard input" };
    private readonly Option<string?> _model = new("--model") { Description = "service model (file or bundled id) with limits and number of runs", HelpName = "MODEL" };
    private readonly Option<string?> _window = new("--window") { Description = "limits instead of a model, such as 679..721 (bar), 67.9..72.1MPa or 9850psi..10460psi", HelpName = "LOW..HIGH" };
    private readonly Option<int?> _runs = new("--runs") { Description = "planned number of runs that count; the model's, or with --window as many as there are", HelpName = "N" };
    private readonly Option<string?> _systematic = new("--systematic") { Description = "what the device may be off, the same for every run: expanded (k = 2), such as 4bar or 0.6% of nominal; 0 when not given", HelpName = "U" };
    private readonly Option<string?> _capture = new("--peak-capture") { Description = "how far a true peak may lie above its reading (rise of the pressure × time constant and sampling interval of the device): moves the upper limit alone, added whole; 0 when not given", HelpName = "U" };
    private readonly Option<string?> _resolution = new("--resolution") { Description = "smallest step of the device's readings; when not given, the smallest difference between two of them", HelpName = "STEP" };
    private readonly Option<double> _coverage = new("--coverage") { Description = "share of full runs asked per limit", HelpName = "SHARE", DefaultValueFactory = _ => 0.95 };
    private readonly Option<double> _confidence = new("--confidence") { Description = "confidence of each claim", HelpName = "SHARE", DefaultValueFactory = _ => 0.95 };
    private readonly Option<string?> _rule = new("--rule") { Description = "how the series is judged: claims (one per limit), interval (two-sided, inside the limits; stricter) or every-run (says nothing of later runs); the model's, else claims", HelpName = "RULE" };
    private readonly Option<string?> _extension = new("--extension") { Description = "declared before the first run: N1 runs, and N2 more if and only if they leave it undecided; both looks together keep the confidence", HelpName = "N1+N2" };
    private readonly Option<string?> _earlier = new("--earlier") { Description = "CSV file of earlier series of the model, 8 or more, all there are (header deviation_bar;runs): they moderate the scatter; where the tool's own is larger, its own counts", HelpName = "FILE" };
    private readonly Option<string?> _unit = new("--unit") { Description = "unit of the readings where the header names none: bar, MPa, kPa, psi or kN (with --model); else that of --window, else bar is assumed and said", HelpName = "UNIT" };
    private readonly Option<string?> _decimal = new("--decimal") { Description = "decimal mark where the file leaves it open: point or comma", HelpName = "MARK" };

    public override string Name => "prove";

    public override string Summary => "does this tool open within its limits, run after run, allowing for how well we measure";

    public override IReadOnlyList<Example> Examples =>
    [
        new("prove series-07.csv --model corrie-85 --systematic 4bar", "twelve runs close to 700 bar: conforms") { Files = ExampleFiles.Series },
        new("prove series-08.csv --window 679..721 --runs 12 --systematic 0.6%", "the same mean with three times the scatter: undecided, with what would decide", Exit.Undecided) { Files = ExampleFiles.Series },
        new("prove series-07.csv --window 679..721 --systematic 4bar --peak-capture 3bar", "a gauge that may miss 3 bar of a peak: limits 683..714 bar, and it still conforms") { Files = ExampleFiles.Series },
        new("prove series-08.csv --window 679..721 --extension 12+12 --systematic 3bar", "the first look is undecided: twelve more runs are due, as declared", Exit.Undecided) { Files = ExampleFiles.Series },
        new("prove series-08.csv --window 671..729 --runs 12 --systematic 8bar --earlier earlier.csv", "ten earlier series of the model moderate the scatter; this tool's own is larger, so its own counts") { Files = ExampleFiles.Series },
        new("prove series-09.csv --window 679..721 --runs 12", "run 4 is void for the cause in its line; twelve others count") { Files = ExampleFiles.Series },
    ];

    public override string ExitMeaning => "0 conforms, 1 does not conform, 3 undecided, 2 bad input";

    public override IReadOnlyList<(string Key, string Meaning)> JsonKeys =>
    [
        ("rule", "`claims`, `interval` or `every-run`"),
        ("scatterFrom", "whose scatter the claims rest on: `own` or `moderated`"),
        ("scatterUsed", "the scatter in bar that the claims rest on: own, never less than the steps of the device can hide, or a larger moderated one"),
        ("moderation", "null, or what the earlier series said: `earlierSeries` (how many), `typical` and `moderated` scatter in bar, `alikeDegrees` (about 10 when tools differ much, 60 and more when they scatter alike)"),
        ("extension", "null, or `moreRuns` and `confidenceOfEachLook`"),
        ("oneSidedFactor", "in units of `scatterUsed`; `toleranceFactor` and the interval are of the tool's own scatter"),
    ];

    protected internal override IEnumerable<Symbol> Symbols => [_readings, _model, _window, _runs, _systematic, _capture, _resolution, _coverage, _confidence, _rule, _extension, _earlier, _unit, _decimal];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var limits = ProveAsked.Read(Asked(given), out var mistakes);
        if (limits is null)
            return Answer.Refused(mistakes);

        EarlierSeries? earlier = null;
        if (given.GetValue(_earlier) is { } of)
        {
            var others = await InputFile.ReadAsync(of, EarlierFile.LargestBytes, cancel);
            if (others is InputFile.Missing none)
                return Answer.Refused([none.Why]);
            earlier = EarlierFile.Read(of, ((InputFile.Got)others).Bytes, out mistakes);
            if (earlier is null)
                return Answer.Refused(mistakes);
        }

        var name = given.GetValue(_readings)!;
        var file = await InputFile.ReadAsync(name, Readings.LargestFileBytes, cancel);
        if (file is InputFile.Missing missing)
            return Answer.Refused([missing.Why]);
        var read = Readings.Read(name, ((InputFile.Got)file).Bytes, limits.Readings);
        if (read is not ReadingsAnswer.Taken taken)
            return Answer.Refused(((ReadingsAnswer.Refused)read).Mistakes);
        if (AssumedUnit.Doubt(taken, limits.Window, name) is { } doubt)
            return Answer.Refused([doubt]);

        var planned = limits.Runs ?? Math.Max(2, taken.Readings.Length);
        var most = planned + (limits.MoreRuns ?? 0);
        if (taken.Readings.Length > most)
            return Answer.Refused([TooManyRuns(name, taken, most)]);
        if (taken.UnitAssumed)
            output.Words.WriteLine(AssumedUnit.Note(taken.Unit));
        var series = new ProofSeries
        {
            Limits = limits.Window,
            PlannedRuns = planned,
            Systematic = limits.Systematic,
            Coverage = limits.Coverage,
            Confidence = limits.Confidence,
            Rule = limits.Rule,
            Declared = earlier is not null ? new Declared.Moderated(earlier) : limits.MoreRuns is { } more ? new Declared.Extension(more) : new Declared.OwnScatter(),
            Resolution = limits.Resolution,
            Peaks = [.. taken.Readings.Select(r => r.Peak)],
        };
        return ProveAnswer.Of(ProofDecision.Decide(series), series, taken, limits.Readings);
    }

    private ProveAsked Asked(ParseResult given) => new()
    {
        Model = given.GetValue(_model),
        Window = given.GetValue(_window),
        Runs = given.GetValue(_runs),
        Systematic = given.GetValue(_systematic),
        PeakCapture = given.GetValue(_capture),
        Resolution = given.GetValue(_resolution),
        Coverage = given.GetValue(_coverage),
        Confidence = given.GetValue(_confidence),
        Unit = given.GetValue(_unit),
        Decimal = given.GetValue(_decimal),
        Rule = given.GetValue(_rule),
        Extension = given.GetValue(_extension),
        Earlier = given.GetValue(_earlier),
    };

    private static Mistake TooManyRuns(string name, ReadingsAnswer.Taken taken, int planned) =>
        new(new(name, taken.Readings[planned].Line, 1, 0),
            string.Create(CultureInfo.InvariantCulture, $"{taken.Readings.Length} readings, and {planned} runs were planned: none is dropped, so none is judged"),
            "give the whole series as it was planned (--runs), or the file of the planned series", "too-many-runs");
}
