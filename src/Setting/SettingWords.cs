using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;

namespace Ramwright.Setting;

/// <summary>Advice as a technician reads it: what to do in one line, and what stands behind it.</summary>
public static class SettingWords
{
    /// <summary><c>turn clockwise 5/12 (150°); then expect 698 bar (685 to 711)</c>.</summary>
    public static string Headline(SettingAdvice advice, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(advice);
        return advice.Outcome switch
        {
            SettingOutcome.Turn => $"turn {Way(advice.Direction)} {Twelfths.Text(advice.Turn)}; then expect {Expected(advice, units)}",
            SettingOutcome.In => $"stop: the setting is in, at {Expected(advice, units)}; lock the screw, then check once more",
            SettingOutcome.RunFirst => advice.PredictedMean is null
                ? "run first: read a full run before any turn"
                : "do not turn yet: run once more as the screw stands, since a second reading tells more than a turn",
            SettingOutcome.GoToFind => "go to Find: the fault is not the setting of this screw",
            SettingOutcome.ScatterTooLarge => $"the scatter is too large to prove: about {Show(advice.Scatter!.Value, units)} from run to run; a turn would not help, so go to Find",
            SettingOutcome.NoTurnHelps => "stop: no turn is both safe and useful, and more runs would not tell more; use a finer device, or go to Find",
            _ => "nothing is advised: a reading must be looked at first",
        };
    }

    /// <summary>The lines under it: where the screw stands, what it does, what is expected, and suspicions.</summary>
    public static IReadOnlyList<string> Lines(SettingAdvice advice, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(advice);
        List<string> lines = [.. advice.Suspicions.Select(s => s.Text)];
        if (advice.PredictedMean is null)
            return lines;
        lines.Add(Math.Abs(advice.Screw.Degrees) < 0.5 ? "screw: as found" : $"screw so far: {Way(advice.Screw.Si > 0 ? TurnDirection.Clockwise : TurnDirection.Anticlockwise)} {Twelfths.Text(advice.Screw)} from as found");
        lines.Add($"a turn clockwise {(advice.BarPerTurn < 0 ? "lowers" : "raises")} by {Size(advice.BarPerTurn, units)} (before the first run {Size(advice.PriorBarPerTurn, units)}{(advice.BarPerTurn * advice.PriorBarPerTurn < 0 ? " the other way" : "")})");
        if (advice is { NextRun: { } run, ChanceInWindow: { } inside, ChancePastMaximum: { } past })
        {
            lines.Add($"a single run then reads {Range(run, units)}, with 95 % chance");
            lines.Add($"{(advice.Outcome == SettingOutcome.Turn ? "after the turn, " : "")}mean in the window: {Chance(inside)}; past the maximum: {Chance(past)}");
        }

        return lines;
    }

    public static string Way(TurnDirection direction) => direction switch
    {
        TurnDirection.Clockwise => "clockwise",
        TurnDirection.Anticlockwise => "anticlockwise",
        _ => "not at all",
    };

    /// <summary><c>698 bar (685 to 711)</c>: the mean with its 95 % interval.</summary>
    public static string Expected(SettingAdvice advice, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(advice);
        return advice is { PredictedMean: { } mean, PredictedInterval: { } interval }
            ? $"{Show(mean, units)} ({Number(interval.Min, units)} to {Number(interval.Max, units)})"
            : "no figure yet";
    }

    /// <summary>A computed first setting in words.</summary>
    public static string First(FirstSetting first, UnitSystem units) => first switch
    {
        FirstSetting.TurnIn t => $"{(t.FromStop ? "start with the screw out to its stop" : "start where the spring is just free")}{(t.Turn.Si > 0 ? $" and turn {Way(t.Direction)} {Twelfths.Text(t.Turn)}" : "")}; "
            + $"the first run is computed to read {Show(t.Mean, units)} ({Number(t.Expected.Min, units)} to {Number(t.Expected.Max, units)}), low on purpose; past the maximum: {Chance(t.ChancePastMaximum)}",
        _ => "the model has no relief data: start where the spring is just free and come up in small turns, with a run after each",
    };

    private static string Range(PressureWindow window, UnitSystem units) => $"{Number(window.Min, units)} to {Show(window.Max, units)}";

    private static string Size(double bar, UnitSystem units) => Show(Pressure.FromBar(Math.Abs(bar)), units);

    private static string Show(Pressure p, UnitSystem units) => QuantityText.Show(p, units, Places(p, units));

    private static string Number(Pressure p, UnitSystem units) => QuantityText.Parts(p, units, Places(p, units)).Number;

    private static int Places(Pressure p, UnitSystem units) => units == UnitSystem.Metric && Math.Abs(p.Bar) < 10 ? 1 : 0;

    private static string Chance(double chance) => chance switch
    {
        < 0.00005 => "less than 0.01 %",
        > 0.9999 => "more than 99.99 %",
        _ => ShareText.Percent(chance, chance is < 0.01 or > 0.99 ? 2 : 0),
    };
}
