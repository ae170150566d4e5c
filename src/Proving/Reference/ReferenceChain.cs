using System.Collections.Immutable;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Metrology.Uncertainty.Expressions;

namespace Ramwright.Proving.Reference;

/// <summary>Whether a device may prove a tool, and what it may be off.</summary>
public abstract record DeviceAnswer
{
    private DeviceAnswer() { }

    /// <summary>It may.</summary>
    public sealed record Fit(ReferenceBudget Budget) : DeviceAnswer;

    /// <summary>Too slow for this tool: the peak may lie so far above its reading that too little of the window is left.</summary>
    /// <param name="WouldDo">Time constant and sampling interval together that would do.</param>
    public sealed record DeviceTooSlow(Pressure Capture, Pressure LargestAllowed, TimeSpan WouldDo) : DeviceAnswer;

    /// <summary>The tool's memory was not compared with a reference at this visit, so its figures show nothing.</summary>
    public sealed record NotCompared : DeviceAnswer;
}

/// <summary>Turns a device's budget into the uncertainty of a proof.</summary>
/// <remarks>
/// Contributions add by the law of propagation at the middle of the limits (JCGM 100:2008, 5.1.2); the systematic part is expanded with k = 2, or with
/// t of its effective degrees of freedom at 95.45 % where that is more (G.6.4). Peak capture is no spread but a
/// one-sided bound: while the pressure rises at r, a lag τ and samples every T leave the reading up to r·(τ + T) below the peak. It is not corrected, so it
/// is added whole to the upper side (as JCGM 100, F.2.4.5 adds an uncorrected bias), and to that side alone. Clauses from memory.
/// </remarks>
public static class ReferenceChain
{
    private const double LargestCaptureShare = 0.25; // of the window: beyond, a correct tool has no room (the 4:1 rule of thumb, from memory)
    private const double TwoSigma = 0.9545;
    private const double Many = 1_000; // from here on t is 2.00

    private static readonly Expression OfPressure = Model("reading + per_kelvin * warming", "reading", "per_kelvin", "warming");
    private static readonly Expression OfForce = Model("(reading + per_kelvin * warming + spring + friction) / (pi / 4 * diameter^2)", "reading", "per_kelvin", "warming", "spring", "friction", "diameter");

    /// <summary>What this device may be off on peaks of this tool.</summary>
    /// <param name="device">The device.</param>
    /// <param name="limits">The limits to prove.</param>
    /// <param name="risePascalsPerSecond">How steeply the pressure rises before the relief opens, Pa/s, zero or more.</param>
    public static DeviceAnswer Examine(DeviceBudget device, PressureWindow limits, double risePascalsPerSecond)
    {
        ArgumentNullException.ThrowIfNull(device);
        if (risePascalsPerSecond is not (>= 0 and < double.PositiveInfinity))
            throw new ArgumentOutOfRangeException(nameof(risePascalsPerSecond), risePascalsPerSecond, "A rise before a peak is zero or more Pa/s.");
        if (device.Kind == ReferenceKind.ForceCell != device.Force is not null)
            throw new ArgumentException("A force cell has a force conversion, and no other kind does.", nameof(device));
        if (device is { Kind: ReferenceKind.ToolMemory, ComparedAtThisVisit: false })
            return new DeviceAnswer.NotCompared();

        var late = device.TimeConstant + device.SamplingInterval;
        var capture = Pressure.FromPascals(risePascalsPerSecond * late.TotalSeconds);
        var allowed = LargestCaptureShare * (limits.Max - limits.Min);
        if (capture > allowed)
            return new DeviceAnswer.DeviceTooSlow(capture, allowed, TimeSpan.FromSeconds(allowed.Pascals / risePascalsPerSecond));
        var lines = Lines(device, limits.Middle);
        var freedom = EffectiveDegreesOfFreedom(lines);
        return new DeviceAnswer.Fit(new ReferenceBudget(device.Kind, lines, freedom is { } few ? Math.Max(2, Propagation.Factor(TwoSigma, few)) : 2, capture, risePascalsPerSecond)
        {
            DegreesOfFreedom = freedom,
            Lateness = late,
            Correction = device.Correction,
            Remarks = device.Remarks,
        });
    }

    /// <summary>The budget of one reading near a pressure: what <see cref="Examine"/> works out, as inputs of a measurement.</summary>
    public static Budget BudgetAt(DeviceBudget device, Pressure at)
    {
        ArgumentNullException.ThrowIfNull(device);
        var force = device.Force;
        ImmutableArray<BudgetInput> inputs =
        [
            new("reading", force?.Behind(at).Newtons ?? at.Pascals, device.Reading),
            new("per_kelvin", device.Warming?.PerKelvin ?? 0, []),
            new("warming", 0, device.Warming is { } warming ? [new("temperature", new Spread.Rectangular(warming.Kelvins), Effect.Systematic)] : []),
        ];
        return force is null ? new Budget(OfPressure, inputs) : new Budget(OfForce, [.. inputs, force.SpringInput, force.FrictionInput, force.DiameterInput]);
    }

    private static ImmutableArray<BudgetLine> Lines(DeviceBudget device, Pressure at) => Propagation.Evaluate(BudgetAt(device, at)) is LinearAnswer.Evaluated worked
        ? [.. worked.Lines.Where(l => l.Amount > 0).OrderByDescending(l => l.Amount).Select(l => BudgetLine.Of(l, UnitOf(l.Input, device)))]
        : throw new ArgumentException("The budget has no value: the ram has no area.", nameof(device));

    private static BudgetUnit UnitOf(string input, DeviceBudget device) => input switch
    {
        "reading" => device.Force is null ? BudgetUnit.Pressure : BudgetUnit.Force,
        "warming" => BudgetUnit.Temperature,
        "diameter" => BudgetUnit.Length,
        _ => BudgetUnit.Force,
    };

    /// <summary>Welch and Satterthwaite over the systematic lines; null where infinite.</summary>
    private static double? EffectiveDegreesOfFreedom(ImmutableArray<BudgetLine> lines)
    {
        var systematic = lines.Where(l => l.Effect == Effect.Systematic).ToList();
        var variance = systematic.Sum(l => l.Standard.Pascals * l.Standard.Pascals);
        var sum = systematic.Sum(l => l.DegreesOfFreedom is { } df ? Math.Pow(l.Standard.Pascals, 4) / df : 0);
        return sum > 0 && variance * variance / sum is var freedom && freedom < Many ? freedom : null;
    }

    private static Expression Model(string text, params ImmutableArray<string> names) => Expression.Read(text, names) is TextReading<Expression>.Good(var model)
        ? model
        : throw new InvalidOperationException("The model does not read.");
}
