using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Paper.Sheets;
using Ramwright.Proving;
using Ramwright.Records.House;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Devices;

/// <summary>Whether an instrument may measure a proof of this tool on this day, and what it may be off.</summary>
public abstract record DeviceFit
{
    /// <summary>Rise of the pressure just before the relief opens, bar per second, where no recording tells it: that of the made-up Corrie 85, rounded up.</summary>
    public const double UsualRiseBarPerSecond = 1_000;

    /// <summary>Room and oil are taken to lie within so many kelvins of the calibration's 20 °C.</summary>
    private const double UsualKelvins = 10;

    private DeviceFit() { } // closed: these two answers and no others

    /// <summary>It may; the budget's lines are expanded (k = 2) and add by their squares, peak capture upward only.</summary>
    public sealed record Fits(SystematicUncertainty Systematic, ImmutableArray<UncertaintyLine> Budget) : DeviceFit;

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
        if (InstrumentDevice.Describe(instrument, model) is not { } device)
            return new Unfit($"{facts.Instrument} does not read the pressure of this tool: its kind, range or the model's ram diameter is missing.");
        if (device.Range.Max < model.Limits.Maximum)
            return new Unfit(string.Create(CultureInfo.InvariantCulture, $"{facts.Instrument} ends at {device.Range.Max.Bar:0} bar, below the tool's maximum of {model.Limits.Maximum.Bar:0} bar."));
        var missed = device.PeakMissed(UsualRiseBarPerSecond * 1e5);
        var room = 0.5 * (model.Limits.Pressure.Max - model.Limits.Pressure.Min);
        if (missed >= 0.5 * room)
            return new Unfit(string.Create(CultureInfo.InvariantCulture, $"{facts.Instrument} is too slow: at {UsualRiseBarPerSecond:#,##0} bar/s a true peak may lie {missed.Bar:0.#} bar above its reading; a time constant and sampling interval of {500 * 0.5 * room.Bar / UsualRiseBarPerSecond:0.#} ms together would do."));
        return Sum(instrument, model, calibration, day, missed, device.Resolution);
    }

    private static Fits Sum(InstrumentState instrument, ServiceModel model, InstrumentCalibrated calibration, DateOnly day, Pressure missed, Pressure resolution)
    {
        var area = model.Behaviour?.Ram is { } ram ? Area.OfCircle(ram.Diameter) : (Area?)null;
        var lines = ImmutableArray.CreateBuilder<UncertaintyLine>();
        Add("calibration", InstrumentDevice.AsPressure(calibration.Expanded, area));
        var years = Math.Max(0, day.DayNumber - calibration.On.DayNumber) / 365.25;
        if (calibration.DriftPerYear is { } drift)
            Add("drift since", InstrumentDevice.AsPressure(drift, area) is { } perYear ? Math.Abs(years) * perYear : null);
        if (calibration.PerKelvin is { } perKelvin)
            Add("temperature", InstrumentDevice.AsPressure(perKelvin, area) is { } slope ? UsualKelvins * slope : null);
        // Half a step, taken as a rectangle: step/√12, expanded twice (JCGM 100, F.2.2.1; clause from memory).
        Add("resolution", 2 / Math.Sqrt(12) * resolution);
        if (instrument.Facts.Kind == InstrumentKind.ForceCell && model.Behaviour?.Ram is { } friction && area is { } a && friction.SealFrictionShare is { } share)
            Add("spring and friction of the ram", share * model.Limits.Nominal + ((friction.DryFriction ?? Force.FromNewtons(0)) / a));
        var both = Math.Sqrt(lines.Sum(l => l.Above.Pascals * l.Above.Pascals));
        lines.Add(new UncertaintyLine("catching the peak (upward only)", Pressure.FromBar(0), missed));
        var upward = Math.Sqrt(both * both + missed.Pascals * missed.Pascals);
        return new Fits(new SystematicUncertainty(Pressure.FromPascals(both), Pressure.FromPascals(upward), Pressure.FromBar(0)), lines.ToImmutable());

        void Add(string name, Pressure? expanded)
        {
            if (expanded is { } value)
                lines.Add(new UncertaintyLine(name, value, value));
        }
    }
}
