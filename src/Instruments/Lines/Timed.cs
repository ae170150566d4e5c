using System.Net.Sockets;

namespace Ramwright.Instruments.Lines;

/// <summary>One exchange within its time.</summary>
internal static class Timed
{
    /// <summary>Runs an exchange; time past and a dead line are answers.</summary>
    public static async Task<Exchanged> RunAsync(TimeSpan within, Func<CancellationToken, Task<Exchanged>> exchange, CancellationToken cancel)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        limit.CancelAfter(within);
        try
        {
            return await exchange(limit.Token);
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            return new Exchanged.Broken(DeviceFault.Silent, $"no whole answer within {within.TotalMilliseconds:0} ms");
        }
        catch (Exception gone) when (gone is IOException or SocketException or ObjectDisposedException or InvalidOperationException or UnauthorizedAccessException or TimeoutException)
        {
            cancel.ThrowIfCancellationRequested();
            return new Exchanged.Broken(DeviceFault.Closed, "the connection is gone");
        }
    }
}
