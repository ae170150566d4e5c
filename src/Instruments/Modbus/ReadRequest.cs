using System.Buffers.Binary;
using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Lines;

namespace Ramwright.Instruments.Modbus;

/// <summary>Builds the request that reads registers, and judges the answer: 'MODBUS Application Protocol Specification' V1.1b3, 6.3 and 6.4.</summary>
internal static class ReadRequest
{
    public const int PduLength = 5;

    public static byte Function(RegisterTable table) => table == RegisterTable.Holding ? (byte)3 : (byte)4;

    /// <summary>Function, first address, number of registers; high bytes first.</summary>
    public static void Write(RegisterRead read, Span<byte> pdu)
    {
        pdu[0] = Function(read.Table);
        BinaryPrimitives.WriteUInt16BigEndian(pdu[1..], read.Address);
        BinaryPrimitives.WriteUInt16BigEndian(pdu[3..], read.Count);
    }

    /// <summary>The number in an answer: function, count of bytes, registers; or an exception, or neither.</summary>
    public static Exchanged Judge(RegisterRead read, ReadOnlySpan<byte> pdu)
    {
        var function = Function(read.Table);
        if (pdu.Length == 2 && pdu[0] == (function | 0x80))
            return new Exchanged.Bad(DeviceFault.Exception, $"Modbus exception {pdu[1]}: {ExceptionName(pdu[1])}");
        if (pdu.Length < 2 || pdu[0] != function)
            return new Exchanged.Bad(DeviceFault.Garbled, "the answer is none to this request");
        return pdu[1] == 2 * read.Count && pdu.Length == 2 + pdu[1]
            ? new Exchanged.Value(Number(read, pdu[2..]))
            : new Exchanged.Bad(DeviceFault.Garbled, $"the answer holds {pdu.Length - 2} bytes where {2 * read.Count} belong");
    }

    /// <summary>The dimensionless number in one or two registers; each high byte first.</summary>
    public static double Number(RegisterRead read, ReadOnlySpan<byte> registers)
    {
        var first = BinaryPrimitives.ReadUInt16BigEndian(registers);
        if (read.Count == 1)
            return read.Form == RegisterForm.Int16 ? (short)first : first;
        var second = BinaryPrimitives.ReadUInt16BigEndian(registers[2..]);
        var bits = read.LowWordFirst ? ((uint)second << 16) | first : ((uint)first << 16) | second;
        return read.Form switch
        {
            RegisterForm.Int32 => (double)(int)bits, // each to double: an int, a uint and a float would meet in a float
            RegisterForm.Float32 => (double)BitConverter.UInt32BitsToSingle(bits),
            _ => (double)bits,
        };
    }

    /// <summary>Names of the exceptions: the same specification, 7.</summary>
    private static string ExceptionName(byte code) => code switch
    {
        1 => "the device does not know this function",
        2 => "the device has no such register",
        3 => "the device does not take this number of registers",
        4 => "the device failed",
        5 => "the device needs more time",
        6 => "the device is busy",
        8 => "memory parity error",
        10 => "the gateway has no path to the device",
        11 => "the device behind the gateway does not answer",
        _ => "a code without a name",
    };
}
