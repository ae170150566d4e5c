using Ramwright.Setting.Belief;

namespace Ramwright.Setting;

/// <summary>The turn that brings the mean towards the aim without more risk of passing the maximum than allowed.</summary>
internal static class TurnChoice
{
    public const double MostTurns = 12; // more than any screw of this kind has; a guard, not a rule

    private const double BelowOnTheWayDown = 1.2816; // standard deviations: nine in ten lowering turns end below the aim
    private const double FineEnough = 0.15; // of the window's half width: what one step of the advised angle may move
    private static readonly double[] Grains = [30 / 360.0, 15 / 360.0];

    /// <summary>Turns clockwise (negative: anticlockwise), a whole number of steps; zero when no turn is worth making or allowed.</summary>
    /// <remarks>
    /// Upwards, wanted is the turn whose expected mean is the aim; it is shortened until its chance past the maximum is within the limit. Downwards the mean
    /// is to end below the aim with nine chances in ten, so that the last turn comes from below and takes up the play the same way each time
    /// (<em>common practice</em>); a downward turn may not raise the chance past the maximum.
    /// </remarks>
    /// <param name="least">The pressure, bar, from which a lowering turn must start at least: a last run above the maximum; null without one.</param>
    public static double Towards(Target target, SettingBelief belief, SettingOptions options, double? least = null)
    {
        var answering = belief.IfItAnswers(); // how far, is asked of a screw that answers; how risky, of any
        var level = answering.After(0).Mean;
        var above = Math.Max(0, (least ?? level) - level); // a run above the maximum is believed in full
        var raise = least is null && level < target.Aim;
        var sign = raise ? belief.RaisingSign : -belief.RaisingSign;
        var wanted = raise
            ? Longest(turn => answering.After(sign * turn).Mean < target.Aim)
            : Longest(turn => answering.After(sign * turn) is var after && UpperOf(after) > target.Aim && after.Mean > target.Low - 2 * target.HalfWidth); // not further while the gain is hardly known
        var grain = Grain(target, answering, options);
        var steps = Math.Round(wanted / grain, MidpointRounding.AwayFromZero);
        var allowed = raise ? options.LargestChancePastMaximum : Math.Max(options.LargestChancePastMaximum, belief.ChanceAbove(target.Maximum, 0));
        if (steps == 0 || belief.ChanceAbove(target.Maximum, sign * steps * grain) <= allowed)
            return sign * steps * grain;
        var safe = Longest(turn => belief.ChanceAbove(target.Maximum, sign * turn) <= allowed, steps * grain);
        for (steps = Math.Floor(safe / grain + 1e-9); steps > 0; steps--)
        {
            if (belief.ChanceAbove(target.Maximum, sign * steps * grain) <= allowed)
                return sign * steps * grain;
        }

        return 0;

        double UpperOf((double Mean, double Spread) after) => after.Mean + Math.Max(above, BelowOnTheWayDown * after.Spread);
    }

    /// <summary>The largest of a twelfth, half a twelfth and the finest turn that moves the mean little enough.</summary>
    private static double Grain(Target target, SettingBelief belief, SettingOptions options)
    {
        var gain = Math.Abs(belief.Mean(s => s.Gain));
        foreach (var grain in Grains)
        {
            if (grain > options.FinestTurn.Turns && gain * grain <= FineEnough * target.HalfWidth)
                return grain;
        }

        return options.FinestTurn.Turns;
    }

    /// <summary>The longest turn, from nothing, up to which something holds; found by halving.</summary>
    private static double Longest(Func<double, bool> holds, double most = MostTurns)
    {
        if (holds(most))
            return most;
        double low = 0, high = most;
        while (high - low > 1.0 / 720)
        {
            var middle = 0.5 * (low + high);
            if (holds(middle))
                low = middle;
            else
                high = middle;
        }

        return low;
    }
}
