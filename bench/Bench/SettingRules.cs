using Ramwright.Setting;

namespace Ramwright.Bench;

/// <summary>What a rule says after the runs so far: a turn (clockwise positive, in turns), another run (zero), or the end.</summary>
internal readonly record struct RuleSays(double Turns, SettingOutcome? End = null);

/// <summary>Rules for setting a relief, the advisor and two that are in use without one.</summary>
internal static class SettingRules
{
    public static readonly (string Name, Func<SettingJobs, SettingTool, List<SettingRun>, RuleSays> Rule)[] All =
        [("advisor", Advisor), ("twelfths", (j, _, r) => Small(j, r, 1)), ("quarter turns", (j, _, r) => Small(j, r, 3)), ("secant", Secant)];

    private static RuleSays Advisor(SettingJobs jobs, SettingTool tool, List<SettingRun> runs)
    {
        var advice = SettingAdvisor.Advise(jobs.Limits, tool.Relief, runs);
        return advice.Outcome switch
        {
            SettingOutcome.Turn => new(advice.Direction == TurnDirection.Clockwise ? advice.Turn.Turns : -advice.Turn.Turns),
            SettingOutcome.RunFirst => new(0),
            var end => new(0, end),
        };
    }

    /// <summary>Steps of so many twelfths towards the nominal pressure, until a run reads inside the limits.</summary>
    private static RuleSays Small(SettingJobs jobs, List<SettingRun> runs, int twelfths) =>
        Inside(jobs, runs) ? new(0, SettingOutcome.In) : new(twelfths * Math.Sign(SettingJobs.Nominal - runs[^1].Peak.Bar) / 12.0);

    /// <summary>First the turn that the computed gain asks for, then the line through the last two runs; until a run reads inside the limits.</summary>
    private static RuleSays Secant(SettingJobs jobs, SettingTool tool, List<SettingRun> runs)
    {
        if (Inside(jobs, runs))
            return new(0, SettingOutcome.In);
        var gain = jobs.Data ? tool.ComputedGain : 0.1 * SettingJobs.Nominal;
        if (runs.Count >= 2 && runs[^1].Screw != runs[^2].Screw)
        {
            var seen = (runs[^1].Peak.Bar - runs[^2].Peak.Bar) / (runs[^1].Screw.Turns - runs[^2].Screw.Turns);
            gain = Math.Clamp(seen, 0.3 * gain, 3 * gain); // a hand would not believe more
        }

        return new(Math.Round((SettingJobs.Nominal - runs[^1].Peak.Bar) / gain * 72) / 72);
    }

    private static bool Inside(SettingJobs jobs, List<SettingRun> runs) => jobs.Limits.Pressure.Holds(runs[^1].Peak);
}
