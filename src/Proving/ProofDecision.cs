using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Tolerance;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Proving;

/// <summary>Turns a proof series into a verdict.</summary>
/// <remarks>
/// The order of the rules: (1) a run beyond a limit by more than its own uncertainty: does not conform, however few the runs. (2) A series that is
/// not full is undecided: looking after each run would find something sooner or later. (3) With confidence γ the share on the right side of a limit
/// moved outward is below β: does not conform. (4) Both claims for the limits moved inward hold: conforms. (5) Else undecided, with what is in the way.
/// Every claim is exact for normal scatter (noncentral t): a tool whose share is just β at a limit gets 'conforms' in at most 1 − γ of all series.
/// </remarks>
public static class ProofDecision
{
    /// <summary>The verdict on a series as it stands.</summary>
    /// <exception cref="ArgumentException">A bug in the caller: more runs than planned, a plan below 2, a share or confidence not inside 0 to 1, a negative uncertainty.</exception>
    public static Verdict Decide(ProofSeries series)
    {
        Check(series);
        var guards = new Guards(series.Limits, series.Systematic);
        var figures = SeriesFigures.Of(series);
        double? factor = figures.Runs > 1 ? Factors.OneSided(figures.Runs, series.Coverage, series.Confidence) : null;
        var verdict = new Verdict
        {
            Conformity = Conformity.Undecided,
            Reasons = [],
            Runs = figures.Runs,
            PlannedRuns = series.PlannedRuns,
            Mean = figures.Runs > 0 ? Pressure.FromPascals(figures.Mean) : null,
            StandardDeviation = figures.Runs > 1 ? Pressure.FromPascals(figures.Deviation) : null,
            ScatterUsed = figures.HasScatter ? Pressure.FromPascals(figures.Scatter) : null,
            GuardLow = guards.Low,
            GuardHigh = guards.High,
            Claims = factor is { } k ? Claims(series, guards, figures, k) : [],
            OneSidedFactor = factor,
            ToleranceFactor = figures.Runs > 1 ? Factors.TwoSided(figures.Runs, series.Coverage, series.Confidence) : null,
            Flags = SeriesScreens.Flags(series.Peaks),
        };
        if (figures.HasScatter)
        {
            var reach = Pressure.FromPascals(verdict.ToleranceFactor!.Value * figures.Scatter);
            verdict = verdict with { Interval = new(verdict.Mean!.Value - reach, verdict.Mean.Value + reach) };
        }

        var (conformity, reasons) = Judge(series, guards, figures, verdict);
        return verdict with { Conformity = conformity, Reasons = reasons };
    }

    private static (Conformity Conformity, ImmutableArray<Reason> Reasons) Judge(ProofSeries series, Guards guards, SeriesFigures figures, Verdict verdict)
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
        if (SharesTooSmall(series, guards, figures) is { Length: > 0 } small)
            return (Conformity.DoesNotConform, small);
        if (guards.LeaveNothing)
            return (Conformity.Undecided, [new Reason.DeviceTooCoarse(guards.Together, guards.Limits.Max - guards.Limits.Min)]);
        if (series.Rule == DecisionRule.OneSidedPerLimit && verdict.Claims.All(c => c.Holds))
            return (Conformity.Conforms, [new Reason.BothClaimsHold()]);
        if (series.Rule == DecisionRule.TwoSidedInterval && verdict.Interval is { } interval && interval.Min >= guards.Low && interval.Max <= guards.High)
            return (Conformity.Conforms, [new Reason.IntervalInside()]);
        return (Conformity.Undecided, WhatIsInTheWay.Of(series, guards, figures));
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
    private static ImmutableArray<Reason> SharesTooSmall(ProofSeries series, Guards guards, SeriesFigures figures)
    {
        var reasons = ImmutableArray.CreateBuilder<Reason>();
        Look(LimitSide.Lower, guards.LowOutward, (figures.Mean - guards.LowOutward.Pascals) / figures.Scatter);
        Look(LimitSide.Upper, guards.HighOutward, (guards.HighOutward.Pascals - figures.Mean) / figures.Scatter);
        return reasons.ToImmutable();

        void Look(LimitSide side, Pressure limit, double distance)
        {
            if (distance < Factors.Refusing(figures.Runs, series.Coverage, series.Confidence))
                reasons.Add(new Reason.ShareTooSmall(side, limit, ContentBound.AtMost(distance, figures.Runs, series.Confidence)));
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

    private static ImmutableArray<LimitClaim> Claims(ProofSeries series, Guards guards, SeriesFigures figures, double factor)
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
            var distance = inside / figures.Scatter;
            return new(side, limit, guarded, distance, ContentBound.AtLeast(distance, figures.Runs, series.Confidence), distance >= factor);
        }
    }

    private static void Check(ProofSeries series)
    {
        ArgumentNullException.ThrowIfNull(series);
        if (series.Peaks.IsDefault)
            throw new ArgumentException("The peaks were not given; an empty list is a series without a run.", nameof(series));
        if (series.PlannedRuns < 2)
            throw new ArgumentException($"{series.PlannedRuns} planned runs; a series has 2 or more.", nameof(series));
        if (series.Peaks.Length > series.PlannedRuns)
            throw new ArgumentException($"{series.Peaks.Length} runs in a series of {series.PlannedRuns}; runs are never added to a series.", nameof(series));
        if (series.Coverage is not (> 0 and < 1) || series.Confidence is not (> 0 and < 1))
            throw new ArgumentException("Coverage and confidence lie above 0 and below 1.", nameof(series));
        var zero = Pressure.FromPascals(0);
        if (series.Systematic.BelowLimit < zero || series.Systematic.AboveLimit < zero || series.Systematic.RandomExpanded < zero)
            throw new ArgumentException("An uncertainty is zero or more.", nameof(series));
        if (series.Resolution is { } step && step <= zero)
            throw new ArgumentException("The step of a device is above zero.", nameof(series));
    }
}
