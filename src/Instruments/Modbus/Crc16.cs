namespace Ramwright.Instruments.Modbus;

/// <summary>CRC-16/MODBUS: polynomial x¹⁶ + x¹⁵ + x² + 1 reflected (A001), all ones at first; sent low byte first.</summary>
/// <remarks>'MODBUS over Serial Line', V1.02, 6.2.2.</remarks>
public static class Crc16
{
    public static ushort Of(ReadOnlySpan<byte> bytes)
    {
        ushort crc = 0xFFFF;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var bit = 0; bit < 8; bit++)
                crc = (ushort)((crc & 1) != 0 ? (crc >> 1) ^ 0xA001 : crc >> 1);
        }
        return crc;
    }

    /// <summary>Whether the last two bytes are the CRC of those before.</summary>
    public static bool Holds(ReadOnlySpan<byte> frame) =>
        frame.Length > 2 && Of(frame[..^2]) == (ushort)(frame[^2] | (frame[^1] << 8));
}
