using Ramwright.Instruments.Devices;

namespace Ramwright.Instruments.Live;

/// <summary>One run out of all that a device tells.</summary>
internal static class Watched
{
    /// <summary>The next full run; lost devices and runs that do not count are waited over.</summary>
    public static async Task<PeakReading> FirstPeakAsync(IPeakDevice device, CancellationToken cancel)
    {
        await foreach (var happened in device.WatchAsync(cancel))
        {
            if (happened is PeakEvent.Peaked peaked)
                return peaked.Reading;
        }
        throw new InvalidOperationException("A live device is watched until it is called off.");
    }
}
