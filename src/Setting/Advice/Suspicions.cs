using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;
using Ramwright.Setting.Belief;

namespace Ramwright.Setting;

/// <summary>Reasons to look elsewhere than at the screw, read off the belief.</summary>
internal static class Suspicions
{
    private const double Sure = 0.9; // chance at which a supposition is told
    private const double Odd = 0.5, Doubtful = 0.4;
    private const double FarBelow = 0.25; // of the nominal pressure: no relief setting explains it (our choice)
    private const double GainBelow = 0.6, GainAbove = 1.6; // of the computed gain

    public static ImmutableArray<Suspicion> Of(IReadOnlyList<SettingRun> runs, SettingBelief belief, ReliefPrior prior, Limits limits, ReliefData? relief)
    {
        var found = ImmutableArray.CreateBuilder<Suspicion>();
        if (runs.Any(r => r.Peak > limits.Maximum))
            found.Add(new("above-maximum",
                runs[^1].Peak > limits.Maximum
                ? "the last run passed the maximum: quarantine the tool; the setting may only be lowered, behind a guard, and the frame is inspected before anything else"
                : "a run passed the maximum: the tool is quarantined until its frame has been inspected"));
        if (ToFind(runs[^1], belief, limits) is { } reason)
            found.Add(reason);
        else if (MayNotAnswer(belief))
            found.Add(new("may-not-answer", "the pressure followed the screw less than expected, or not at all: another run tells whether it answers"));
        if (OddRun(runs, belief) is { } odd)
            found.Add(odd);
        if (relief?.Reach is { } reach && !reach.Holds(limits.Nominal))
            found.Add(new("outside-reach", "the model says that the screw cannot reach the nominal pressure: check spring and shims"));
        if (prior.FromModel && belief.ChanceThat(s => s.Gain / prior.BarPerTurn is < GainBelow or > GainAbove) > 1 - 0.5 * (1 - Sure))
            found.Add(new("gain-unlike-model",
                Say($"a turn moves the pressure by {belief.Mean(s => s.Gain):0} bar, and the model computes {prior.BarPerTurn:0}: another spring, a worn seat, or wrong data in the model")));
        return found.ToImmutable();
    }

    /// <summary>Why the job should go to Find; null when nothing speaks for it.</summary>
    public static Suspicion? ToFind(SettingRun last, SettingBelief belief, Limits limits)
    {
        if (last.Peak.Bar < FarBelow * limits.Nominal.Bar)
            return new("far-too-low",
                Say($"{last.Peak.Bar:0.#} bar is far below what the relief holds at any setting: read the figure again; if it is right, something else lets the pressure go"));
        double dead = Chance(belief, AnswerKind.Dead), ends = Chance(belief, AnswerKind.EndsAbove), backwards = Chance(belief, AnswerKind.Backwards);
        if (dead + ends + backwards < Sure)
            return null;
        if (backwards > dead && backwards > ends)
            return new("answers-backwards", "the pressure moves against the turn: check which way the screw was turned, which way it raises, and the relief data of the model");
        return dead >= ends
            ? new("no-answer", "the pressure does not follow the screw: look at spring, poppet and seat, or at electronics that stop the run below the relief")
            : new("answer-ends", "the pressure followed the screw and then no further: look for electronics that stop the run below the relief, a leak or a weak drive, or a spring that gives way");
    }

    /// <summary>Whether a fault is neither likely enough to be told nor unlikely enough to turn on; another run tells.</summary>
    public static bool MayNotAnswer(SettingBelief belief) => belief.ChanceThat(s => s.Answering.Kind is AnswerKind.Dead or AnswerKind.EndsAbove or AnswerKind.Backwards) > Doubtful;

    /// <summary>Whether the last run is more likely wrong than right.</summary>
    public static bool LastIsOdd(IReadOnlyList<SettingRun> runs, SettingBelief belief) =>
        belief.ChanceThat(s => s.Answering.Odd == runs.Count - 1) > Odd;

    private static Suspicion? OddRun(IReadOnlyList<SettingRun> runs, SettingBelief belief)
    {
        for (var run = 0; run < runs.Count; run++)
        {
            var it = run;
            if (belief.ChanceThat(s => s.Answering.Odd == it) > Odd)
                return new("odd-reading",
                Say($"run {run + 1}, {runs[run].Peak.Bar:0.#} bar, does not fit the others: look at the figure again and correct it if it was a slip"));
        }

        return null;
    }

    private static double Chance(SettingBelief belief, AnswerKind kind) => belief.ChanceThat(s => s.Answering.Kind == kind);

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
