using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

using Ramwright.Setting.Belief;

namespace Ramwright.Setting;

/// <summary>Advises the next turn of the relief screw.</summary>
/// <remarks>
/// The belief about gain, level, play, scatter and way of answering is exact for what it supposes (<see cref="SettingBelief"/>); the turn is the one that
/// brings the mean to the aim as far as the chance of passing the maximum allows, and a second reading or a stop is advised where it is worth more.
/// Deterministic: the same runs give the same advice. Nothing here enters a proof.
/// </remarks>
public static class SettingAdvisor
{
    /// <summary>Only the last so many runs are looked at; a job has a dozen.</summary>
    public const int MostRuns = 60;

    private const int EnoughHere = 6, EnoughToDoubt = 3; // runs at one position after which reading on is no advice
    private const double Sure = 0.95;

    /// <summary>The advice for a tool of this model after the runs so far, in the order taken.</summary>
    public static SettingAdvice Advise(ServiceModel model, IReadOnlyList<SettingRun> runs, SettingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        return Advise(model.Limits, model.Behaviour?.Relief, runs, options);
    }

    /// <summary>The advice from limits alone or with the data of the relief valve; the last run tells where the screw stands.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A bug in the caller: an option out of its range, a nominal or maximum pressure not above zero.</exception>
    public static SettingAdvice Advise(Limits limits, ReliefData? relief, IReadOnlyList<SettingRun> runs, SettingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(runs);
        options ??= new();
        SettingOptions.Check(options);
        if (!(limits.Nominal.Si > 0) || !(limits.Maximum.Si > 0))
            throw new ArgumentOutOfRangeException(nameof(limits), limits, "Nominal and maximum pressure lie above zero.");
        var prior = ReliefPrior.Of(limits, relief);
        if (runs.Count == 0)
            return Standing(SettingOutcome.RunFirst, prior);
        foreach (var run in runs)
        {
            if (ReadingCheck.Of(run.Peak, limits) is ReadingCheck.Implausible(var what, var mend))
                return Standing(SettingOutcome.AskBack, prior) with { Screw = runs[^1].Screw, Suspicions = [new("reading-implausible", $"{what}: {mend}")] };
        }

        if (runs.Count > MostRuns)
            runs = [.. runs.Skip(runs.Count - MostRuns)];
        var belief = SettingBelief.After(runs, limits, prior, options);
        var target = new Target(limits, options);
        var (outcome, turn) = Decide(runs, belief, target, limits, options);
        return Predict(Standing(outcome, prior), belief, target, outcome == SettingOutcome.Turn ? turn : 0) with
        {
            Screw = runs[^1].Screw,
            Suspicions = Suspicions.Of(runs, belief, prior, limits, relief),
        };
    }

    private static (SettingOutcome Outcome, double Turn) Decide(IReadOnlyList<SettingRun> runs, SettingBelief belief, Target target, Limits limits, SettingOptions options)
    {
        if (Suspicions.ToFind(runs[^1], belief, limits) is not null)
            return (SettingOutcome.GoToFind, 0);
        if (runs[^1].Peak > limits.Maximum)
            return TurnChoice.Towards(target, belief, options, least: runs[^1].Peak.Bar) is var down and not 0 ? (SettingOutcome.Turn, down) : (SettingOutcome.NoTurnHelps, 0);
        var here = runs.Reverse().TakeWhile(r => r.Screw == runs[^1].Screw).Count();
        if (Suspicions.LastIsOdd(runs, belief) || (Suspicions.MayNotAnswer(belief) && here < EnoughToDoubt))
            return (SettingOutcome.RunFirst, 0);
        var (step, turn) = NextStep.Of(target, belief, options);
        if (step == Step.Turn)
            return (SettingOutcome.Turn, turn);
        if (belief.ChanceThat(s => s.Scatter > target.LargestScatter) >= Sure)
            return (SettingOutcome.ScatterTooLarge, 0);
        if (step == Step.Stop)
            return (SettingOutcome.In, 0);
        return here < EnoughHere ? (SettingOutcome.RunFirst, 0) : turn != 0 ? (SettingOutcome.Turn, turn) : (SettingOutcome.NoTurnHelps, 0);
    }

    private static SettingAdvice Standing(SettingOutcome outcome, ReliefPrior prior) => new()
    {
        Outcome = outcome,
        Direction = TurnDirection.Stop,
        Turn = Angle.FromRadians(0),
        PriorBarPerTurn = prior.BarPerTurn,
        BarPerTurn = prior.BarPerTurn,
    };

    /// <summary>What to expect, if the screw answers as it should: a fault is to show itself as a surprise. The chances count every way of answering.</summary>
    private static SettingAdvice Predict(SettingAdvice advice, SettingBelief belief, Target target, double turn)
    {
        var expected = (advice.Outcome == SettingOutcome.GoToFind ? belief : belief.IfItAnswers()).Thinned();
        return advice with
        {
            Direction = turn > 0 ? TurnDirection.Clockwise : turn < 0 ? TurnDirection.Anticlockwise : TurnDirection.Stop,
            Turn = Angle.FromTurns(Math.Abs(turn)),
            BarPerTurn = expected.Mean(s => s.Gain),
            Scatter = Pressure.FromBar(Math.Exp(expected.Mean(s => Math.Log(s.Scatter)))),
            PredictedMean = Pressure.FromBar(expected.After(turn).Mean),
            PredictedInterval = Between(expected, turn, singleRun: false),
            NextRun = Between(expected, turn, singleRun: true),
            ChanceInWindow = target.ChanceInside(belief, turn),
            ChancePastMaximum = belief.ChanceAbove(target.Maximum, turn),
        };
    }

    private static PressureWindow Between(SettingBelief belief, double turn, bool singleRun)
    {
        double low = belief.Quantile(0.025, turn, singleRun), high = belief.Quantile(0.975, turn, singleRun);
        return new(Pressure.FromBar(low), Pressure.FromBar(Math.Max(high, low + 1e-6)));
    }
}
