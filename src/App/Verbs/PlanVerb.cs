using System.CommandLine;
using Ramwright.App.CommandLine;
using Ramwright.Metrology.Input;
using Ramwright.Planning.Strip;

namespace Ramwright.App.Verbs;

/// <summary><c>plan MODEL --for PART</c>: the cheapest order that frees the parts.</summary>
internal sealed class PlanVerb : Verb
{
    private readonly Argument<string> _model = ModelArgument.Create();
    private readonly Option<string[]> _for = new("--for") { Description = "parts to free, by id; several after one another or with commas", HelpName = "PART", Required = true, AllowMultipleArgumentsPerToken = true };
    private readonly Option<string[]> _done = new("--done") { Description = "parts already off and states already reached", HelpName = "ID", AllowMultipleArgumentsPerToken = true };
    private readonly Option<decimal> _rate = RateOption.Create();
    private readonly Option<bool> _rebuild = new("--rebuild") { Description = "show the rebuild as well" };

    public override string Name => "plan";

    public override string Summary => "which parts must come off to free these, in the cheapest order, and what each step spoils and costs";

    public override IReadOnlyList<Example> Examples =>
    [
        new("plan corrie-85 --for seal-ram", "steps, tools, cautions, renewals, minutes likely and safe"),
        new("plan corrie-85 --for seal-ram --rebuild --json", "the same for programs, with the way back together"),
    ];

    public override string ExitMeaning => "0 proven cheapest, 3 a plan with a stated gap, 1 no way off exists, 2 bad input";

    protected internal override IEnumerable<Symbol> Symbols => [_model, _for, _done, _rate, _rebuild];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel) => Task.FromResult(Answer(given));

    private Answer Answer(ParseResult given)
    {
        var found = new List<Mistake>();
        if (ModelArgument.Read(given.GetValue(_model)!, found) is not { } model)
            return CommandLine.Answer.Refused([.. found]);
        var targets = ModelArgument.ReadNodes(model, given.GetValue(_for) ?? [], "--for", found);
        var done = ModelArgument.ReadNodes(model, given.GetValue(_done) ?? [], "--done", found);
        var rates = RateOption.Read(given.GetValue(_rate), model, found);
        if (found.Count == 0 && targets.IsEmpty)
            found.Add(new Mistake(Place.Whole("--for"), "no part was named", $"name a part to free; list them: ramwright parts {model.Tool.Id}", "usage"));
        if (rates is null || found.Count > 0)
            return CommandLine.Answer.Refused([.. found]);

        var job = new StripJob
        {
            Model = model,
            Rates = rates,
            Targets = targets,
            Done = [.. done],
        };
        return StripPlanner.Plan(job) switch
        {
            StripAnswer.Planned planned => PlanAnswer.Of(job, planned.Plan, given.GetValue(_rebuild)),
            StripAnswer.NoWay none => PlanAnswer.NoWay(job, none),
            _ => throw new InvalidOperationException("An answer is a plan or none."),
        };
    }
}
