using System.IO.Ports;
using Ramwright.Instruments.Connections;

namespace Ramwright.Instruments.Lines;

/// <summary>A serial port.</summary>
internal sealed class SerialLine : IByteLine
{
    private readonly SerialPort _port;

    private SerialLine(SerialPort port) => _port = port;

    public static SerialLine Open(Wire.Serial to)
    {
        var (bits, parity, stop) = to.Frame switch
        {
            SerialFrame.EightEvenOne => (8, Parity.Even, StopBits.One),
            SerialFrame.EightOddOne => (8, Parity.Odd, StopBits.One),
            SerialFrame.EightNoneTwo => (8, Parity.None, StopBits.Two),
            SerialFrame.SevenEvenOne => (7, Parity.Even, StopBits.One),
            SerialFrame.SevenOddOne => (7, Parity.Odd, StopBits.One),
            _ => (8, Parity.None, StopBits.One),
        };
        var port = new SerialPort(to.Path, to.Baud, parity, bits, stop);
        try
        {
            port.Open();
            port.DiscardInBuffer();
            return new(port);
        }
        catch
        {
            port.Dispose();
            throw;
        }
    }

    public async ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancel) => await _port.BaseStream.WriteAsync(bytes, cancel);

    public async ValueTask<int> ReadSomeAsync(Memory<byte> into, CancellationToken cancel)
    {
        var got = await _port.BaseStream.ReadAsync(into, cancel);
        return got > 0 ? got : throw new EndOfStreamException("The serial port is gone.");
    }

    public void DiscardInput() => _port.DiscardInBuffer();

    public ValueTask DisposeAsync()
    {
        try
        {
            _port.Dispose();
        }
        catch (Exception gone) when (gone is IOException or UnauthorizedAccessException or InvalidOperationException)
        {
            // A pulled adapter cannot be closed in order.
        }
        return ValueTask.CompletedTask;
    }
}
