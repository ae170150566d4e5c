using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Ramwright.App.CommandLine;
using Ramwright.App.Devices;
using Ramwright.Instruments;
using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Devices;
using Ramwright.Instruments.Live;
using Ramwright.Instruments.Runs;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Verbs;

/// <summary><c>instrument read CONNECTION</c>: the runs that a device sees, as they come.</summary>
internal sealed class InstrumentReadVerb : Verb
{
    private readonly Argument<string> _connection = ConnectionArgument.Create();
    private readonly Option<int?> _runs = new("--runs") { Description = "stop after so many full runs; without it and without --for, when called off", HelpName = "N" };
    private readonly Option<string?> _for = new("--for") { Description = "stop after this time, such as 10min", HelpName = "TIME" };
    private readonly Option<string?> _model = new("--model") { Description = "service model (file or bundled id): half its lower limit makes a run full, and its ram turns forces into pressures", HelpName = "MODEL" };

    public override string Name => "instrument read";

    public override string Summary => "the full runs that a measuring device sees, one row each as they come; what goes wrong is told beside them";

    public override IReadOnlyList<Example> Examples =>
    [
        new("instrument read simulated --runs 3", "three runs of a made-up tool"),
        new("instrument read \"scpi-tcp 10.0.0.5:5025 ask READ? in bar every 20 ms\" --runs 12 --model corrie-85", "twelve runs, as a file that prove takes") { RunsAlone = false },
        new("instrument read bench-meter.txt --for 10min --json", "the connection stands in a file") { RunsAlone = false },
    ];

    public override string ExitMeaning => "0 the runs asked for were taken, 1 they were not, 2 bad input";

    protected internal override IEnumerable<Symbol> Symbols => [_connection, _runs, _for, _model];

    protected internal override async Task<Answer> AnswerAsync(ParseResult given, CheckedOutput output, CancellationToken cancel)
    {
        var found = new List<Mistake>();
        var connection = await ConnectionArgument.ReadAsync(given.GetValue(_connection)!, found, cancel);
        var time = ConnectionArgument.ReadTime("--for", given.GetValue(_for), found);
        var model = given.GetValue(_model) is { } name ? ModelArgument.Read(name, found) : null;
        var runs = given.GetValue(_runs);
        if (runs is < 1 or > 100_000)
            found.Add(new Mistake(Place.Whole("--runs"), string.Create(CultureInfo.InvariantCulture, $"{runs} runs cannot be taken"), "write 1 to 100000", "usage"));
        if (connection is Connection.Simulated && runs is null)
            found.Add(new Mistake(Place.Whole("--runs"), "a simulated device strokes without waiting, and nothing says when to stop", "give --runs", "usage"));
        var device = found.Count == 0 ? DeviceOf(connection!, model) : null;
        if (found.Count == 0 && device is null)
            found.Add(new Mistake(Place.Whole("CONNECTION"), "the readings are forces, and no ram area is known to turn them into pressures", "give --model with a ram diameter, or readings of pressure", ReadingCodes.UnitNeedsArea));
        if (found.Count > 0)
            return Answer.Refused([.. found]);
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        if (time is { } most)
            limit.CancelAfter(most);
        var log = new InstrumentLog(output);
        try
        {
            await foreach (var happened in device!.WatchAsync(limit.Token))
            {
                log.Tell(happened);
                if (log.Taken == runs)
                    break;
            }
        }
        catch (OperationCanceledException)
        {
            // The time is over, or it was called off: what was taken stands.
        }
        return new Answer(log.Taken >= (runs ?? 1) ? Exit.Yes : Exit.No, "", log.Json());
    }

    private static IPeakDevice? DeviceOf(Connection connection, ServiceModel? model)
    {
        var clock = TimeProvider.System;
        if (connection is Connection.Simulated)
        {
            var tool = new SimulatedTool { AsFound = model?.Limits.Nominal ?? Pressure.FromBar(700), BarPerTurn = 45, Scatter = Pressure.FromBar(2) };
            return new SimulatedDevice(tool, SimulatedDevice.MadeUpGauge(DateOnly.FromDateTime(clock.GetUtcNow().Date)), seed: 1, clock, pace: double.PositiveInfinity);
        }
        return LiveDevices.Find(connection, Unknown, LiveBench.SettingOf(model, runsBefore: 0), clock);
    }

    /// <summary>A device of which nothing is known but its connection.</summary>
    private static DeviceDescription Unknown => new()
    {
        Kind = DeviceKind.PortGauge,
        Name = "device of a connection",
        Maker = "not recorded",
        Serial = "not recorded",
        Range = new PressureWindow(Pressure.FromBar(0), Pressure.FromBar(2000)),
        Resolution = Pressure.FromBar(0.01),
        TimeConstant = TimeSpan.Zero,
        SamplingInterval = TimeSpan.Zero,
    };
}

/// <summary>What a device told, written as it came and kept for the answer.</summary>
internal sealed class InstrumentLog(CheckedOutput output)
{
    private readonly JsonArray _runs = [];
    private readonly JsonArray _notTaken = [];
    private readonly JsonArray _lost = [];
    private readonly JsonArray _unreadable = [];

    public int Taken => _runs.Count;

    public void Tell(PeakEvent happened)
    {
        switch (happened)
        {
            case PeakEvent.Peaked { Reading: var reading }:
                Row(reading);
                break;
            case PeakEvent.NotTaken not:
                _notTaken.Add(new JsonObject { ["afterRun"] = Taken, ["why"] = Kebab.Of(not.Why), ["highestBar"] = Rounded(not.Highest) });
                Words($"not taken: {RunWords.Of(not.Why)}{(not.Highest is { } high ? string.Create(CultureInfo.InvariantCulture, $" (highest {high.Bar:0.0} bar)") : "")}");
                break;
            case PeakEvent.Lost lost:
                _lost.Add(new JsonObject { ["afterRun"] = Taken, ["fault"] = Kebab.Of(lost.Fault), ["what"] = lost.What, ["awaySeconds"] = null });
                Words($"the device is lost: {lost.What}; it is reached for again");
                break;
            case PeakEvent.Back back:
                if (_lost.Count > 0)
                    _lost[^1]!["awaySeconds"] = Math.Round(back.Away.TotalSeconds, 3);
                Words(string.Create(CultureInfo.InvariantCulture, $"the device is back after {back.Away.TotalSeconds:0.0} s; runs made meanwhile are not known"));
                break;
            case PeakEvent.Unreadable file:
                _unreadable.Add(new JsonObject { ["file"] = file.File, ["what"] = file.What });
                Words($"{file.File} was not taken: {file.What}");
                break;
        }
    }

    public JsonObject Json() => new() { ["runs"] = _runs, ["notTaken"] = _notTaken, ["lost"] = _lost, ["unreadable"] = _unreadable };

    private void Row(PeakReading reading)
    {
        var method = reading.Estimate is { } e ? Kebab.Of(e.Method) : "device";
        var highest = reading.Estimate?.Highest ?? reading.Peak;
        _runs.Add(new JsonObject
        {
            ["run"] = reading.Run,
            ["peakBar"] = Rounded(reading.Peak),
            ["highestBar"] = Rounded(highest),
            ["method"] = method,
            ["standardBar"] = Rounded(reading.Estimate?.Standard),
            ["overRange"] = reading.OverRange,
            ["at"] = reading.At.ToString("O", CultureInfo.InvariantCulture),
        });
        if (output.Json)
            return;
        if (Taken == 1)
            output.Data.WriteLine("run,peak_bar,highest_bar,method");
        output.Data.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{reading.Run},{reading.Peak.Bar:0.00},{highest.Bar:0.00},{method}"));
        output.Data.Flush();
    }

    private void Words(string line)
    {
        if (!output.Json)
            output.Words.WriteLine(line);
    }

    private static double? Rounded(Pressure? p) => p is { } value ? Math.Round(value.Bar, 4) : null;
}
