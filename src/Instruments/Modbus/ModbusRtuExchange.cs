using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Lines;

namespace Ramwright.Instruments.Modbus;

/// <summary>Reads registers with address and CRC, as 'MODBUS over Serial Line' V1.02, 2.5.1, has it. An echo of the request, as some adapters give, is passed over.</summary>
internal sealed class ModbusRtuExchange(IByteLine line, RegisterRead read, TimeSpan within, TimeSpan silence) : IExchange
{
    private const int RequestLength = 1 + ReadRequest.PduLength + 2;
    private const int ExceptionLength = 5;
    private const int LongestFrame = 256;

    public async Task<Exchanged> AskAsync(CancellationToken cancel)
    {
        var request = new byte[RequestLength];
        request[0] = read.Unit;
        ReadRequest.Write(read, request.AsSpan(1));
        var crc = Crc16.Of(request.AsSpan(0, RequestLength - 2));
        (request[^2], request[^1]) = ((byte)crc, (byte)(crc >> 8));
        await Task.Delay(silence, cancel); // between frames the line is still for 3.5 signs
        return await Timed.RunAsync(within, async token =>
        {
            line.DiscardInput();
            await line.WriteAsync(request, token);
            var buffer = new byte[LongestFrame];
            var (count, mayEcho) = (0, true);
            while (true)
            {
                if (Whole(request, buffer.AsSpan(0, count), ref mayEcho, out var drop) is { } answer)
                    return answer;
                if (drop > 0)
                {
                    buffer.AsSpan(drop, count - drop).CopyTo(buffer);
                    count -= drop;
                    continue;
                }
                if (count == buffer.Length)
                    return new Exchanged.Bad(DeviceFault.Garbled, "the line brings bytes without end");
                count += await line.ReadSomeAsync(buffer.AsMemory(count), token);
            }
        }, cancel);
    }

    public ValueTask DisposeAsync() => line.DisposeAsync();

    /// <summary>The answer, once there are bytes enough to judge; <paramref name="drop"/> bytes of an echo go first.</summary>
    private Exchanged? Whole(ReadOnlySpan<byte> request, ReadOnlySpan<byte> got, ref bool mayEcho, out int drop)
    {
        drop = 0;
        var whole = 3 + (2 * read.Count) + 2;
        if (got.Length >= ExceptionLength && (got[1] & 0x80) != 0 && Crc16.Holds(got[..ExceptionLength]))
            return Judge(got[..ExceptionLength]);
        if (got.Length >= whole && Crc16.Holds(got[..whole]))
            return Judge(got[..whole]);
        if (mayEcho && got.Length < request.Length && request.StartsWith(got))
            return null;
        if (mayEcho && got.StartsWith(request))
        {
            (drop, mayEcho) = (request.Length, false);
            return null;
        }
        return got.Length < whole ? null : new Exchanged.Bad(DeviceFault.Garbled, "the answer is bent: its CRC does not hold");
    }

    private Exchanged Judge(ReadOnlySpan<byte> frame) => frame[0] == read.Unit
        ? ReadRequest.Judge(read, frame[1..^2])
        : new Exchanged.Bad(DeviceFault.WrongDevice, $"device {frame[0]} answers, {read.Unit} was asked");
}
