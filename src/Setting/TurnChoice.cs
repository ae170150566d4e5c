using Ramwright.ServiceModels.Model;

namespace Ramwright.Setting;

/// <summary>The turn that brings the mean towards the aim without more risk of passing the maximum than allowed.</summary>
internal static class TurnChoice
{
    /// <summary>Turns clockwise (negative: anticlockwise), a whole number of the finest turn; zero when no turn is worth making or allowed.</summary>
    /// <remarks>
    /// Wanted is the turn whose expected mean is the aim. While its chance past the maximum is larger than allowed it is shortened step by step;
    /// a turn that lowers a chance already too large is allowed, and so is what is left of it.
    /// </remarks>
    public static double Towards(double aim, ReliefLine line, Limits limits, SettingOptions options)
    {
        var finest = options.FinestTurn.Turns;
        if (!(Math.Abs(line.Gain) > 1e-9))
            return 0;
        var wanted = Math.Clamp((aim - line.Level) / line.Gain, -2, 2); // two turns are far enough before looking again
        var steps = (int)Math.Round(Math.Abs(wanted) / finest, MidpointRounding.AwayFromZero);
        var now = line.ChanceAbove(limits.Maximum.Bar, 0);
        for (; steps > 0; steps--)
        {
            var turn = Math.Sign(wanted) * steps * finest;
            var chance = line.ChanceAbove(limits.Maximum.Bar, turn);
            if (chance <= options.LargestChancePastMaximum || (now > options.LargestChancePastMaximum && chance < now))
                return turn;
        }

        return 0;
    }
}
