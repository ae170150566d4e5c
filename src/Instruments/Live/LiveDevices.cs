using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Devices;

namespace Ramwright.Instruments.Live;

/// <summary>Devices by their connection.</summary>
public static class LiveDevices
{
    /// <summary>The device behind a connection; nothing is opened before it is watched.</summary>
    /// <returns>Null for a simulated one, which lives elsewhere, and for a force without a ram area.</returns>
    public static IPeakDevice? Find(Connection connection, DeviceDescription description, LiveSetting setting, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(setting);
        return connection switch
        {
            Connection.Polled polled when IsKnown(polled.Signal, setting) => new PolledDevice(polled, description, setting, clock),
            Connection.Folder folder when IsKnown(folder.Signal, setting) => new FolderDevice(folder, description, setting, clock),
            _ => null,
        };
    }

    private static bool IsKnown(Signal signal, LiveSetting setting) => signal.Unit != ReadingUnit.Kilonewton || setting.RamArea is { SquareMetres: > 0 };
}
