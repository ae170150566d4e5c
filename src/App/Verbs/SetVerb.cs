using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.ServiceModels.Model;
using Ramwright.Setting;

namespace Ramwright.App.Verbs;

/// <summary><c>set MODEL --readings "0:612,30:655"</c>: which way and how far to turn the relief screw next.</summary>
internal sealed class SetVerb : Verb
{
    private const double FarthestDegrees = 7200;

    private readonly Argument<string> _model = ModelArgument.Create();
    private readonly Option<string?> _readings = new("--readings") { Description = "runs so far in the order taken, screw position in degrees from as-found (clockwise positive) : peak in bar", HelpName = "DEG:BAR,..." };
    private readonly Option<bool> _locked = new("--locked") { Description = "the last reading was taken after the screw had been locked" };
    private readonly Option<bool> _rebuilt = new("--rebuilt") { Description = "no run yet since a rebuild: where to put the screw first, low by computation" };
    private readonly Option<double> _risk = new("--risk") { Description = "largest chance of the mean past the maximum that a turn may carry", HelpName = "SHARE", DefaultValueFactory = _ => new SettingOptions().LargestChancePastMaximum };
    private readonly Option<string?> _systematic = new("--systematic") { Description = "what the device may be off, the same for every run: expanded (k = 2), such as 6bar or 0.6%; 4bar when not given", HelpName = "U" };
    private readonly Option<string?> _capture = new("--peak-capture") { Description = "how far a peak may lie above what the device shows, such as 9bar; 0 when not given", HelpName = "P" };

    public override string Name => "set";

    public override string Summary => "which way and how far to turn the relief screw next, with the chance of landing inside and of passing the maximum";

    public override IReadOnlyList<Example> Examples =>
    [
        new("set corrie-85 --readings 0:612", "612 bar as found: the first turn, from the model's own gain"),
        new("set corrie-85 --readings 0:612,570:676,750:699", "two turns on: stop or go on"),
        new("set corrie-85 --rebuilt", "after a rebuild, before the first run"),
    ];

    public override string ExitMeaning => "0 advice, or in; 1 the screw does not answer: go to Find; 3 the scatter is too large to prove, or no turn helps; 2 bad input";

    protected internal override IEnumerable<Symbol> Symbols => [_model, _readings, _locked, _rebuilt, _risk, _systematic, _capture];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var found = new List<Mistake>();
        var model = ModelArgument.Read(given.GetValue(_model)!, found);
        if (model is null)
            return Task.FromResult(Answer.Refused([.. found]));
        var options = ReadOptions(given, model.Limits.Nominal, found);
        var runs = given.GetValue(_readings) is { } readings ? ReadRuns(readings, given.GetValue(_locked), model.Limits, found) : [];
        if (given.GetValue(_rebuilt) && runs.Count > 0)
            found.Add(Usage("--rebuilt", "there are readings already", "leave --rebuilt out: it asks where the screw goes before the first run"));
        if (found.Count > 0)
            return Task.FromResult(Answer.Refused([.. found]));
        return Task.FromResult(given.GetValue(_rebuilt)
            ? Of(FirstSetting.AfterRebuild(model.Limits, model.Behaviour?.Relief, options))
            : Of(SettingAdvisor.Advise(model, runs, options)));
    }

    private SettingOptions ReadOptions(ParseResult given, Pressure nominal, List<Mistake> found)
    {
        var options = new SettingOptions();
        if (given.GetValue(_risk) is > 0 and < 1 and var risk)
            options = options with { LargestChancePastMaximum = risk };
        else
            found.Add(Usage("--risk", string.Create(CultureInfo.InvariantCulture, $"{given.GetValue(_risk)} is no chance to allow"), "write a share above 0 and below 1, such as 0.001"));
        if (given.GetValue(_systematic) is { } systematic && PressureOption.ReadAmount("--systematic", systematic, nominal, found) is { } expanded)
            options = options with { ReadingUncertainty = 0.5 * expanded };
        if (given.GetValue(_capture) is { } capture && PressureOption.ReadAmount("--peak-capture", capture, nominal, found) is { } missed)
            options = options with { PeakAboveReading = missed };
        return options;
    }

    private static List<SettingRun> ReadRuns(string text, bool locked, Limits limits, List<Mistake> found)
    {
        var runs = new List<SettingRun>();
        var words = text.Split([',', ';', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (words.Length == 0)
            found.Add(Usage("--readings", "there is no reading in it", "write degrees from as-found, a colon, the peak in bar: 0:612; or leave --readings out before the first run"));
        if (words.Length > SettingAdvisor.MostRuns)
            found.Add(Usage("--readings", $"{words.Length} readings: at most {SettingAdvisor.MostRuns} are taken", "give the runs since the screw was as found"));
        foreach (var word in words.Take(SettingAdvisor.MostRuns))
        {
            var parts = word.Split(':');
            if (parts.Length != 2 || Number(parts[0]) is not { } degrees || Number(parts[1]) is not { } bar)
                found.Add(Usage("--readings", $"'{word}' is no reading", "write degrees from as-found, a colon, the peak in bar, with a decimal point: 30:655.5"));
            else if (Math.Abs(degrees) > FarthestDegrees)
                found.Add(Usage("--readings", $"'{word}': no screw of this kind turns so far", "count the degrees from as-found, clockwise positive; a full turn is 360"));
            else if (Math.Abs(bar) > 1e6)
                found.Add(Usage("--readings", $"'{word}' is no pressure of any tool", "write the peak in bar"));
            else if (ReadingCheck.Of(Pressure.FromBar(bar), limits) is ReadingCheck.Implausible wrong)
                found.Add(Usage("--readings", $"'{word}': {wrong.What}", wrong.Mend));
            else
                runs.Add(new SettingRun(Angle.FromDegrees(degrees), Pressure.FromBar(bar)));
        }

        if (locked && runs.Count > 0)
            runs[^1] = runs[^1] with { Locked = true };
        return runs;
    }

    private static double? Number(string word) => double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;

    private static Mistake Usage(string option, string what, string mend) => new(Place.Whole(option), what, mend, "usage");

    private static Answer Of(SettingAdvice advice)
    {
        var exit = advice.Outcome switch
        {
            SettingOutcome.GoToFind => Exit.No,
            SettingOutcome.ScatterTooLarge or SettingOutcome.NoTurnHelps => Exit.Undecided,
            SettingOutcome.AskBack => Exit.BadInput,
            _ => Exit.Yes,
        };
        var text = string.Join('\n', [SettingWords.Headline(advice, UnitSystem.Metric), .. SettingWords.Lines(advice, UnitSystem.Metric).Select(l => "  " + l)]);
        return new Answer(exit, text, new JsonObject
        {
            ["outcome"] = Kebab.Of(advice.Outcome),
            ["prior"] = new JsonObject { ["barPerTurn"] = advice.PriorBarPerTurn },
            ["gain"] = new JsonObject { ["barPerTurn"] = advice.BarPerTurn },
            ["screw"] = new JsonObject { ["degrees"] = Math.Round(advice.Screw.Degrees, 6), ["twelfths"] = Math.Round(advice.Screw.Turns * 12, 2) },
            ["advice"] = new JsonObject { ["direction"] = Kebab.Of(advice.Direction), ["degrees"] = Math.Round(advice.Turn.Degrees, 6), ["twelfths"] = Math.Round(advice.Turn.Turns * 12, 2) },
            ["predicted"] = Window(advice.PredictedMean, advice.PredictedInterval),
            ["nextRun"] = Window(advice.PredictedMean, advice.NextRun),
            ["chanceInWindow"] = advice.ChanceInWindow,
            ["chancePastMaximum"] = advice.ChancePastMaximum,
            ["scatterBar"] = advice.Scatter?.Bar,
            ["suspicions"] = new JsonArray([.. advice.Suspicions.Select(s => new JsonObject { ["code"] = s.Code, ["text"] = s.Text })]),
        });
    }

    private static Answer Of(FirstSetting first) => new(Exit.Yes, SettingWords.First(first, UnitSystem.Metric), first is FirstSetting.TurnIn t
        ? new JsonObject
        {
            ["outcome"] = "first-setting",
            ["start"] = t.FromStop ? "outer-stop" : "free-spring",
            ["advice"] = new JsonObject { ["direction"] = Kebab.Of(t.Direction), ["degrees"] = Math.Round(t.Turn.Degrees, 6), ["twelfths"] = Math.Round(t.Turn.Turns * 12, 2) },
            ["predicted"] = Window(t.Mean, t.Expected),
            ["chancePastMaximum"] = t.ChancePastMaximum,
        }
        : new JsonObject { ["outcome"] = "no-relief-data", ["start"] = "free-spring" });

    private static JsonObject Window(Pressure? mean, PressureWindow? interval) => new() { ["mean"] = mean?.Bar, ["low"] = interval?.Min.Bar, ["high"] = interval?.Max.Bar };
}
