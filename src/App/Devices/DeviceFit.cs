using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving.Reference;
using Ramwright.Records.House;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Devices;

/// <summary>Whether a reference may measure a proof of this tool on this day: what the register says, then what the reference chain says.</summary>
public abstract record DeviceFit
{
    private DeviceFit() { } // closed: these two answers and no others

    /// <summary>It may.</summary>
    public sealed record Fits(ReferenceBudget Budget) : DeviceFit;

    /// <summary>It may not, for this reason.</summary>
    public sealed record Unfit(string What) : DeviceFit;

    public static DeviceFit Of(InstrumentState instrument, ServiceModel model, DateOnly day, Circumstances? circumstances = null)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        ArgumentNullException.ThrowIfNull(model);
        var at = circumstances ?? new Circumstances();
        var facts = instrument.Facts;
        if (WhyNot(instrument, day) is { } not)
            return new Unfit(not);
        if (facts.Kind == InstrumentKind.ToolMemory)
            return new Unfit($"{facts.Instrument} is the tool's own memory, and it was not compared with a reference at this visit.");
        var budget = RegisterBudget.Of(instrument, instrument.Calibration!, model, day, at);
        if (budget is RegisterBudget.BeyondPoints beyond)
            return new Unfit(string.Create(CultureInfo.InvariantCulture, $"{facts.Instrument} was calibrated from {beyond.Low.Bar:0} to {beyond.High.Bar:0} bar; the limits of this tool are {model.Limits.Pressure.Min.Bar:0} and {model.Limits.Pressure.Max.Bar:0} bar, and beyond its points a correction is a guess."));
        if (budget is not RegisterBudget.Known known || InstrumentDevice.Describe(instrument, model) is not { } device)
            return new Unfit($"{facts.Instrument} does not read the pressure of this tool: its kind, range or the model's ram diameter is missing.");
        if (device.Range.Max < model.Limits.Maximum)
            return new Unfit(string.Create(CultureInfo.InvariantCulture, $"{facts.Instrument} ends at {device.Range.Max.Bar:0} bar, below the tool's maximum of {model.Limits.Maximum.Bar:0} bar."));
        return Examine(known.Device, facts.Instrument.Value, model, at);
    }

    /// <summary>Why nothing that this instrument reads on that day can be relied on; null when it can.</summary>
    public static string? WhyNot(InstrumentState instrument, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        var name = instrument.Facts.Instrument;
        return instrument switch
        {
            { Facts.InUse: false } => $"{name} is withdrawn from use.",
            { Calibration: null } => $"{name} was never calibrated: nothing is known of how far it may be off.",
            { Calibration: { } last } when instrument.IsDueOn(day) => string.Create(CultureInfo.InvariantCulture, $"{name} was due for calibration on {last.Due:d MMM yyyy}: it cannot release a tool."),
            _ => null,
        };
    }

    /// <summary>What the reference chain says of a budget.</summary>
    /// <param name="name">What the answer calls the reference.</param>
    internal static DeviceFit Examine(DeviceBudget device, string name, ServiceModel model, Circumstances at)
    {
        var rise = at.RiseBarPerSecond ?? ToolRise.BarPerSecond(model);
        return ReferenceChain.Examine(device, model.Limits.Pressure, Pressure.FromBar(rise).Pascals) switch
        {
            DeviceAnswer.Fit fit => new Fits(fit.Budget),
            DeviceAnswer.DeviceTooSlow slow => new Unfit(string.Create(CultureInfo.InvariantCulture,
                $"{name} is too slow: at {rise:#,##0} bar/s a true peak may lie {slow.Capture.Bar:0.#} bar above its reading; a time constant and sampling interval of {slow.WouldDo.TotalMilliseconds:0.#} ms together would do.")),
            DeviceAnswer.NotCompared => new Unfit($"{name} was not compared with a reference at this visit."),
            var other => throw new InvalidOperationException($"The reference chain answered with {other.GetType().Name}."),
        };
    }
}
