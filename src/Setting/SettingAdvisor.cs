using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Setting;

/// <summary>Advises the next turn of the relief screw.</summary>
/// <remarks>
/// Straight-line advice: the model's gain as a prior, level and gain updated by each run, and the next turn towards the nominal pressure as far as
/// the chance of passing the maximum allows. The advice is to stop when the mean lies in the window with the asked chance and within the inner half of
/// it, because the proof that follows needs room for the scatter. Nothing here enters a proof.
/// </remarks>
public static class SettingAdvisor
{
    private const double InnerPart = 0.5;

    /// <summary>The advice for a tool of this model after the runs so far, in the order taken.</summary>
    public static SettingAdvice Advise(ServiceModel model, IReadOnlyList<SettingRun> runs, SettingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        return Advise(model.Limits, model.Behaviour?.Relief, runs, options);
    }

    /// <summary>The advice from limits alone or with the data of the relief valve; the last run tells where the screw stands.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A bug in the caller: a chance not inside 0 to 1, a scatter or a finest turn not above zero.</exception>
    public static SettingAdvice Advise(Limits limits, ReliefData? relief, IReadOnlyList<SettingRun> runs, SettingOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(runs);
        options ??= new();
        Check(options);
        var prior = ReliefPrior.Of(limits, relief);
        if (runs.Count == 0)
            return Standing(SettingOutcome.RunFirst, prior.BarPerTurn, prior);

        var here = runs[^1].Screw.Turns;
        double[] turns = [.. runs.Select(r => r.Screw.Turns - here)];
        double[] bar = [.. runs.Select(r => r.Peak.Bar)];
        var line = ReliefLine.After(turns, bar, prior, Math.Abs(limits.Nominal.Bar), options.ExpectedScatter.Bar, options.ReadingUncertainty.Bar);
        var turn = TurnChoice.Towards(Aim(limits), line, limits, options);
        var suspicions = Suspicions.Of(runs, prior, limits, relief, options);

        if (suspicions.Any(s => Suspicions.ToFind.Contains(s.Code)))
            return Predict(Standing(SettingOutcome.GoToFind, line.Gain, prior), line, limits, 0) with { Suspicions = suspicions };
        var outcome = Outcome(line, limits, options, turn, runs.Count);
        var advice = outcome == SettingOutcome.Turn
            ? Standing(outcome, line.Gain, prior) with { Direction = turn > 0 ? TurnDirection.Clockwise : TurnDirection.Anticlockwise, Turn = Angle.FromTurns(Math.Abs(turn)) }
            : Standing(outcome, line.Gain, prior);
        return Predict(advice, line, limits, outcome == SettingOutcome.Turn ? turn : 0) with { Suspicions = suspicions };
    }

    private static SettingOutcome Outcome(ReliefLine line, Limits limits, SettingOptions options, double turn, int runs)
    {
        if (Suspicions.ScatterIsTooLarge(line, runs, limits))
            return SettingOutcome.ScatterTooLarge;
        var inside = line.ChanceBetween(limits.Pressure.Min.Bar, limits.Pressure.Max.Bar, 0) >= options.ChanceToStop;
        var half = 0.5 * (limits.Pressure.Max.Bar - limits.Pressure.Min.Bar);
        var centred = Math.Abs(line.Level - Aim(limits)) <= InnerPart * half;
        if (inside && (centred || turn == 0))
            return SettingOutcome.In;
        // A turn must move the mean by more than is known of it; else another run here tells more.
        var moves = Math.Abs(turn * line.Gain) > 0.5 * line.After(0).Spread;
        return turn != 0 && (moves || !centred) ? SettingOutcome.Turn : SettingOutcome.RunFirst;
    }

    private static double Aim(Limits limits) => limits.Pressure.Holds(limits.Nominal) ? limits.Nominal.Bar : limits.Pressure.Middle.Bar;

    private static SettingAdvice Standing(SettingOutcome outcome, double gain, ReliefPrior prior) => new()
    {
        Outcome = outcome,
        Direction = TurnDirection.Stop,
        Turn = Angle.FromRadians(0),
        PriorBarPerTurn = prior.BarPerTurn,
        BarPerTurn = gain,
    };

    private static SettingAdvice Predict(SettingAdvice advice, ReliefLine line, Limits limits, double turn)
    {
        var (mean, spread) = line.After(turn);
        var reach = Math.Max(1e-6, Normal.Quantile(0.975) * spread);
        return advice with
        {
            PredictedMean = Pressure.FromBar(mean),
            PredictedInterval = new(Pressure.FromBar(mean - reach), Pressure.FromBar(mean + reach)),
            ChanceInWindow = line.ChanceBetween(limits.Pressure.Min.Bar, limits.Pressure.Max.Bar, turn),
            ChancePastMaximum = line.ChanceAbove(limits.Maximum.Bar, turn),
        };
    }

    private static void Check(SettingOptions options)
    {
        if (options.LargestChancePastMaximum is not (> 0 and < 1) || options.ChanceToStop is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(options), options, "Chances lie above 0 and below 1.");
        if (!(options.ExpectedScatter.Si > 0) || !(options.FinestTurn.Si > 0) || !(options.ReadingUncertainty.Si >= 0) || !(options.Backlash.Si >= 0))
            throw new ArgumentOutOfRangeException(nameof(options), options, "Scatter and finest turn are above zero, reading uncertainty and backlash zero or more.");
    }
}
