using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.Metrology.Input;
using Ramwright.Parts;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary><c>parts MODEL</c>: every part, or with <c>--for</c> what a job needs and the cheapest cover by kits and loose parts.</summary>
internal sealed class PartsVerb : Verb
{
    private readonly Argument<string> _model = ModelArgument.Create();
    private readonly Option<string[]> _for = new("--for") { Description = "parts to free; what the plan renews is what is needed", HelpName = "PART", AllowMultipleArgumentsPerToken = true };
    private readonly Option<decimal> _rate = RateOption.Create();

    public override string Name => "parts";

    public override string Summary => "every part of a model, or what a job needs and the cheapest way to buy it";

    public override IReadOnlyList<Example> Examples =>
    [
        new("parts corrie-85", "all parts by id, with number, count and rule of renewal"),
        new("parts corrie-85 --for seal-ram", "what must be renewed, and the cheapest cover by kits and loose parts"),
    ];

    public override string ExitMeaning => "0 answered, 1 no way off exists, 3 a cover with a stated gap, 2 bad input";

    protected internal override IEnumerable<Symbol> Symbols => [_model, _for, _rate];

    protected internal override Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel) => Task.FromResult(Answer(given));

    private Answer Answer(ParseResult given)
    {
        var found = new List<Mistake>();
        if (ModelArgument.Read(given.GetValue(_model)!, found) is not { } model)
            return CommandLine.Answer.Refused([.. found]);
        if (given.GetValue(_for) is not { Length: > 0 } asked)
            return List(model);
        var targets = ModelArgument.ReadNodes(model, asked, "--for", found);
        if (found.Count == 0 && targets.IsEmpty)
            found.Add(new Mistake(Place.Whole("--for"), "no part was named", $"name a part to free; list them: ramwright parts {model.Tool.Id}", "usage"));
        if (RateOption.Read(given.GetValue(_rate), model, found) is not { } rates || found.Count > 0)
            return CommandLine.Answer.Refused([.. found]);

        var job = new StripJob { Model = model, Rates = rates, Targets = targets };
        return StripPlanner.Plan(job) switch
        {
            StripAnswer.Planned planned => Need(model, PartsNeed.Of(model, planned.Plan), rates.LabourPerHour.Currency),
            StripAnswer.NoWay none => PlanAnswer.NoWay(job, none),
            _ => throw new InvalidOperationException("An answer is a plan or none."),
        };
    }

    private static Answer List(ServiceModel model)
    {
        var width = model.Parts.Length == 0 ? 0 : model.Parts.Max(p => p.Id.Value.Length);
        var text = new StringBuilder();
        foreach (var part in model.Parts)
        {
            var price = part.Price is { } p ? p.ToString() : "no price";
            text.Append(CultureInfo.InvariantCulture, $"{part.Id.Value.PadRight(width)}  {part.Count,2} × {part.Name}, {part.Number ?? "no number"}, {Kebab.Of(part.Renew)}, {price}\n");
        }

        if (model.Parts.IsEmpty)
            text.Append("this model lists no parts yet: it stands at level 0\n");
        return new Answer(Exit.Yes, text.ToString().TrimEnd(), new JsonObject
        {
            ["model"] = model.Tool.Id,
            ["parts"] = new JsonArray([.. model.Parts.Select(p => new JsonObject
            {
                ["id"] = p.Id.Value,
                ["name"] = p.Name,
                ["number"] = p.Number,
                ["count"] = p.Count,
                ["renew"] = Kebab.Of(p.Renew),
                ["price"] = p.Price?.Amount,
                ["currency"] = p.Price?.Currency,
            })]),
        });
    }

    private static Answer Need(ServiceModel model, System.Collections.Immutable.ImmutableArray<NeedLine> needs, string currency)
    {
        var cover = CheapestCover.Of(model, needs, new CoverOptions { Currency = currency });
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{cover.Price.Rounded()}{(cover.ProvenOptimal ? ", proven cheapest" : ", at most " + cover.Gap.Rounded() + " above the cheapest, not proven")}\n");
        foreach (var line in cover.Lines)
            text.Append(CultureInfo.InvariantCulture, $"  buy {line.Count} × {line.Name}, {line.Number ?? "no number"}, {line.Price.Rounded()}\n");
        foreach (var line in cover.Unpriced)
            text.Append(CultureInfo.InvariantCulture, $"  ask the price of {line.Count} × {line.Name}, {line.Number ?? "no number"}\n");
        text.Append("needed:\n");
        foreach (var need in needs)
            text.Append(CultureInfo.InvariantCulture, $"  {need.Count} × {need.Name}, {need.Number ?? "no number"}{(need.SupersededNumber is { } old ? $" (replaces {old})" : "")}\n");
        foreach (var left in cover.LeftOver)
            text.Append(CultureInfo.InvariantCulture, $"left over: {left.Count} × {model.NameOf(left.Part)}, bought in a kit and not needed here\n");
        foreach (var unfit in cover.DoNotUse)
            text.Append(CultureInfo.InvariantCulture, $"do not use: {unfit.What}: {unfit.Why}\n");
        return new Answer(cover.ProvenOptimal ? Exit.Yes : Exit.Undecided, text.ToString().TrimEnd(), CoverJson(model, needs, cover));
    }

    private static JsonObject CoverJson(ServiceModel model, IEnumerable<NeedLine> needs, Cover cover) => new()
    {
        ["model"] = model.Tool.Id,
        ["needs"] = new JsonArray([.. needs.Select(n => new JsonObject { ["part"] = n.Part.Value, ["count"] = n.Count, ["number"] = n.Number, ["supersededNumber"] = n.SupersededNumber })]),
        ["cover"] = new JsonArray([.. cover.Lines.Select(l => new JsonObject
        {
            ["kit"] = l.Kit?.Value,
            ["part"] = l.Part?.Value,
            ["number"] = l.Number,
            ["count"] = l.Count,
            ["unitPrice"] = l.UnitPrice.Amount,
            ["price"] = l.Price.Amount,
            ["currency"] = l.Price.Currency,
        })]),
        ["price"] = cover.Price.Amount,
        ["currency"] = cover.Price.Currency,
        ["provenOptimal"] = cover.ProvenOptimal,
        ["gap"] = cover.Gap.Amount,
        ["unpriced"] = new JsonArray([.. cover.Unpriced.Select(n => JsonValue.Create(n.Part.Value))]),
        ["leftOver"] = new JsonArray([.. cover.LeftOver.Select(k => new JsonObject { ["part"] = k.Part.Value, ["count"] = k.Count })]),
        ["doNotUse"] = new JsonArray([.. cover.DoNotUse.Select(u => new JsonObject { ["what"] = u.What, ["why"] = u.Why })]),
    };
}
