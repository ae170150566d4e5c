using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Proving.Reference;

/// <summary>Whether a device may prove a tool, and what it may be off.</summary>
public abstract record DeviceAnswer
{
    private DeviceAnswer() { }

    /// <summary>It may.</summary>
    /// <param name="Systematic">What goes into the series.</param>
    /// <param name="Capture">How far a true peak may lie above its reading; part of the upper allowance.</param>
    /// <param name="Lines">The contributions, largest first.</param>
    public sealed record Fit(SystematicUncertainty Systematic, Pressure Capture, ImmutableArray<BudgetLine> Lines) : DeviceAnswer;

    /// <summary>Too slow for this tool: the peak may lie so far above its reading that too little of the window is left.</summary>
    public sealed record DeviceTooSlow(Pressure Capture, Pressure LargestAllowed) : DeviceAnswer;

    /// <summary>The tool's memory was not compared with a reference at this visit, so its figures show nothing.</summary>
    public sealed record NotCompared : DeviceAnswer;
}

/// <summary>Turns a device's budget into the uncertainty of a proof.</summary>
/// <remarks>
/// Independent contributions add as root sum of squares and are expanded with k = 2 (JCGM 100:2008, 5.1.2 and 6.2.1). Peak capture is no spread but a
/// one-sided bound: while the pressure rises at r, a lag τ and samples every T leave the reading up to r·(τ + T) below the peak. It is not corrected, so it
/// is added whole to the upper side (as JCGM 100, F.2.4.5 adds an uncorrected bias), and to that side alone.
/// </remarks>
public static class ReferenceChain
{
    private const double LargestCaptureShare = 0.25; // of the window: beyond, a correct tool has no room (the 4:1 rule of thumb, from memory)

    /// <summary>What this device may be off on peaks of this tool.</summary>
    /// <param name="budget">The device.</param>
    /// <param name="limits">The limits to prove.</param>
    /// <param name="risePascalsPerSecond">How steeply the pressure rises before the relief opens, Pa/s, zero or more.</param>
    public static DeviceAnswer Examine(DeviceBudget budget, PressureWindow limits, double risePascalsPerSecond)
    {
        ArgumentNullException.ThrowIfNull(budget);
        if (risePascalsPerSecond is not (>= 0 and < double.PositiveInfinity))
            throw new ArgumentOutOfRangeException(nameof(risePascalsPerSecond), risePascalsPerSecond, "A rise before a peak is zero or more Pa/s.");
        if (budget.Kind == ReferenceKind.ForceCell != budget.Force is not null)
            throw new ArgumentException("A force cell has a force conversion, and no other kind does.", nameof(budget));
        if (budget is { Kind: ReferenceKind.ToolMemory, ComparedAtThisVisit: false })
            return new DeviceAnswer.NotCompared();

        var capture = Pressure.FromPascals(risePascalsPerSecond * (budget.TimeConstant + budget.SamplingInterval).TotalSeconds);
        var allowed = LargestCaptureShare * (limits.Max - limits.Min);
        if (capture > allowed)
            return new DeviceAnswer.DeviceTooSlow(capture, allowed);

        var lines = Lines(budget, limits);
        var expanded = Pressure.FromPascals(2 * Math.Sqrt(lines.Sum(l => l.Standard.Pascals * l.Standard.Pascals)));
        return new DeviceAnswer.Fit(new(expanded, expanded + capture, 2 * budget.Repeatability), capture, lines);
    }

    private static ImmutableArray<BudgetLine> Lines(DeviceBudget budget, PressureWindow limits)
    {
        ImmutableArray<BudgetLine> lines =
        [
            BudgetLine.FromExpanded("calibration", budget.CalibrationExpanded),
            BudgetLine.FromLimits("drift", budget.DriftLimit),
            BudgetLine.FromLimits("temperature", budget.TemperatureLimit),
            BudgetLine.FromStep("resolution", budget.Resolution),
            .. budget.Force?.LinesAt(limits.Middle) ?? [],
            .. budget.Further.IsDefault ? [] : budget.Further,
        ];
        return lines.Any(l => l.Standard < Pressure.FromPascals(0))
            ? throw new ArgumentException("A contribution to an uncertainty is zero or more.", nameof(budget))
            : [.. lines.Where(l => l.Standard.Pascals > 0).OrderByDescending(l => l.Standard.Pascals)];
    }
}
