using System.Buffers.Binary;
using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Lines;

namespace Ramwright.Instruments.Modbus;

/// <summary>Reads registers with the header of 'MODBUS Messaging on TCP/IP' V1.0b, 3.1.3: transaction, protocol 0, length, unit.</summary>
internal sealed class ModbusTcpExchange(IByteLine line, RegisterRead read, TimeSpan within) : IExchange
{
    private const int Header = 7;
    private const int LongestAdu = 260;
    private const int MostStale = 8;
    private readonly byte[] _buffer = new byte[LongestAdu];
    private ushort _transaction;

    public async Task<Exchanged> AskAsync(CancellationToken cancel)
    {
        _transaction++;
        var request = new byte[Header + ReadRequest.PduLength];
        BinaryPrimitives.WriteUInt16BigEndian(request, _transaction);
        BinaryPrimitives.WriteUInt16BigEndian(request.AsSpan(4), 1 + ReadRequest.PduLength);
        request[6] = read.Unit;
        ReadRequest.Write(read, request.AsSpan(Header));
        return await Timed.RunAsync(within, async token =>
        {
            await line.WriteAsync(request, token);
            for (var stale = 0; stale < MostStale; stale++)
            {
                await FillAsync(0, Header, token);
                var length = BinaryPrimitives.ReadUInt16BigEndian(_buffer.AsSpan(4));
                if (BinaryPrimitives.ReadUInt16BigEndian(_buffer.AsSpan(2)) != 0 || length is < 2 or > LongestAdu - Header + 1)
                    return new Exchanged.Broken(DeviceFault.Garbled, "what comes back is no Modbus TCP");
                await FillAsync(Header, length - 1, token);
                if (BinaryPrimitives.ReadUInt16BigEndian(_buffer) == _transaction)
                    return Judge(length);
            }
            return new Exchanged.Broken(DeviceFault.Garbled, "the device answers to other requests than ours");
        }, cancel);
    }

    public ValueTask DisposeAsync() => line.DisposeAsync();

    private Exchanged Judge(int length) => _buffer[6] == read.Unit
        ? ReadRequest.Judge(read, _buffer.AsSpan(Header, length - 1))
        : new Exchanged.Bad(DeviceFault.WrongDevice, $"device {_buffer[6]} answers, {read.Unit} was asked");

    private async Task FillAsync(int at, int count, CancellationToken cancel)
    {
        for (var end = at + count; at < end;)
            at += await line.ReadSomeAsync(_buffer.AsMemory(at, end - at), cancel);
    }
}
