using System.Buffers.Binary;
using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Modbus;

namespace Ramwright.Instruments.Practice;

/// <summary>One client of a device that answers Modbus TCP; it has one value in its registers.</summary>
internal static class ModbusSession
{
    private const int Header = 7;

    /// <summary>Answers each request until the client leaves, or sends what is no Modbus TCP.</summary>
    public static async Task RunAsync(Stream stream, RegisterRead read, Func<double> number, CancellationToken cancel)
    {
        var buffer = new byte[260];
        while (true)
        {
            await stream.ReadExactlyAsync(buffer.AsMemory(0, Header), cancel);
            var length = BinaryPrimitives.ReadUInt16BigEndian(buffer.AsSpan(4));
            if (BinaryPrimitives.ReadUInt16BigEndian(buffer.AsSpan(2)) != 0 || length is < 2 or > 254)
                return;
            await stream.ReadExactlyAsync(buffer.AsMemory(Header, length - 1), cancel);
            if (buffer[6] != read.Unit)
                continue; // it is for another device
            var pdu = Answer(read, buffer.AsSpan(Header, length - 1), number);
            BinaryPrimitives.WriteUInt16BigEndian(buffer.AsSpan(4), (ushort)(1 + pdu.Length));
            pdu.CopyTo(buffer.AsSpan(Header));
            await stream.WriteAsync(buffer.AsMemory(0, Header + pdu.Length), cancel);
        }
    }

    private static byte[] Answer(RegisterRead read, ReadOnlySpan<byte> request, Func<double> number)
    {
        var function = request[0];
        if (function != ReadRequest.Function(read.Table))
            return [(byte)(function | 0x80), 1];
        if (request.Length != ReadRequest.PduLength || BinaryPrimitives.ReadUInt16BigEndian(request[3..]) != read.Count)
            return [(byte)(function | 0x80), 3];
        if (BinaryPrimitives.ReadUInt16BigEndian(request[1..]) != read.Address)
            return [(byte)(function | 0x80), 2];
        return [function, (byte)(2 * read.Count), .. Registers(read, number())];
    }

    /// <summary>A number in the registers, held at the ends of what they can say.</summary>
    internal static byte[] Registers(RegisterRead read, double number)
    {
        var bytes = new byte[2 * read.Count];
        switch (read.Form)
        {
            case RegisterForm.UInt16:
                BinaryPrimitives.WriteUInt16BigEndian(bytes, (ushort)Math.Clamp(Math.Round(number), ushort.MinValue, ushort.MaxValue));
                break;
            case RegisterForm.Int16:
                BinaryPrimitives.WriteInt16BigEndian(bytes, (short)Math.Clamp(Math.Round(number), short.MinValue, short.MaxValue));
                break;
            case RegisterForm.UInt32:
                BinaryPrimitives.WriteUInt32BigEndian(bytes, (uint)Math.Clamp(Math.Round(number), uint.MinValue, uint.MaxValue));
                break;
            case RegisterForm.Int32:
                BinaryPrimitives.WriteInt32BigEndian(bytes, (int)Math.Clamp(Math.Round(number), int.MinValue, int.MaxValue));
                break;
            default:
                BinaryPrimitives.WriteSingleBigEndian(bytes, (float)number);
                break;
        }
        return read.LowWordFirst ? [bytes[2], bytes[3], bytes[0], bytes[1]] : bytes;
    }
}
