using System.CommandLine;
using Ramwright.App.CommandLine;
using Ramwright.Hydraulics.Strokes;
using Ramwright.Metrology.Input;
using Ramwright.Paper.Charts;
using Ramwright.Paper.Drawing;

namespace Ramwright.App.Verbs;

/// <summary><c>stroke MODEL --with FAULT=VALUE</c>: what a stroke of this tool looks like, sound or with faults.</summary>
internal sealed class StrokeVerb : Verb
{
    private readonly Argument<string> _model = ModelArgument.Create();

    private readonly Option<string[]> _with = new("--with")
    {
        Description = "faults, with commas or one after another: " + string.Join(", ", StrokeFault.All.Select(f => $"{f.Name}={f.Example}")) + "; leaks in m³/s per pascal",
        HelpName = "FAULT=VALUE",
        AllowMultipleArgumentsPerToken = true,
    };

    private readonly Option<string> _load = new("--load") { Description = "close: the dies close on each other; connector=48kN: a connector is pressed, touched and building up over the usual share of the stroke", HelpName = "LOAD", DefaultValueFactory = _ => "close" };
    private readonly Option<string?> _pause = new("--pause") { Description = "let the trigger go at this pressure for five seconds, then pull again", HelpName = "PRESSURE" };
    private readonly Option<string> _rate = new("--rate") { Description = "rows per second in the recording, 10 Hz to 100 kHz", HelpName = "RATE", DefaultValueFactory = _ => "1kHz" };
    private readonly Option<int?> _noise = new("--noise") { Description = "add the noise and steps of sensor and logger, drawn from this seed", HelpName = "SEED" };
    private readonly Option<string?> _out = new("--out") { Description = "write the recording there as CSV, and a picture beside it as SVG", HelpName = "FILE" };

    public override string Name => "stroke";

    public override string Summary => "simulate a stroke of this tool, sound or with faults: pressure and current against time";

    public override IReadOnlyList<Example> Examples =>
    [
        new("stroke corrie-85", "a sound tool closing its dies: when it closes, opens and comes home"),
        new("stroke corrie-85 --with air=4%,bypass=3e-15 --pause 420bar", "air in the oil and a leak past the ram, seen in a pause"),
        new("stroke corrie-85 --with oil=22ml --json", "a reservoir short of oil: the relief never opens", Exit.No),
        new("stroke corrie-85 --load connector=48kN --noise 7 --out stroke.csv", "a recording as a logger would write it, and its picture stroke.svg") { Files = new Dictionary<string, string>(StringComparer.Ordinal) { ["stroke.csv"] = "" } },
    ];

    public override string ExitMeaning => "0 the relief opened, 1 it did not, 2 bad input or a model without behaviour, 3 the parameters belong to no tool";

    protected internal override IEnumerable<Symbol> Symbols => [_model, _with, _load, _pause, _rate, _noise, _out];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var found = new List<Mistake>();
        if (ModelArgument.Read(given.GetValue(_model)!, found) is not { } model)
            return Answer.Refused([.. found]);
        if (StrokeParametersReading.Of(model) is not StrokeParametersReading.Ready ready)
            return Answer.Refused([StrokeAsked.WithoutBehaviour(model)]);
        var tool = StrokeAsked.ReadFaults(given.GetValue(_with) ?? [], ready.Tool, found);
        var plan = new StrokePlan
        {
            Load = StrokeAsked.ReadLoad(given.GetValue(_load)!, tool, found),
            PausePascals = StrokeAsked.ReadPause(given.GetValue(_pause), found),
            SamplesPerSecond = StrokeAsked.ReadRate(given.GetValue(_rate)!, found),
        };
        var file = given.GetValue(_out);
        if (file is not null && !file.EndsWith(".csv", StringComparison.OrdinalIgnoreCase))
            found.Add(new Mistake(Place.Whole("--out"), $"'{file}' is no CSV file", "give a name that ends in .csv; the picture gets the same name with .svg", "usage"));
        if (found.Count > 0)
            return Answer.Refused([.. found]);

        var stroke = StrokeSimulator.Run(tool, plan);
        if (given.GetValue(_noise) is { } seed)
        {
            var noise = new RecordingNoise(seed);
            stroke = stroke with { Samples = [.. stroke.Samples.Select(noise.Of)] };
        }

        if (file is not null)
        {
            await File.WriteAllTextAsync(file, StrokeCsv.Write(stroke.Samples), cancel);
            var picture = Path.ChangeExtension(file, ".svg");
            await File.WriteAllTextAsync(picture, SvgFile.Write(StrokeChart.Of(StrokeAnswer.Chart(model, stroke))), cancel);
            output.Say($"written: {file}, {picture}");
        }

        return StrokeAnswer.Of(model, stroke, ready.Assumed);
    }
}
