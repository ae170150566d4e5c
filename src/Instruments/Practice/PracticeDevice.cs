using System.Net;
using System.Net.Sockets;
using Ramwright.Instruments.Connections;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Practice;

/// <summary>How a practice device ended, if not by being called off.</summary>
public enum PracticeEnd
{
    /// <summary>Only <c>scpi-tcp</c> and <c>modbus-tcp</c> are acted, and no forces.</summary>
    NotActed,

    /// <summary>Its host is none of this machine, or another program listens at its port.</summary>
    CannotListen,
}

/// <summary>Acts as the device that a connection describes, so that cable, register and bench can be tried without a tool.</summary>
public static class PracticeDevice
{
    private const int MostClients = 8;

    /// <summary>Listens and answers until called off.</summary>
    /// <param name="listening">Called once it listens, with the port.</param>
    /// <exception cref="OperationCanceledException">It was called off, which is how it ends.</exception>
    public static async Task<PracticeEnd> ServeAsync(Connection connection, PracticeStrokes strokes, TimeProvider clock, Action<int> listening, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(clock);
        ArgumentNullException.ThrowIfNull(listening);
        if (connection is not Connection.Polled { Wire: Wire.Tcp at, Signal.Unit: not ReadingUnit.Kilonewton } polled || polled.Dialogue is Dialogue.Registers { Framing: ModbusFraming.Rtu })
            return PracticeEnd.NotActed;
        if (await ListenAsync(at, cancel) is not { } listener)
            return PracticeEnd.CannotListen;
        using (listener)
        {
            listening(((IPEndPoint)listener.LocalEndpoint).Port);
            var start = clock.GetTimestamp();
            using var room = new SemaphoreSlim(MostClients);
            while (true)
            {
                await room.WaitAsync(cancel);
                var client = await listener.AcceptSocketAsync(cancel);
                _ = Task.Run(() => TalkAsync(client, polled, () => strokes.At(clock.GetElapsedTime(start).TotalSeconds), room, cancel), CancellationToken.None);
            }
        }
    }

    /// <summary>The number that a device with this signal says for a pressure: (value in its unit − offset) / factor.</summary>
    internal static double NumberOf(Signal signal, Pressure pressure) =>
        ((pressure.Pascals / signal.Unit.ToPressure(1, null, default)!.Value.Pascals) - signal.Offset) / signal.Factor;

    private static async Task<TcpListener?> ListenAsync(Wire.Tcp at, CancellationToken cancel)
    {
        try
        {
            var address = IPAddress.TryParse(at.Host, out var given) ? given : (await Dns.GetHostAddressesAsync(at.Host, cancel))[0];
            var listener = new TcpListener(address, at.Port);
            listener.Start(MostClients);
            return listener;
        }
        catch (Exception shut) when (shut is SocketException or IndexOutOfRangeException)
        {
            return null;
        }
    }

    private static async Task TalkAsync(Socket client, Connection.Polled connection, Func<Pressure> now, SemaphoreSlim room, CancellationToken cancel)
    {
        try
        {
            client.NoDelay = true;
            await using var stream = new NetworkStream(client, ownsSocket: true);
            var number = () => NumberOf(connection.Signal, now());
            await (connection.Dialogue switch
            {
                Dialogue.Line line => LineSession.RunAsync(stream, line, number, cancel),
                Dialogue.Registers registers => ModbusSession.RunAsync(stream, registers.Read, number, cancel),
                _ => Task.CompletedTask,
            });
        }
        catch (Exception gone) when (gone is IOException or SocketException or OperationCanceledException or ObjectDisposedException)
        {
            // The client left, or the practice is over.
        }
        finally
        {
            try
            {
                room.Release();
            }
            catch (ObjectDisposedException)
            {
                // The practice was over first.
            }
        }
    }
}
