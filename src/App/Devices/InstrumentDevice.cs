using Ramwright.Instruments.Devices;
using Ramwright.Metrology.Quantities;
using Ramwright.Records.House;
using Ramwright.ServiceModels.Model;
using MeasuredValue = Ramwright.Records.Events.MeasuredValue;

namespace Ramwright.App.Devices;

/// <summary>An instrument of the register as a device that reads peaks of this tool: a force cell reads through the ram's area.</summary>
public static class InstrumentDevice
{
    /// <summary>The device; null when the register lacks its range, or a force cell meets a model without a ram diameter.</summary>
    public static DeviceDescription? Describe(InstrumentState instrument, ServiceModel model)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        ArgumentNullException.ThrowIfNull(model);
        var facts = instrument.Facts;
        var area = model.Behaviour?.Ram is { } ram ? Area.OfCircle(ram.Diameter) : (Area?)null;
        if (facts.Range is not { } rangeRead || AsPressure(rangeRead, area) is not { } range || KindOf(facts.Kind) is not { } kind)
            return null;
        return new DeviceDescription
        {
            Kind = kind,
            Name = facts.Name,
            Maker = facts.Maker ?? "maker not recorded",
            Serial = facts.SerialNumber ?? facts.Instrument.Value,
            Range = new PressureWindow(Pressure.FromBar(0), range),
            Resolution = facts.Resolution is { } step && AsPressure(step, area) is { } resolution ? resolution : Pressure.FromBar(0.1),
            TimeConstant = facts.Response ?? TimeSpan.Zero,
            SamplingInterval = facts.SamplingInterval ?? TimeSpan.Zero,
            Calibration = instrument.Calibration is { } c && AsPressure(c.Expanded, area) is { } expanded
                ? new Calibration(c.Certificate, c.On, c.Due, expanded)
                : null,
        };
    }

    /// <summary>A reading in pressure at the ram; a force is divided by the ram's area.</summary>
    public static Pressure? AsPressure(MeasuredValue reading, Area? ramArea) =>
        reading.AsPressure ?? (reading.AsForce is { } force && ramArea is { } area ? force / area : null);

    private static DeviceKind? KindOf(InstrumentKind kind) => kind switch
    {
        InstrumentKind.ForceCell => DeviceKind.ForceCell,
        InstrumentKind.PortGauge => DeviceKind.PortGauge,
        InstrumentKind.PeakHoldGauge => DeviceKind.PeakHoldGauge,
        InstrumentKind.ToolMemory => DeviceKind.ToolMemory,
        _ => null,
    };
}
