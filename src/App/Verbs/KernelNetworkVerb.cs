using System.CommandLine;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.Diagnosis.Networks;
using Ramwright.Metrology.Input;

namespace Ramwright.App.Verbs;

/// <summary><c>kernel network FILE.bif</c>: the exact posterior of a variable in a published network.</summary>
internal sealed class KernelNetworkVerb : Verb
{
    private readonly Argument<string> _file = new("FILE") { Description = "a discrete Bayesian network in BIF text; - reads standard input" };
    private readonly Option<string> _of = new("--of") { Description = "the variable asked for", HelpName = "VARIABLE", Required = true };
    private readonly Option<string[]> _given = new("--given") { Description = "what is known, such as smoke=yes; several after one another or with commas", HelpName = "VARIABLE=STATE", AllowMultipleArgumentsPerToken = true };

    public override string Name => "kernel network";

    public override string Summary => "the exact posterior of a variable in a discrete Bayesian network, by variable elimination";

    public override IReadOnlyList<Example> Examples =>
    [
        new("kernel network alarm-call.bif --of burglary --given call=yes", "how likely a break-in is when the neighbour calls") { Files = ExampleFiles.Networks },
        new("kernel network alarm-call.bif --of call --given burglary=yes,alarm=no", "what is known may cut a path") { Files = ExampleFiles.Networks },
    ];

    public override string ExitMeaning => "0 answered, 2 bad input, 3 what is known contradicts itself, or the network is too wide to be exact";

    public override IReadOnlyList<(string Key, string Meaning)> JsonKeys =>
    [
        ("posterior", "state → probability, in the order of the variable; null when there is no answer"),
        ("logEvidence", "natural logarithm of the probability of all that is known"),
        ("largestCells", "cells of the largest table that the elimination made, or would have made"),
    ];

    protected internal override IEnumerable<Symbol> Symbols => [_file, _of, _given];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var name = given.GetValue(_file)!;
        switch (await InputFile.ReadAsync(name, BifReader.LargestText, cancel))
        {
            case InputFile.Missing missing:
                return Answer.Refused([missing.Why]);
            case InputFile.Got got when BifReader.Read(Encoding.UTF8.GetString(got.Bytes), name) is var reading:
                return reading is NetworkReading.Read read ? Asked(read.Network, given) : Answer.Refused(((NetworkReading.Refused)reading).Mistakes);
            default:
                throw new InvalidOperationException("A file is got or missing.");
        }
    }

    private Answer Asked(BayesNetwork network, ParseResult given)
    {
        var found = new List<Mistake>();
        var of = PlaceOf(network, given.GetValue(_of)!, "--of", found);
        var known = ReadKnown(network, given.GetValue(_given) ?? [], found);
        return found.Count > 0 ? Answer.Refused([.. found]) : AnswerOf(network, of, NetworkPosterior.Of(network, of, known));
    }

    private static Answer AnswerOf(BayesNetwork network, int of, NetworkAnswer answer)
    {
        var variable = network.Variables[of];
        var json = new JsonObject { ["of"] = variable.Name };
        switch (answer)
        {
            case NetworkAnswer.Posterior posterior:
                var states = variable.States.Zip(posterior.Probabilities).ToList();
                json["posterior"] = new JsonObject(states.Select(s => KeyValuePair.Create(s.First, (JsonNode?)JsonValue.Create(s.Second))));
                json["logEvidence"] = posterior.LogEvidence;
                json["largestCells"] = posterior.LargestCells;
                var width = states.Max(s => s.First.Length);
                return new(Exit.Yes, string.Join('\n', states.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.First.PadRight(width)}  {s.Second:0.0000000000}"))), json);
            case NetworkAnswer.TooWide wide:
                json["posterior"] = null;
                json["largestCells"] = wide.Cells;
                return new(Exit.Undecided, string.Create(CultureInfo.InvariantCulture, $"too wide to be exact: the tables would take {wide.Cells:0.##e0} cells, {wide.Limit:0.##e0} are the limit"), json);
            default:
                json["posterior"] = null;
                return new(Exit.Undecided, "contradictory: what is known has probability zero in this network", json);
        }
    }

    private static List<Known> ReadKnown(BayesNetwork network, string[] given, List<Mistake> found)
    {
        var known = new List<Known>();
        foreach (var word in given.SelectMany(g => g.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)))
        {
            var equals = word.IndexOf('=', StringComparison.Ordinal);
            var variable = PlaceOf(network, equals < 0 ? word : word[..equals], "--given", found);
            if (variable < 0)
                continue;
            var states = network.Variables[variable].States;
            var state = equals < 0 ? -1 : network.Variables[variable].StateIndex(word[(equals + 1)..]);
            if (state < 0)
                found.Add(new(Place.Whole("--given"), $"'{word}' names no state of {network.Variables[variable].Name}", $"write {network.Variables[variable].Name}= and one of {string.Join(", ", states.Take(12))}", "network-name"));
            else if (known.Exists(k => k.Variable == variable))
                found.Add(new(Place.Whole("--given"), $"{network.Variables[variable].Name} stands there twice", "give each variable one state", "usage"));
            else
                known.Add(new(variable, state));
        }

        return known;
    }

    private static int PlaceOf(BayesNetwork network, string name, string option, List<Mistake> found)
    {
        var place = network.IndexOf(name);
        if (place < 0)
        {
            found.Add(new(Place.Whole(option), $"the network has no variable '{name}'", NearName.Find(name, network.Variables.Select(v => v.Name).Take(2000)) is { } near
                ? $"write {near}" : $"write one of {string.Join(", ", network.Variables.Select(v => v.Name).Take(12))}", "network-name"));
        }

        return place;
    }
}
