using System.Net.Sockets;
using Ramwright.Instruments.Connections;

namespace Ramwright.Instruments.Lines;

/// <summary>A network connection to a device.</summary>
internal sealed class TcpLine : IByteLine
{
    private const int MostDiscarded = 64 * 1024;
    private readonly Socket _socket;

    private TcpLine(Socket socket) => _socket = socket;

    public static async Task<TcpLine> OpenAsync(Wire.Tcp to, CancellationToken cancel)
    {
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(to.Host, to.Port, cancel);
            return new(socket);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }

    public async ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancel)
    {
        while (!bytes.IsEmpty)
            bytes = bytes[await _socket.SendAsync(bytes, cancel)..];
    }

    public async ValueTask<int> ReadSomeAsync(Memory<byte> into, CancellationToken cancel)
    {
        var got = await _socket.ReceiveAsync(into, cancel);
        return got > 0 ? got : throw new EndOfStreamException("The device closed the connection.");
    }

    public void DiscardInput()
    {
        Span<byte> waste = stackalloc byte[1024];
        for (var dropped = 0; _socket.Available > 0;)
        {
            dropped += _socket.Receive(waste);
            if (dropped > MostDiscarded)
                throw new IOException("The device talks without being asked.");
        }
    }

    public ValueTask DisposeAsync()
    {
        _socket.Dispose();
        return ValueTask.CompletedTask;
    }
}
