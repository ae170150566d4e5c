using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.Instruments.Practice;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;

namespace Ramwright.App.Verbs;

/// <summary><c>instrument simulate CONNECTION</c>: acts as a measuring device, for practice.</summary>
internal sealed class InstrumentSimulateVerb : Verb
{
    private readonly Argument<string> _connection = ConnectionArgument.Create();
    private readonly Option<string> _peak = new("--peak") { Description = "mean peak of the made-up tool", HelpName = "PRESSURE", DefaultValueFactory = _ => "700bar" };
    private readonly Option<string> _scatter = new("--scatter") { Description = "standard deviation of its peaks", HelpName = "PRESSURE", DefaultValueFactory = _ => "3bar" };
    private readonly Option<string> _stroke = new("--stroke") { Description = "from trigger to peak", HelpName = "TIME", DefaultValueFactory = _ => "5s" };
    private readonly Option<string> _rest = new("--rest") { Description = "between strokes", HelpName = "TIME", DefaultValueFactory = _ => "5s" };
    private readonly Option<int> _seed = new("--seed") { Description = "same seed, same peaks", HelpName = "N", DefaultValueFactory = _ => 1 };
    private readonly Option<string?> _for = new("--for") { Description = "stop after this time; without it when called off", HelpName = "TIME" };

    public override string Name => "instrument simulate";

    public override string Summary => "acts as a measuring device on a made-up tool that strokes by itself, so that cable and bench can be tried";

    public override IReadOnlyList<Example> Examples =>
    [
        new("instrument simulate \"scpi-tcp 127.0.0.1:5025 ask READ? in bar\"", "then, beside it: ramwright instrument read with the same connection") { RunsAlone = false },
        new("instrument simulate \"modbus-tcp 127.0.0.1:5020 input address 0 as float32 in bar\" --peak 712bar --scatter 4bar", "registers in place of lines") { RunsAlone = false },
    ];

    public override string ExitMeaning => "0 stopped, 2 bad input, 70 the port cannot be used";

    protected internal override IEnumerable<Symbol> Symbols => [_connection, _peak, _scatter, _stroke, _rest, _seed, _for];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var found = new List<Mistake>();
        var connection = await ConnectionArgument.ReadAsync(given.GetValue(_connection)!, found, cancel);
        var peak = PressureOption.ReadAmount("--peak", given.GetValue(_peak)!, Pressure.FromBar(700), found);
        var scatter = PressureOption.ReadAmount("--scatter", given.GetValue(_scatter)!, peak, found);
        var stroke = ConnectionArgument.ReadTime("--stroke", given.GetValue(_stroke), found);
        var rest = ConnectionArgument.ReadTime("--rest", given.GetValue(_rest), found);
        var time = ConnectionArgument.ReadTime("--for", given.GetValue(_for), found);
        if (found.Count > 0)
            return Answer.Refused([.. found]);
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        if (time is { } most)
            limit.CancelAfter(most);
        var strokes = new PracticeStrokes(peak, scatter, stroke!.Value, rest!.Value, given.GetValue(_seed));
        try
        {
            var end = await PracticeDevice.ServeAsync(connection!, strokes, TimeProvider.System, port => output.Say(string.Create(CultureInfo.InvariantCulture, $"a made-up device listens at port {port}; stop it with Ctrl-C")), limit.Token);
            return end == PracticeEnd.NotActed
                ? Answer.BadUse("CONNECTION", "only scpi-tcp and modbus-tcp are acted, and pressures, no forces", "write one of the two, in bar, MPa, kPa or psi")
                : Answer.Refused([new Mistake(Place.Whole("CONNECTION"), "nothing can listen there: the host is none of this machine, or another program holds the port", "use 127.0.0.1 and a free port", "port-taken")], Exit.Fault);
        }
        catch (OperationCanceledException)
        {
            return new Answer(Exit.Yes, "the practice is over", new JsonObject { ["stopped"] = true });
        }
    }
}
