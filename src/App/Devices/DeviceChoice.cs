using System.Collections.Immutable;
using System.Globalization;
using Ramwright.App.Web.Parts;
using Ramwright.Records.House;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Devices;

/// <summary>The instruments that can read a peak, as a form offers them: each with what stands in its way today.</summary>
public static class DeviceChoice
{
    /// <summary>Instruments in use that can read a peak, the simulated first.</summary>
    public static IEnumerable<InstrumentState> Instruments(HouseState house)
    {
        ArgumentNullException.ThrowIfNull(house);
        return house.InstrumentsById.Values
            .Where(i => i.Facts.InUse && i.Facts.Kind is InstrumentKind.ForceCell or InstrumentKind.PortGauge or InstrumentKind.PeakHoldGauge)
            .OrderBy(i => i.Facts.Connection == SimulatedBench.Connection ? 0 : 1);
    }

    public static ImmutableArray<Option> Of(HouseState house, ServiceModel model, DateOnly day) =>
        [.. Instruments(house).Select(i => new Option(i.Facts.Instrument.Value, $"{i.Facts.Instrument}, {i.Facts.Name}, {Stands(i, model, day)}"))];

    /// <summary>The first simulated instrument of the house that can read this tool: a force cell needs the ram's diameter.</summary>
    public static InstrumentState? Simulated(HouseState house, ServiceModel model) =>
        house.InstrumentsById.Values.FirstOrDefault(i => i.Facts.InUse && i.Facts.Connection == SimulatedBench.Connection && InstrumentDevice.Describe(i, model) is not null);

    private static string Stands(InstrumentState instrument, ServiceModel model, DateOnly day) => DeviceFit.Of(instrument, model, day) switch
    {
        DeviceFit.Fits fits => string.Create(CultureInfo.InvariantCulture, $"may be off by {fits.Budget.Systematic.AboveLimit.Bar:0.#} bar, due {instrument.Calibration!.Due:d MMM yyyy}"),
        _ => "cannot prove this tool",
    };
}
