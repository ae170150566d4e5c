using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving;
using Ramwright.Proving.Reference;
using Ramwright.Records.House;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Devices;

/// <summary>Whether an instrument of the register may measure a proof of this tool on this day: what the register says, then what the reference chain says.</summary>
public abstract record DeviceFit
{
    /// <summary>Rise of the pressure just before the relief opens, bar per second, where no recording tells it: that of the made-up Corrie 85, rounded up.</summary>
    public const double UsualRiseBarPerSecond = 1_000;

    /// <summary>Room and oil are taken to lie within so many kelvins of the calibration's 20 °C.</summary>
    private const double UsualKelvins = 10;

    private DeviceFit() { } // closed: these two answers and no others

    /// <summary>It may.</summary>
    /// <param name="Systematic">What goes into the series.</param>
    /// <param name="Capture">How far a true peak may lie above its reading; part of the upper allowance.</param>
    /// <param name="Lines">The other contributions, largest first.</param>
    public sealed record Fits(SystematicUncertainty Systematic, Pressure Capture, ImmutableArray<BudgetLine> Lines) : DeviceFit;

    /// <summary>It may not, for this reason.</summary>
    public sealed record Unfit(string What) : DeviceFit;

    public static DeviceFit Of(InstrumentState instrument, ServiceModel model, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        ArgumentNullException.ThrowIfNull(model);
        var facts = instrument.Facts;
        if (!facts.InUse)
            return new Unfit($"{facts.Instrument} is withdrawn from use.");
        if (instrument.Calibration is not { } calibration)
            return new Unfit($"{facts.Instrument} was never calibrated: nothing is known of how far it may be off.");
        if (instrument.IsDueOn(day))
            return new Unfit(string.Create(CultureInfo.InvariantCulture, $"{facts.Instrument} was due for calibration on {calibration.Due:d MMM yyyy}: it cannot release a tool."));
        if (BudgetOf(instrument, calibration, model, day) is not { } budget || InstrumentDevice.Describe(instrument, model) is not { } device)
            return new Unfit($"{facts.Instrument} does not read the pressure of this tool: its kind, range or the model's ram diameter is missing.");
        if (device.Range.Max < model.Limits.Maximum)
            return new Unfit(string.Create(CultureInfo.InvariantCulture, $"{facts.Instrument} ends at {device.Range.Max.Bar:0} bar, below the tool's maximum of {model.Limits.Maximum.Bar:0} bar."));
        return ReferenceChain.Examine(budget, model.Limits.Pressure, UsualRiseBarPerSecond * 1e5) switch
        {
            DeviceAnswer.Fit fit => new Fits(fit.Systematic, fit.Capture, fit.Lines),
            DeviceAnswer.DeviceTooSlow slow => new Unfit(string.Create(CultureInfo.InvariantCulture,
                $"{facts.Instrument} is too slow: at {UsualRiseBarPerSecond:#,##0} bar/s a true peak may lie {slow.Capture.Bar:0.#} bar above its reading; a time constant and sampling interval of {1000 * slow.LargestAllowed.Bar / UsualRiseBarPerSecond:0.#} ms together would do.")),
            DeviceAnswer.NotCompared => new Unfit($"{facts.Instrument} is the tool's own memory, and it was not compared with a reference at this visit."),
            var other => throw new InvalidOperationException($"The reference chain answered with {other.GetType().Name}."),
        };
    }

    private static DeviceBudget? BudgetOf(InstrumentState instrument, InstrumentCalibrated calibration, ServiceModel model, DateOnly day)
    {
        var force = RamForce.Of(model);
        var area = force is null ? (Area?)null : Area.OfCircle(force.RamDiameter);
        var facts = instrument.Facts;
        if (KindOf(facts.Kind) is not { } kind || InstrumentDevice.AsPressure(calibration.Expanded, area) is not { } expanded)
            return null;
        var years = Math.Abs(day.DayNumber - calibration.On.DayNumber) / 365.25;
        return new DeviceBudget
        {
            Kind = kind,
            CalibrationExpanded = expanded,
            DriftLimit = years * Size(calibration.DriftPerYear, area),
            TemperatureLimit = UsualKelvins * Size(calibration.PerKelvin, area),
            Resolution = Size(facts.Resolution, area),
            TimeConstant = facts.Response ?? TimeSpan.Zero,
            SamplingInterval = facts.SamplingInterval ?? TimeSpan.Zero,
            Force = kind == ReferenceKind.ForceCell ? force : null,
        };
    }

    /// <summary>The size of a change as a pressure; a change that is not stated, or not in a unit of pressure or force, counts as none.</summary>
    private static Pressure Size(Records.Events.MeasuredValue? change, Area? area) =>
        change is { } value && InstrumentDevice.AsPressure(value, area) is { } pressure ? Pressure.FromPascals(Math.Abs(pressure.Pascals)) : Pressure.FromPascals(0);

    private static ReferenceKind? KindOf(InstrumentKind kind) => kind switch
    {
        InstrumentKind.ForceCell => ReferenceKind.ForceCell,
        InstrumentKind.PortGauge => ReferenceKind.PortGauge,
        InstrumentKind.PeakHoldGauge => ReferenceKind.PeakHoldGauge,
        InstrumentKind.ToolMemory => ReferenceKind.ToolMemory,
        _ => null,
    };
}
