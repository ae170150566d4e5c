using System.CommandLine;
using Ramwright.App.CommandLine;
using Ramwright.Diagnosis.Actions;
using Ramwright.Diagnosis.Faults;
using Ramwright.Diagnosis.Measurements;
using Ramwright.Diagnosis.Recordings;
using Ramwright.Hydraulics.Identification;
using Ramwright.Hydraulics.Strokes;
using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary><c>diagnose MODEL --seen …</c>: the likely faults with their reasons, and what to do next at what price.</summary>
internal sealed class DiagnoseVerb : Verb
{
    private readonly Argument<string> _model = ModelArgument.Create();
    private readonly Option<string[]> _seen = new("--seen") { Description = "symptoms seen, heard or felt, by id; several after one another or with commas", HelpName = "SYMPTOM", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string[]> _notSeen = new("--not-seen") { Description = "symptoms looked for and not there", HelpName = "SYMPTOM", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string[]> _check = new("--check") { Description = "checks made and their outcome, such as hold=falls", HelpName = "CHECK=OUTCOME", AllowMultipleArgumentsPerToken = true };

    private readonly Option<string[]> _measured = new("--measured")
    {
        Description = "values read: " + string.Join(", ", QuickMeasurement.AllReadings.Select(r => $"{r.Name}={r.Example}")),
        HelpName = "NAME=VALUE",
        AllowMultipleArgumentsPerToken = true,
    };

    private readonly Option<string> _recording = new("--recording") { Description = "recording of one stroke as CSV, weighed in place of what it shows more exactly", HelpName = "FILE" };
    private readonly RecordingInput _input = new();
    private readonly Option<string[]> _tried = new("--tried") { Description = "remedies made after which the tool still failed", HelpName = "REMEDY", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string[]> _done = new("--done") { Description = "parts already off and states already reached", HelpName = "ID", AllowMultipleArgumentsPerToken = true };
    private readonly Option<decimal> _rate = RateOption.Create();

    public override string Name => "diagnose";

    public override string Summary => "which faults are likely by what was seen, checked and measured, why, and the cheapest next act";

    public override IReadOnlyList<Example> Examples =>
    [
        new("diagnose corrie-85 --seen pressure-decays --not-seen slow", "faults by falling probability with their reasons, and what to do next"),
        new("diagnose corrie-85 --seen slow --measured advance-time=6.4s,no-load-current=2.5A --check other-pack=same", "a stopwatch and a clamp meter tell more; one datum counts once"),
        new("diagnose skerry-52 --seen torn-cut --check paper-cut=torn --done battery-removed --json", "from a tool already made safe, for programs"),
        new("diagnose corrie-85 --seen pressure-decays --recording bypass.csv", "a recorded stroke counts for what it shows; the rest is told by eyes and ears") { Files = ExampleFiles.Recordings },
        new("diagnose corrie-85 --not-seen slow,dead,pressure-decays,stops-low", "nothing speaks for a fault: run it and prove it"),
    ];

    public override string ExitMeaning => "0 answered, 2 bad input or a model without faults, 3 the evidence contradicts itself";

    public override IReadOnlyList<(string Key, string Meaning)> JsonKeys =>
    [
        ("faults", "by falling `probability`; `low` and `high` differ only when `exact` is false; `reasons` are data with their `logOdds` (natural, + speaks for)"),
        ("sound", "probability that the tool has none of the model's faults"),
        ("sets", "the likeliest sets, exactly these faults together"),
        ("next", "`act` (`check`, `measure`, `repair`, `run`, `stop`), its `id`, what it takes from where the tool stands, `chance` that a run after it passes, `why`, what is `alongWithIt` in the same opening"),
        ("expectedCost", "until the tool works or is given up, the next act included; at most `gap` above the least possible"),
        ("looks", "what each check and measurement not made yet would save on average, and what it tells in bits"),
        ("leftOut", "data that a finer one tells as well, so that it counts once"),
    ];

    protected internal override IEnumerable<Symbol> Symbols => [_model, _seen, _notSeen, _check, _measured, _recording, .. _input.Symbols, _tried, _done, _rate];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel) => Task.FromResult(Answer(given));

    private Answer Answer(ParseResult given)
    {
        var found = new List<Mistake>();
        if (ModelArgument.Read(given.GetValue(_model)!, found) is not { } model)
            return CommandLine.Answer.Refused([.. found]);
        if (model.Faults.IsEmpty)
            return CommandLine.Answer.Refused([new(Place.Whole(model.Tool.Id), "the model names no faults", "add faults, symptoms, checks and remedies (level 3, docs/service-model.md)", "no-faults")]);
        var asked = new DiagnoseAsked(model, found);
        var evidence = asked.Evidence(given.GetValue(_seen) ?? [], given.GetValue(_notSeen) ?? [], given.GetValue(_check) ?? [], given.GetValue(_measured) ?? []);
        if (given.GetValue(_recording) is { } file)
            evidence = evidence with { Recording = Recorded(model, file, given, found) };
        var tried = asked.Tried(given.GetValue(_tried) ?? []);
        var done = ModelArgument.ReadNodes(model, given.GetValue(_done) ?? [], "--done", found);
        var rates = RateOption.Read(given.GetValue(_rate), model, found);
        if (rates is null || found.Count > 0)
            return CommandLine.Answer.Refused([.. found]);

        var network = FaultNetwork.Of(model);
        var weighed = FaultFinder.Weigh(network, evidence);
        if (weighed is not FaultAnswer.Found { Report: var report })
            return DiagnoseAnswer.Contradictory(model, ((FaultAnswer.Contradictory)weighed).Conflict);
        var options = new ActionOptions { Rates = rates, Open = [.. done], Tried = [.. tried] };
        return NextAction.Advise(network, evidence, options) is ActionAnswer.Advised { Advice: var advice }
            ? DiagnoseAnswer.Of(model, report, advice)
            : throw new InvalidOperationException("What has a posterior has advice.");
    }

    /// <summary>What a recording says; null with a mistake noted, and where it tells nothing.</summary>
    private RecordingEvidence? Recorded(ServiceModel model, string file, ParseResult given, List<Mistake> found)
    {
        var response = _input.ResponseSeconds(given, found);
        if (StrokeParametersReading.Of(model) is not StrokeParametersReading.Ready ready)
        {
            found.Add(StrokeAsked.WithoutBehaviour(model));
            return null;
        }

        if (_input.Read(file, given, found) is not { } taken || found.Count > 0)
            return null;
        var asked = (model.Limits.Pressure.Min.Pascals, model.Limits.Pressure.Max.Pascals);
        switch (StrokeIdentifier.Read(taken.Recording, ready.Tool, response, asked))
        {
            case IdentificationAnswer.Told told:
                return RecordedStroke.Evidence(model, told);
            case IdentificationAnswer.CannotTell cannot:
                found.Add(new(Place.Whole(file), $"nothing can be told from this recording: {cannot.Reason}", $"record {cannot.NextRecording}, or leave --recording out", "no-stroke"));
                return null;
            default:
                throw new InvalidOperationException("A recording is told or cannot be.");
        }
    }
}
