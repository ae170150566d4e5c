using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Proving;

/// <summary>Why a full series decides nothing, and what would decide it.</summary>
internal static class WhatIsInTheWay
{
    /// <summary>Guards that take more than a quarter of the window: the 4:1 rule of thumb for test equipment (ANSI/NCSL Z540.3, from memory).</summary>
    private const double CoarseShare = 0.25;

    /// <param name="whatWouldDecide">Said where neither the centre nor the device is in the way.</param>
    public static ImmutableArray<Reason> Of(ProofSeries series, Yardstick yardstick, Guards guards, SeriesFigures figures, Func<Reason> whatWouldDecide)
    {
        var factor = yardstick.DecidingFactor(figures.Runs);
        var mean = Pressure.FromPascals(figures.Mean);
        var scatter = Pressure.FromPascals(figures.Used);
        var width = guards.Limits.Max - guards.Limits.Min;
        var nearest = Math.Min(figures.Mean - guards.Low.Pascals, guards.High.Pascals - figures.Mean);
        var centredPasses = factor * figures.Used <= guards.HalfWidth.Pascals;
        var isOff = Math.Abs(figures.Mean - guards.Aim.Pascals) > 2 * figures.Scatter / Math.Sqrt(figures.Runs); // beyond the doubt of the mean itself

        var reasons = ImmutableArray.CreateBuilder<Reason>();
        if (series.Rule == DecisionRule.TwoSidedInterval)
            reasons.Add(new Reason.RuleNotMet("two-sided-interval"));
        if (centredPasses && isOff)
            reasons.Add(new Reason.CentreOff(mean, guards.Aim));
        else
        {
            var passesWithoutGuards = factor * figures.Used <= nearest + Math.Min(series.Systematic.BelowLimit.Pascals, series.Systematic.AboveLimit.Pascals);
            reasons.Add(passesWithoutGuards && guards.Together > CoarseShare * width
                ? new Reason.DeviceTooCoarse(guards.Together, width)
                : new Reason.ScatterTooLarge(scatter, Pressure.FromPascals(Math.Max(0, centredPasses ? nearest : guards.HalfWidth.Pascals) / factor)));
            if (isOff)
                reasons.Add(new Reason.CentreOff(mean, guards.Aim));
            else
                reasons.Add(whatWouldDecide());
        }

        // The most telling reason stands first; the rule's name follows it.
        if (reasons[0] is Reason.RuleNotMet)
            (reasons[0], reasons[1]) = (reasons[1], reasons[0]);
        return reasons.ToImmutable();
    }
}
