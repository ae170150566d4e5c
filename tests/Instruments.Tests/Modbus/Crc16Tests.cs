using CsCheck;
using Ramwright.Instruments.Modbus;

namespace Ramwright.Instruments.Tests.Modbus;

public sealed class Crc16Tests
{
    // 'MODBUS over Serial Line', V1.02, 6.2.2: the frame 02 07 has the CRC 1241 (value from memory).
    // Catalogue of parametrised CRC algorithms, CRC-16/MODBUS: the check value of '123456789' is 4B37 (value from memory).
    [Theory]
    [InlineData("0207", 0x1241)]
    [InlineData("313233343536373839", 0x4B37)]
    [InlineData("", 0xFFFF)]
    public void Published_values(string bytes, int crc) => Assert.Equal(crc, Crc16.Of(Convert.FromHexString(bytes)));

    [Fact]
    public void A_frame_holds_with_its_CRC_behind_it_low_byte_first_and_with_no_bit_changed() =>
        Gen.Select(Gen.Byte.Array[1, 40], Gen.Int[0, 10_000]).ForAll((bytes, at) =>
        {
            var crc = Crc16.Of(bytes);
            byte[] frame = [.. bytes, (byte)crc, (byte)(crc >> 8)];
            Assert.True(Crc16.Holds(frame));
            frame[at % frame.Length] ^= (byte)(1 << (at % 8));
            Assert.False(Crc16.Holds(frame));
        });
}
