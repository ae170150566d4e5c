using System.Globalization;
using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Devices;
using Ramwright.Instruments.Live;

namespace Ramwright.Instruments.Tests.Live;

/// <summary>Watches a device of a connection text and writes down what it tells, one word each.</summary>
internal static class Watching
{
    public static IPeakDevice Device(string connection, LiveSetting? setting = null, TimeProvider? clock = null) =>
        LiveDevices.Find(((ConnectionAnswer.Read)ConnectionText.Read("test", connection)).Connection, SimulatedDevice.MadeUpGauge(new(2026, 3, 1)) with { TimeConstant = TimeSpan.Zero }, setting ?? new(), clock ?? new StepClock())!;

    /// <summary>The words until so many runs were taken: <c>701.25</c>, <c>NotTaken:ShortOfFull</c>, <c>Lost:Closed</c>, <c>Back</c>. Rising pressures are left out.</summary>
    /// <param name="then">Called after each word, such as to pull a cable.</param>
    public static async Task<string> UntilAsync(IPeakDevice device, int runs, Func<string, Task>? then = null)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        limit.CancelAfter(TimeSpan.FromSeconds(90));
        var told = new List<string>();
        try
        {
            await foreach (var happened in device.WatchAsync(limit.Token))
            {
                if (Word(happened) is not { } word)
                    continue;
                told.Add(word);
                if (happened is PeakEvent.Peaked && --runs == 0)
                    break;
                if (then is not null)
                    await then(word);
            }
        }
        catch (OperationCanceledException)
        {
            told.Add("TIMEOUT");
        }
        return string.Join(' ', told);
    }

    private static string? Word(PeakEvent happened) => happened switch
    {
        PeakEvent.Peaked peaked => peaked.Reading.Peak.Bar.ToString("0.##", CultureInfo.InvariantCulture),
        PeakEvent.NotTaken not => $"NotTaken:{not.Why}",
        PeakEvent.Lost lost => $"Lost:{lost.Fault}",
        PeakEvent.Back => "Back",
        PeakEvent.Unreadable file => $"Unreadable:{file.File}",
        _ => null,
    };
}
