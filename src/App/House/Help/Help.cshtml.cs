using System.Collections.Immutable;
using Ramwright.App.Web.Frame;
using Ramwright.App.Web.Pages;
using Ramwright.App.Web.Parts;
using Ramwright.Proving;

namespace Ramwright.App.House.Help;

/// <summary>The way of a tool, the three answers, the first model, the safety words.</summary>
public sealed class HelpPage(Bench bench) : BenchPage(bench)
{
    public override bool NeedsPerson => false;

    public override Sheet Sheet => new()
    {
        Title = "How the bench works",
        Eyebrow = "Nine stations, three answers, one ledger",
        Place = "help",
        Counter = true,
        Block = [HouseField, DayField, new("Version", typeof(HelpPage).Assembly.GetName().Version?.ToString(3) ?? ""), PersonField, new("Sheet", "help", Less: true)],
    };

    public static ImmutableArray<AnswerMark> Answers { get; } =
    [
        new(Conformity.Conforms, ["With the confidence asked, at least the share asked of all full runs stays above the lower limit, and as many stay below the upper one, after what the device may be off was counted against the tool."]),
        new(Conformity.DoesNotConform, ["A run went beyond a limit by more than the device can be off, or too many runs do, even with the doubt counted for the tool."]),
        new(Conformity.Undecided, ["Neither can be shown: too few runs, the centre off, the scatter too large, or the device too coarse. The sheet says which, and what would decide it."]),
    ];

    public static ImmutableArray<(string Name, string What)> Way { get; } =
    [
        ("Arrive", "whose it is, how it looks; battery out, pressure released, signed"),
        ("Find", "what is seen and measured, simple means first; what to work on"),
        ("Plan", "what must come off, in which order, with which tools; what it renews"),
        ("Price", "firm, on condition, not to exceed; the customer’s yes or no"),
        ("Strip", "step by step, the caution before the step; parts looked at"),
        ("Rebuild", "new seals, torque, fluid, prime, bleed"),
        ("Set", "run, read, turn as advised, run again; lock"),
        ("Prove", "a series of full runs, then one of three answers"),
        ("Release", "report and record, or another honest end"),
    ];
}
