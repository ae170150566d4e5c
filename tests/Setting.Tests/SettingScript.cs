using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Setting.Tests;

/// <summary>A setting played line by line: <c>relief</c> the tool, <c>turn</c> the screw, <c>run</c> a peak and what must be advised after it.</summary>
internal static class SettingScript
{
    private static readonly char[] Blank = [' '];

    public static void Play(string script)
    {
        Limits? limits = null;
        ReliefData? relief = null;
        var runs = new List<SettingRun>();
        var screw = 0.0;
        foreach (var line in script.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var words = line.Split(Blank, StringSplitOptions.RemoveEmptyEntries);
            switch (words[0])
            {
                case "limits": // limits LOW HIGH maximum M
                    limits = Tools.Limits(Number(words[1]), Number(words[2]), Number(words[4]));
                    break;
                case "relief": // relief B bar/turn
                    relief = Tools.Relief(Number(words[1]));
                    break;
                case "turn": // turn clockwise T/12
                    screw += Turn(words[1], words[2]);
                    break;
                case "run": // run P advise DIRECTION [T/12] | stop | find | run | scatter; warn CODE | nothing
                    runs.Add(new(Angle.FromTurns(screw), Pressure.FromBar(Number(words[1]))));
                    var advice = SettingAdvisor.Advise(limits!, relief, runs);
                    Expect(line, words, advice);
                    screw += 0; // the script turns the screw itself
                    break;
                default:
                    throw new InvalidOperationException($"The script does not know '{words[0]}'.");
            }
        }
    }

    private static void Expect(string line, string[] words, SettingAdvice advice)
    {
        for (var i = 2; i < words.Length; i += 2)
        {
            var ok = (words[i], words[i + 1]) switch
            {
                ("advise", "stop") => advice.Outcome == SettingOutcome.In,
                ("advise", "find") => advice.Outcome == SettingOutcome.GoToFind,
                ("advise", "run") => advice.Outcome == SettingOutcome.RunFirst,
                ("advise", "scatter") => advice.Outcome == SettingOutcome.ScatterTooLarge,
                ("advise", var direction) => advice.Outcome == SettingOutcome.Turn && advice.Direction == Enum.Parse<TurnDirection>(direction, ignoreCase: true)
                    && Twelfths.Nearest(advice.Turn) == int.Parse(words[i++ + 2].Split('/')[0], CultureInfo.InvariantCulture),
                ("warn", "nothing") => advice.Suspicions.IsEmpty,
                ("warn", var code) => advice.Suspicions.Any(s => s.Code == code),
                _ => throw new InvalidOperationException($"The script does not know '{words[i]} {words[i + 1]}'."),
            };
            Assert.True(ok, $"{line}: {advice.Outcome} {advice.Direction} {advice.Turn.Degrees:0.0}° [{string.Join(", ", advice.Suspicions.Select(s => s.Code))}], mean {advice.PredictedMean?.Bar:0.0}");
        }
    }

    private static double Turn(string direction, string size) =>
        (direction == "clockwise" ? 1 : -1) * Number(size.Split('/')[0]) / 12;

    private static double Number(string word) => double.Parse(word, CultureInfo.InvariantCulture);
}
