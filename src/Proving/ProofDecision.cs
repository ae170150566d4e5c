using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Proving;

/// <summary>Turns a proof series into a verdict.</summary>
/// <remarks>
/// The order of the rules: (1) a run beyond a limit by more than its own uncertainty: does not conform, however few the runs. (2) A series that is
/// not full is undecided: looking after each run would find something sooner or later. (3) With confidence γ the share on the right side of a limit
/// moved outward is below β: does not conform. (4) Both claims for the limits moved inward hold: conforms. (5) Else undecided, with what is in the way.
/// Every claim by own scatter is exact for normal scatter (noncentral t): a tool whose share is just β at a limit gets 'conforms' in at most 1 − γ of all
/// series, both looks of an extended one together. With moderated scatter that is so on the average of the tools of the model.
/// </remarks>
public static class ProofDecision
{
    /// <summary>The verdict on a series as it stands.</summary>
    /// <exception cref="ArgumentException">A bug in the caller: more runs than planned and declared, a plan below 2, a share or confidence not inside 0 to 1, a negative uncertainty.</exception>
    public static Verdict Decide(ProofSeries series)
    {
        SeriesContract.Check(series);
        var yardstick = Yardstick.Of(series);
        var more = series.Declared is Declared.Extension extension ? extension.MoreRuns : 0;
        if (series.Peaks.Length <= series.PlannedRuns)
            return Look(series, yardstick, more);
        var first = Look(series with { Peaks = series.Peaks[..series.PlannedRuns] }, yardstick, more);
        return first.Conformity == Conformity.Undecided
            ? Look(series with { PlannedRuns = series.PlannedRuns + more }, yardstick, more: 0)
            : AfterTheDecision(series, first);
    }

    /// <summary>The planned runs decided, and yet more were made: they cannot make the verdict better, but one far outside makes it worse.</summary>
    private static Verdict AfterTheDecision(ProofSeries series, Verdict first)
    {
        if (RunsOutside(series, new(series.Limits, series.Systematic)) is { Length: > 0 } outside)
            return first with { Conformity = Conformity.DoesNotConform, Reasons = outside };
        var from = series.PlannedRuns + 1;
        var flags = first.Flags.ToBuilder();
        flags.Add(new("runs-after-the-decision", from, 1, $"the series was decided before run {from}: that run and later ones do not count"));
        return first with { Flags = flags.ToImmutable() };
    }

    private static Verdict Look(ProofSeries series, Yardstick yardstick, int more)
    {
        var guards = new Guards(series.Limits, series.Systematic);
        var figures = SeriesFigures.Of(series, yardstick);
        var verdict = new Verdict
        {
            Conformity = Conformity.Undecided,
            Reasons = [],
            Runs = figures.Runs,
            PlannedRuns = series.PlannedRuns,
            Mean = figures.Runs > 0 ? Pressure.FromPascals(figures.Mean) : null,
            StandardDeviation = figures.Runs > 1 ? Pressure.FromPascals(figures.Deviation) : null,
            ScatterUsed = figures.HasScatter ? Pressure.FromPascals(figures.Used) : null,
            ScatterFrom = series.Declared is Declared.Moderated ? ScatterSource.Moderated : ScatterSource.Own,
            Moderation = series.Declared is Declared.Moderated m && figures.Runs > 1 ? ModerationOf(m.Earlier, figures) : null,
            ConfidenceOfEachLook = yardstick.ConfidenceOfEachLook,
            GuardLow = guards.Low,
            GuardHigh = guards.High,
            Claims = figures.Runs > 1 ? Claims(yardstick, guards, figures) : [],
            OneSidedFactor = figures.Runs > 1 ? yardstick.OneSidedFactor(figures.Runs) : null,
            ToleranceFactor = figures.Runs > 1 ? Factors.TwoSided(figures.Runs, series.Coverage, series.Confidence) : null,
            Flags = SeriesScreens.Flags(series.Peaks, series.Resolution, series.EarlierPeaks),
        };
        if (figures.HasScatter)
        {
            var reach = Pressure.FromPascals(verdict.ToleranceFactor!.Value * figures.Scatter);
            verdict = verdict with { Interval = new(verdict.Mean!.Value - reach, verdict.Mean.Value + reach) };
        }

        var (conformity, reasons) = Judge(series, yardstick, guards, figures, verdict, more);
        return verdict with { Conformity = conformity, Reasons = reasons };
    }

    private static Moderation ModerationOf(EarlierSeries earlier, SeriesFigures figures) => new(
        earlier.Population.Series,
        Pressure.FromPascals(earlier.Population.TypicalDeviation),
        earlier.Population.AlikeDegrees,
        figures.HasScatter ? Pressure.FromPascals(earlier.Population.Moderate(new(figures.Scatter, figures.Runs - 1))) : null);

    private static (Conformity Conformity, ImmutableArray<Reason> Reasons) Judge(ProofSeries series, Yardstick yardstick, Guards guards, SeriesFigures figures, Verdict verdict, int more)
    {
        if (RunsOutside(series, guards) is { Length: > 0 } outside)
            return (Conformity.DoesNotConform, outside);
        if (figures.Runs == 0)
            return (Conformity.Undecided, [new Reason.NoRun()]);
        if (figures.Runs < series.PlannedRuns)
            return (Conformity.Undecided, [new Reason.TooFewRuns(figures.Runs, series.PlannedRuns)]);
        if (series.Rule == DecisionRule.EveryRunGuarded)
            return EveryRun(series, guards);
        if (!figures.HasScatter)
            return (Conformity.Undecided, [new Reason.EqualReadings(series.Peaks[0])]);
        if (SharesTooSmall(yardstick, guards, figures) is { Length: > 0 } small)
            return (Conformity.DoesNotConform, small);
        if (guards.LeaveNothing)
            return (Conformity.Undecided, [new Reason.DeviceTooCoarse(guards.Together, guards.Limits.Max - guards.Limits.Min)]);
        if (series.Rule == DecisionRule.OneSidedPerLimit && verdict.Claims.All(c => c.Holds))
            return (Conformity.Conforms, [new Reason.BothClaimsHold()]);
        if (series.Rule == DecisionRule.TwoSidedInterval && verdict.Interval is { } interval && interval.Min >= guards.Low && interval.Max <= guards.High)
            return (Conformity.Conforms, [new Reason.IntervalInside()]);
        if (more == 0)
            return (Conformity.Undecided, WhatIsInTheWay.Of(series, yardstick, guards, figures, () => LongerSeries.ThatWouldDecide(series.PlannedRuns, Yardstick.ForANewSeries(series), guards, figures)));
        var due = new Reason.ExtensionDue(more, ExtensionChance.Of(more, yardstick, guards, figures));
        return (Conformity.Undecided, [.. WhatIsInTheWay.Of(series, yardstick, guards, figures, () => due).Where(r => r is not Reason.ExtensionDue), due]);
    }

    /// <summary>Rule 1: valid runs beyond a limit by more than their total expanded uncertainty.</summary>
    private static ImmutableArray<Reason> RunsOutside(ProofSeries series, Guards guards)
    {
        var reasons = ImmutableArray.CreateBuilder<Reason>();
        for (var i = 0; i < series.Peaks.Length; i++)
        {
            var peak = series.Peaks[i];
            if (peak - guards.Limits.Max > guards.Allowance(LimitSide.Upper))
                reasons.Add(new Reason.RunOutside(i + 1, peak, LimitSide.Upper, guards.Limits.Max, guards.Allowance(LimitSide.Upper)));
            else if (guards.Limits.Min - peak > guards.Allowance(LimitSide.Lower))
                reasons.Add(new Reason.RunOutside(i + 1, peak, LimitSide.Lower, guards.Limits.Min, guards.Allowance(LimitSide.Lower)));
        }

        return reasons.ToImmutable();
    }

    /// <summary>Rule 3: with the asked confidence a share below the asked one, for a limit moved outward.</summary>
    private static ImmutableArray<Reason> SharesTooSmall(Yardstick yardstick, Guards guards, SeriesFigures figures)
    {
        var reasons = ImmutableArray.CreateBuilder<Reason>();
        Look(LimitSide.Lower, guards.LowOutward, (figures.Mean - guards.LowOutward.Pascals) / figures.Scatter);
        Look(LimitSide.Upper, guards.HighOutward, (guards.HighOutward.Pascals - figures.Mean) / figures.Scatter);
        return reasons.ToImmutable();

        void Look(LimitSide side, Pressure limit, double distance)
        {
            if (distance < yardstick.RefusingFactor(figures.Runs))
                reasons.Add(new Reason.ShareTooSmall(side, limit, yardstick.ShareAtMost(distance, figures.Runs)));
        }
    }

    private static (Conformity Conformity, ImmutableArray<Reason> Reasons) EveryRun(ProofSeries series, Guards guards)
    {
        if (guards.LeaveNothing)
            return (Conformity.Undecided, [new Reason.DeviceTooCoarse(guards.Together, guards.Limits.Max - guards.Limits.Min)]);
        var low = guards.Limits.Min + guards.Allowance(LimitSide.Upper); // a single reading, so both parts of its uncertainty
        var high = guards.Limits.Max - guards.Allowance(LimitSide.Lower);
        ImmutableArray<Reason> inGuard =
        [
            .. series.Peaks.Select((peak, i) => (peak, run: i + 1)).Where(p => p.peak < low || p.peak > high).Select(p => p.peak < low
                ? new Reason.RunInGuard(p.run, p.peak, LimitSide.Lower, low)
                : new Reason.RunInGuard(p.run, p.peak, LimitSide.Upper, high)),
        ];
        return inGuard.IsEmpty ? (Conformity.Conforms, [new Reason.EveryRunInside()]) : (Conformity.Undecided, inGuard);
    }

    private static ImmutableArray<LimitClaim> Claims(Yardstick yardstick, Guards guards, SeriesFigures figures)
    {
        return
        [
            Claim(LimitSide.Lower, guards.Limits.Min, guards.Low, figures.Mean - guards.Low.Pascals),
            Claim(LimitSide.Upper, guards.Limits.Max, guards.High, guards.High.Pascals - figures.Mean),
        ];

        LimitClaim Claim(LimitSide side, Pressure limit, Pressure guarded, double inside)
        {
            if (!figures.HasScatter)
                return new(side, limit, guarded, 0, 0, Holds: false);
            var distance = inside / figures.Used;
            return new(side, limit, guarded, distance, yardstick.ShareAtLeast(distance, figures.Runs), distance >= yardstick.OneSidedFactor(figures.Runs));
        }
    }
}
