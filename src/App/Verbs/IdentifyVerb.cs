using System.CommandLine;
using Ramwright.App.CommandLine;
using Ramwright.Hydraulics.Identification;
using Ramwright.Hydraulics.Strokes;
using Ramwright.Metrology.Input;

namespace Ramwright.App.Verbs;

/// <summary><c>identify RECORDING --model MODEL</c>: what a recorded stroke says of the tool, and which faults it speaks for.</summary>
internal sealed class IdentifyVerb : Verb
{
    private readonly Argument<string> _recording = new("RECORDING") { Description = "recording of one stroke as CSV: time with pressure, current or both, as the logger wrote it; - for standard input" };
    private readonly Option<string> _model = new("--model") { Description = "service model of level 3 (file or bundled id)", HelpName = "MODEL", Required = true };
    private readonly RecordingInput _input = new();

    public override string Name => "identify";

    public override string Summary => "read a recorded stroke: leaks, filling, air, relief, drive, friction, and the faults they speak for";

    public override IReadOnlyList<Example> Examples =>
    [
        new("identify bypass.csv --model corrie-85", "a pause that bleeds down, told from leaking checks") { Files = ExampleFiles.Recordings },
        new("identify sound.csv --model corrie-85 --json", "nothing speaks for a fault; every figure with its limits") { Files = ExampleFiles.Recordings },
        new("identify sound.csv --model corrie-85 --response 4ms", "the same taken with a slower sensor: a higher true peak") { Files = ExampleFiles.Recordings },
    ];

    public override string ExitMeaning => "0 answered, 2 bad input or a model without behaviour, 3 cannot tell, or the recording contradicts the model";

    public override IReadOnlyList<(string Key, string Meaning)> JsonKeys =>
    [
        ("parameters.NAME.value", "likeliest value in `unit`"),
        ("parameters.NAME.low, .high", "95 % limits"),
        ("parameters.NAME.identified", "false: the recording does not tell it; value and limits are what is believed without it, or a mere limit; `note` says what would tell"),
        ("faults[].probability", "0 to 1; 0.5 and more counts as named"),
        ("nextRecording", "which recording would tell more; null when nothing is left to tell"),
        ("notes", "what was assumed or left out in reading the file"),
    ];

    protected internal override IEnumerable<Symbol> Symbols => [_recording, _model, .. _input.Symbols];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var found = new List<Mistake>();
        var response = _input.ResponseSeconds(given, found);
        var read = _input.Read(given.GetValue(_recording)!, given, found);
        if (ModelArgument.Read(given.GetValue(_model)!, found) is not { } model)
            return Task.FromResult(Answer.Refused([.. found]));
        if (StrokeParametersReading.Of(model) is not StrokeParametersReading.Ready ready)
            return Task.FromResult(Answer.Refused([.. found, StrokeAsked.WithoutBehaviour(model)]));
        if (found.Count > 0 || read is not { } taken)
            return Task.FromResult(Answer.Refused([.. found]));
        var asked = (model.Limits.Pressure.Min.Pascals, model.Limits.Pressure.Max.Pascals);
        return Task.FromResult(IdentifyAnswer.Of(model, StrokeIdentifier.Read(taken.Recording, ready.Tool, response, asked), taken.Notes));
    }
}
