using System.Collections.Immutable;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Proving.Reference;
using Ramwright.Records.Events;
using Ramwright.Records.House;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Devices;

/// <summary>How things stand where a device is to prove: what the register cannot know.</summary>
public sealed record Circumstances
{
    /// <summary>Temperature of the room; null when nobody read it.</summary>
    public Temperature? Room { get; init; }

    /// <summary>Rise before the peak as a recording shows it, bar per second, above zero; null: the model's, or the usual one.</summary>
    public double? RiseBarPerSecond { get; init; }

    /// <summary>Friction as loading up and down under a force cell has shown it at this visit.</summary>
    public FrictionLoop.Shown? Friction { get; init; }
}

/// <summary>What the register makes of an instrument's budget for one tool on one day.</summary>
internal abstract record RegisterBudget
{
    /// <summary>Room and oil are taken to lie within so many kelvins of the calibration's 20 °C where nobody read them.</summary>
    private const double UsualKelvins = 10;

    /// <summary>So much may a device differ from the room that was read (from memory).</summary>
    private const double KelvinsBesideRoom = 2;

    private RegisterBudget() { }

    public sealed record Known(DeviceBudget Device) : RegisterBudget;

    /// <summary>Kind, unit or the model's ram diameter do not make a pressure of it.</summary>
    public sealed record NoPressure : RegisterBudget;

    /// <summary>The certificate's points do not reach the limits.</summary>
    public sealed record BeyondPoints(Pressure Low, Pressure High) : RegisterBudget;

    public static RegisterBudget Of(InstrumentState instrument, InstrumentCalibrated calibration, ServiceModel model, DateOnly day, Circumstances at)
    {
        var facts = instrument.Facts;
        if (KindOf(facts.Kind) is not { } kind)
            return new NoPressure();
        var force = kind == ReferenceKind.ForceCell ? RamForce.Of(model, at.Friction) : null;
        var shows = kind == ReferenceKind.ForceCell ? MeasuredKind.Force : MeasuredKind.Pressure;
        if (calibration.Expanded.Kind != shows || (kind == ReferenceKind.ForceCell && force is null))
            return new NoPressure();
        double Shown(Pressure p) => force?.Behind(p).Newtons ?? p.Pascals;
        Pressure ToPressure(double shown) => force?.Equivalent(Force.FromNewtons(shown)) ?? Pressure.FromPascals(shown);

        var limits = model.Limits.Pressure;
        var read = CalibratedReading.Of(calibration.Expanded.Si, calibration.Points ?? [], calibration.Curve ?? CurveForm.Straight, Shown(limits.Min), Shown(limits.Max));
        if (read is CalibratedReading.BeyondPoints beyond)
            return new BeyondPoints(ToPressure(beyond.Low), ToPressure(beyond.High));
        var known = (CalibratedReading.Known)read;
        var (drift, assumed) = DriftOf(instrument, calibration, day);
        return new Known(new DeviceBudget
        {
            Kind = kind,
            Reading = [.. known.Components, drift, new("resolution", new Spread.Rectangular(0.5 * (facts.Resolution?.Si ?? 0)), Effect.Systematic)],
            Warming = calibration.PerKelvin is { } perKelvin ? new Warming(Math.Abs(perKelvin.Si), KelvinsOff(at.Room)) : null,
            TimeConstant = facts.Response ?? TimeSpan.Zero,
            SamplingInterval = facts.SamplingInterval ?? TimeSpan.Zero,
            Force = force,
            Correction = ReadingCorrection.Of(known.Line, force),
            Remarks =
            [
                .. known.Remarks,
                .. assumed ? [BudgetRemark.DriftAssumed] : ImmutableArray<BudgetRemark>.Empty,
                .. calibration.PerKelvin is null ? [BudgetRemark.TemperatureNotStated] : ImmutableArray<BudgetRemark>.Empty,
                .. facts.Response is null ? [BudgetRemark.ResponseNotStated] : ImmutableArray<BudgetRemark>.Empty,
            ],
        });
    }

    /// <summary>Between its last two calibrations where both have points and nothing was adjusted; else as stated; else as much in a year as the calibration may be off.</summary>
    private static (Component Drift, bool Assumed) DriftOf(InstrumentState instrument, InstrumentCalibrated calibration, DateOnly day)
    {
        var years = Math.Max(0, day.DayNumber - calibration.On.DayNumber) / 365.25;
        static Component Limits(string what, double half) => new(what, new Spread.Rectangular(half), Effect.Systematic);
        if (instrument.Calibrations is [.., var before, var last] && last == calibration && last.Adjusted != true
            && LineOf(before) is { } then && LineOf(last) is { } now && last.On > before.On
            && Drift.Between(then, now, (last.On.DayNumber - before.On.DayNumber) / 365.25) is Drift.Measured measured)
            return (Limits("drift, as between calibrations", measured.HalfWidthFor(years)), false);
        return calibration.DriftPerYear is { } perYear
            ? (Limits("drift, as stated", years * Math.Abs(perYear.Si)), false)
            : (Limits("drift, assumed", years * calibration.Expanded.Si), true);
    }

    private static CalibrationLine? LineOf(InstrumentCalibrated calibration) =>
        calibration.Points is { } points && CalibrationLine.Fit(points, calibration.Curve ?? CurveForm.Straight) is CalibrationAnswer.Fitted fitted ? fitted.Line : null;

    private static double KelvinsOff(Temperature? room) => room is { } t ? Math.Abs(t.Celsius - 20) + KelvinsBesideRoom : UsualKelvins;

    private static ReferenceKind? KindOf(InstrumentKind kind) => kind switch
    {
        InstrumentKind.ForceCell => ReferenceKind.ForceCell,
        InstrumentKind.PortGauge => ReferenceKind.PortGauge,
        InstrumentKind.PeakHoldGauge => ReferenceKind.PeakHoldGauge,
        _ => null,
    };
}
