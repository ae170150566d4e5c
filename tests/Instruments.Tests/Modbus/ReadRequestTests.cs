using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Lines;
using Ramwright.Instruments.Modbus;

namespace Ramwright.Instruments.Tests.Modbus;

public sealed class ReadRequestTests
{
    // 'MODBUS Application Protocol Specification' V1.1b3, example of 6.4: input register 9 (address 8) is asked as 04 0008 0001 and answered 04 02 000A, which is 10.
    // Example of 6.3: holding registers 108 to 110 (from address 006B) hold 022B, 0000, 0064: 555, 0, 100. Values from memory.
    [Fact]
    public void Examples_of_the_specification()
    {
        var input = new RegisterRead(1, RegisterTable.Input, 8, RegisterForm.UInt16, LowWordFirst: false);
        Span<byte> pdu = stackalloc byte[ReadRequest.PduLength];
        ReadRequest.Write(input, pdu);
        Assert.Equal("0400080001", Convert.ToHexString(pdu));
        Assert.Equal(new Exchanged.Value(10), ReadRequest.Judge(input, Convert.FromHexString("0402000A")));
        var holding = new RegisterRead(1, RegisterTable.Holding, 0x6B, RegisterForm.UInt32, LowWordFirst: false);
        ReadRequest.Write(holding, pdu);
        Assert.Equal("03006B0002", Convert.ToHexString(pdu));
        Assert.Equal(new Exchanged.Value(555 * 65_536.0), ReadRequest.Judge(holding, Convert.FromHexString("0304022B0000")));
    }

    // IEEE 754: 700.5 is 442F2000 and 0.15625 is 3E200000 (the latter the worked example of many texts on the standard).
    [Theory]
    [InlineData(RegisterForm.UInt16, false, "FFFE", 65_534)]
    [InlineData(RegisterForm.Int16, false, "FFFE", -2)]
    [InlineData(RegisterForm.UInt32, false, "FFFFFFFE", 4_294_967_294)]
    [InlineData(RegisterForm.Int32, false, "FFFFFFFE", -2)]
    [InlineData(RegisterForm.Int32, true, "FFFEFFFF", -2)]
    [InlineData(RegisterForm.UInt32, true, "00010002", 131_073)]
    [InlineData(RegisterForm.Float32, false, "442F2000", 700.5)]
    [InlineData(RegisterForm.Float32, true, "2000442F", 700.5)]
    [InlineData(RegisterForm.Float32, false, "3E200000", 0.15625)]
    [InlineData(RegisterForm.Float32, false, "7FC00000", double.NaN)]
    public void Registers_become_numbers(RegisterForm form, bool lowFirst, string registers, double number) =>
        Assert.Equal(number, ReadRequest.Number(new(1, RegisterTable.Input, 0, form, lowFirst), Convert.FromHexString(registers)));

    [Theory]
    [InlineData("8402", DeviceFault.Exception, "no such register")]
    [InlineData("84FF", DeviceFault.Exception, "without a name")]
    [InlineData("03020001", DeviceFault.Garbled, "none to this request")]
    [InlineData("04040001", DeviceFault.Garbled, "2 bytes where 2")]
    [InlineData("040100", DeviceFault.Garbled, "1 bytes where 2")]
    [InlineData("04", DeviceFault.Garbled, "none to this request")]
    [InlineData("", DeviceFault.Garbled, "none to this request")]
    public void Anything_else_is_told(string pdu, DeviceFault fault, string what)
    {
        var bad = Assert.IsType<Exchanged.Bad>(ReadRequest.Judge(new(1, RegisterTable.Input, 0, RegisterForm.UInt16, LowWordFirst: false), Convert.FromHexString(pdu)));
        Assert.Equal(fault, bad.Fault);
        Assert.Contains(what, bad.What, StringComparison.Ordinal);
    }
}
