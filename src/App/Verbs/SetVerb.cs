using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Setting;

namespace Ramwright.App.Verbs;

/// <summary><c>set MODEL --readings "0:612,30:655"</c>: which way and how far to turn the relief screw next.</summary>
internal sealed class SetVerb : Verb
{
    private const int MostReadings = 200;

    private readonly Argument<string> _model = ModelArgument.Create();
    private readonly Option<string> _readings = new("--readings") { Description = "runs so far, screw position in degrees from as-found (clockwise positive) : peak in bar", HelpName = "DEG:BAR,...", DefaultValueFactory = _ => "" };

    public override string Name => "set";

    public override string Summary => "which way and how far to turn the relief screw next, with the chance of landing inside and of passing the maximum";

    public override IReadOnlyList<Example> Examples =>
    [
        new("set corrie-85 --readings 0:612", "612 bar as found: the first turn, from the model's own gain"),
        new("set corrie-85 --readings 0:612,60:668,95:699", "two turns on: stop or go on"),
    ];

    public override string ExitMeaning => "0 advice, or in; 1 the screw does not answer: go to Find; 3 the scatter is too large to prove; 2 bad input";

    protected internal override IEnumerable<Symbol> Symbols => [_model, _readings];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var found = new List<Mistake>();
        var model = ModelArgument.Read(given.GetValue(_model)!, found);
        var runs = ReadRuns(given.GetValue(_readings)!, found);
        return Task.FromResult(model is null || found.Count > 0 ? Answer.Refused([.. found]) : Of(SettingAdvisor.Advise(model, runs)));
    }

    private static List<SettingRun> ReadRuns(string text, List<Mistake> found)
    {
        var runs = new List<SettingRun>();
        var words = text.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (words.Length > MostReadings)
            found.Add(Usage($"{words.Length} readings: at most {MostReadings} are taken", "give the runs since the screw was as found"));
        foreach (var word in words.Take(MostReadings))
        {
            var parts = word.Split(':');
            if (parts.Length == 2 && Number(parts[0]) is { } degrees and >= -7200 and <= 7200 && Number(parts[1]) is { } bar and >= 0 and <= 2000)
                runs.Add(new SettingRun(Angle.FromDegrees(degrees), Pressure.FromBar(bar)));
            else
                found.Add(Usage($"'{word}' is no reading", "write degrees from as-found, a colon, the peak in bar from 0 to 2,000: 30:655"));
        }

        return runs;
    }

    private static double? Number(string word) => double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;

    private static Mistake Usage(string what, string mend) => new(Place.Whole("--readings"), what, mend, "usage");

    private static Answer Of(SettingAdvice advice)
    {
        var exit = advice.Outcome switch { SettingOutcome.GoToFind => Exit.No, SettingOutcome.ScatterTooLarge => Exit.Undecided, _ => Exit.Yes };
        return new Answer(exit, Text(advice), new JsonObject
        {
            ["outcome"] = Kebab.Of(advice.Outcome),
            ["prior"] = new JsonObject { ["barPerTurn"] = advice.PriorBarPerTurn },
            ["gain"] = new JsonObject { ["barPerTurn"] = advice.BarPerTurn },
            ["advice"] = new JsonObject { ["direction"] = Kebab.Of(advice.Direction), ["degrees"] = advice.Turn.Degrees, ["twelfths"] = Math.Round(advice.Turn.Turns * 12, 1) },
            ["predicted"] = new JsonObject { ["mean"] = advice.PredictedMean?.Bar, ["low"] = advice.PredictedInterval?.Min.Bar, ["high"] = advice.PredictedInterval?.Max.Bar },
            ["chanceInWindow"] = advice.ChanceInWindow,
            ["chancePastMaximum"] = advice.ChancePastMaximum,
            ["suspicions"] = new JsonArray([.. advice.Suspicions.Select(s => new JsonObject { ["code"] = s.Code, ["text"] = s.Text })]),
        });
    }

    private static string Text(SettingAdvice advice)
    {
        var text = new StringBuilder();
        text.Append(advice.Outcome switch
        {
            SettingOutcome.Turn => string.Create(CultureInfo.InvariantCulture, $"turn {Kebab.Of(advice.Direction)} {advice.Turn.Degrees:0}°, about {advice.Turn.Turns * 12:0.#} twelfths, then run again"),
            SettingOutcome.In => "stop: the mean lies in the window; lock the screw, then check once more",
            SettingOutcome.RunFirst => "run first: read a full run before any turn",
            SettingOutcome.GoToFind => "go to Find: the screw does not answer as it should",
            _ => "the scatter is too large to prove: a turn would not help",
        }).Append('\n');
        text.Append(CultureInfo.InvariantCulture, $"  {advice.BarPerTurn:0.#} bar per turn clockwise (before the first run {advice.PriorBarPerTurn:0.#})\n");
        if (advice is { PredictedMean: { } mean, PredictedInterval: { } interval })
            text.Append(CultureInfo.InvariantCulture, $"  expected mean {QuantityText.Show(mean, UnitSystem.Metric)}, 95 % between {QuantityText.Show(interval.Min, UnitSystem.Metric)} and {QuantityText.Show(interval.Max, UnitSystem.Metric)}\n");
        if (advice is { ChanceInWindow: { } inside, ChancePastMaximum: { } past })
            text.Append(CultureInfo.InvariantCulture, $"  in the window: {100 * inside:0.#} in 100; past the maximum: {100 * past:0.###} in 100\n");
        foreach (var suspicion in advice.Suspicions)
            text.Append("  ").Append(suspicion.Text).Append('\n');
        return text.ToString().TrimEnd();
    }
}
