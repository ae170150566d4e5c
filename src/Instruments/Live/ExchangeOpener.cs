using System.Net.Sockets;
using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Lines;
using Ramwright.Instruments.Modbus;

namespace Ramwright.Instruments.Live;

/// <summary>An open way to ask a device, or why there is none.</summary>
internal readonly record struct Opened(IExchange? Exchange, Exchanged.Broken? Trouble);

/// <summary>Opens the line of a connection.</summary>
internal static class ExchangeOpener
{
    public static async Task<Opened> OpenAsync(Connection.Polled connection, CancellationToken cancel)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        limit.CancelAfter(TimeSpan.FromSeconds(Math.Max(2, connection.Polling.Within.TotalSeconds)));
        try
        {
            IByteLine line = connection.Wire switch
            {
                Wire.Tcp tcp => await TcpLine.OpenAsync(tcp, limit.Token),
                Wire.Serial serial => SerialLine.Open(serial),
                _ => throw new ArgumentOutOfRangeException(nameof(connection), connection, "No such wire."),
            };
            return new(ExchangeOver(line, connection), null);
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            return new(null, new(DeviceFault.NotReached, "nothing answers there"));
        }
        catch (Exception shut) when (shut is IOException or SocketException or UnauthorizedAccessException or InvalidOperationException or ArgumentException and not ArgumentOutOfRangeException)
        {
            return new(null, new(DeviceFault.NotReached, shut switch
            {
                SocketException { SocketErrorCode: SocketError.ConnectionRefused } => "the host refuses the connection: nothing listens at this port",
                SocketException { SocketErrorCode: SocketError.HostNotFound or SocketError.NoData or SocketError.TryAgain } => "no host has this name",
                SocketException => "the host cannot be reached",
                UnauthorizedAccessException => "this account may not use the port, or another program holds it",
                _ => "the port cannot be opened",
            }));
        }
    }

    private static IExchange ExchangeOver(IByteLine line, Connection.Polled connection) => connection.Dialogue switch
    {
        Dialogue.Line text => new LineExchange(line, text, connection.Signal.Unit, connection.Polling.Within),
        Dialogue.Registers { Framing: ModbusFraming.Tcp } registers => new ModbusTcpExchange(line, registers.Read, connection.Polling.Within),
        Dialogue.Registers registers => new ModbusRtuExchange(line, registers.Read, connection.Polling.Within, SilenceOn(connection.Wire)),
        _ => throw new ArgumentOutOfRangeException(nameof(connection), connection, "No such dialogue."),
    };

    /// <summary>The still time between frames: 3.5 signs of 11 bits, and 1.75 ms above 19,200 baud ('MODBUS over Serial Line' V1.02, 2.5.1.1).</summary>
    private static TimeSpan SilenceOn(Wire wire) => wire is Wire.Serial serial
        ? TimeSpan.FromSeconds(serial.Baud > 19_200 ? 0.00175 : 3.5 * 11 / serial.Baud)
        : TimeSpan.Zero;
}
