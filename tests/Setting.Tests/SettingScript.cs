using System.Globalization;
using System.Text.RegularExpressions;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Setting.Tests;

/// <summary>A setting played line by line: the tool, turns of the screw, and what must be advised after each run.</summary>
/// <remarks>
/// <c>relief 45 bar/turn, backlash 1/12 turn, limits 690..710 bar, maximum 730</c> (a minus sign where clockwise lowers; <c>relief unknown</c> for limits alone);
/// <c>turn clockwise 6/12</c>, or <c>turn as advised</c>; <c>lock</c>; <c>run 703 bar</c> with <c>advise clockwise 4/12..8/12 | stop | run again | find |
/// scatter | no turn | ask back</c> and <c>warn CODE | nothing</c>.
/// </remarks>
internal static partial class SettingScript
{
    public static void Play(string script)
    {
        var state = new State();
        foreach (var line in script.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var word = line.Split(' ')[0];
            if (word == "relief")
                state.Tool(line);
            else if (word == "turn")
                state.Turn(line);
            else if (word == "lock")
                state.Locked = true;
            else if (word == "run")
                state.Run(line);
            else
                throw new InvalidOperationException($"The script does not know '{word}'.");
        }
    }

    private sealed class State
    {
        private readonly List<SettingRun> _runs = [];
        private Limits _limits = Tools.Limits(679, 721, 735);
        private ReliefData? _relief;
        private SettingOptions _options = new();
        private double _screw;
        private SettingAdvice? _advice;

        public bool Locked { get; set; }

        public void Tool(string line)
        {
            _relief = Gain().Match(line) is { Success: true } gain ? Tools.Relief(Number(gain.Groups[1])) : null;
            if (Window().Match(line) is { Success: true } w)
                _limits = Tools.Limits(Number(w.Groups[1]), Number(w.Groups[2]), Number(w.Groups[3]));
            if (Backlash().Match(line) is { Success: true } b)
                _options = _options with { Backlash = Twelfths.Of(Number(b.Groups[1])) };
        }

        public void Turn(string line)
        {
            Locked = false;
            _screw += line == "turn as advised"
                ? (_advice!.Direction == TurnDirection.Clockwise ? 1 : -1) * _advice.Turn.Turns
                : (line.Contains("anticlockwise", StringComparison.Ordinal) ? -1 : 1) * Number(Size().Match(line).Groups[1]) / 12;
        }

        public void Run(string line)
        {
            var parts = Reading().Match(line);
            _runs.Add(new(Angle.FromTurns(_screw), Pressure.FromBar(Number(parts.Groups["bar"])), Locked));
            _advice = SettingAdvisor.Advise(_limits, _relief, _runs, _options);
            var got = $"{line}\n   got {SettingWords.Headline(_advice, Metrology.Text.UnitSystem.Metric)} [{string.Join(", ", _advice.Suspicions.Select(s => s.Code))}]";
            if (parts.Groups["advise"] is { Success: true } advise)
                Assert.True(Holds(advise.Value.Trim()), got);
            if (parts.Groups["warn"] is { Success: true } warn)
                Assert.True(warn.Value == "nothing" ? _advice.Suspicions.IsEmpty : _advice.Suspicions.Any(s => s.Code == warn.Value), got);
        }

        private bool Holds(string advise) => advise switch
        {
            "stop" => _advice!.Outcome == SettingOutcome.In,
            "run again" => _advice!.Outcome == SettingOutcome.RunFirst,
            "find" => _advice!.Outcome == SettingOutcome.GoToFind,
            "scatter" => _advice!.Outcome == SettingOutcome.ScatterTooLarge,
            "no turn" => _advice!.Outcome == SettingOutcome.NoTurnHelps,
            "ask back" => _advice!.Outcome == SettingOutcome.AskBack,
            _ => Turns(Advised().Match(advise)),
        };

        private bool Turns(Match m) => m.Success && _advice!.Outcome == SettingOutcome.Turn && SettingWords.Way(_advice.Direction) == m.Groups[1].Value
            && 12 * _advice.Turn.Turns >= Number(m.Groups[2]) - 0.01 && 12 * _advice.Turn.Turns <= Number(m.Groups[3]) + 0.01;
    }

    private static double Number(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(-?[\d.]+) bar/turn")]
    private static partial Regex Gain();

    [GeneratedRegex(@"limits ([\d.]+)\.\.([\d.]+) bar, maximum ([\d.]+)")]
    private static partial Regex Window();

    [GeneratedRegex(@"backlash ([\d.]+)/12")]
    private static partial Regex Backlash();

    [GeneratedRegex(@"([\d.]+)/12")]
    private static partial Regex Size();

    [GeneratedRegex(@"^run +(?<bar>-?[\d.]+) bar(?: +advise (?<advise>(?:(?! warn).)+))?(?: +warn (?<warn>[\w-]+))?$")]
    private static partial Regex Reading();

    [GeneratedRegex(@"^(clockwise|anticlockwise) ([\d.]+)/12\.\.([\d.]+)/12$")]
    private static partial Regex Advised();
}
