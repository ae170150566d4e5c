using System.Text;
using CsCheck;
using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Lines;
using Ramwright.Instruments.Modbus;

namespace Ramwright.Instruments.Tests.Lines;

/// <summary>What a device may say to one question. Pieces that arrive one by one are parted by |, bytes are hexadecimal.</summary>
public sealed class ExchangeTests
{
    private static readonly RegisterRead s_read = new(1, RegisterTable.Input, 0, RegisterForm.UInt16, LowWordFirst: false);
    private static readonly TimeSpan s_soon = TimeSpan.FromMilliseconds(400);

    [Theory]
    [InlineData("700.5\n", "700.5")]
    [InlineData("70|0.5\r|\n", "700.5")]
    [InlineData("\r\n+7.005E+02\r", "700.5")]
    [InlineData("700.5 bar\n", "700.5")]
    [InlineData("READ?\r\n700.5\r\n", "700.5")] // an echo
    [InlineData("READ?\nREAD?\n", "Bad Garbled")] // twice is no echo
    [InlineData("700.5 psi\n", "Bad Garbled")]
    [InlineData("OVERLOAD\n", "Bad Garbled")]
    [InlineData("7O0.5\n", "Bad Garbled")]
    [InlineData("NaN\n", "NaN")]
    [InlineData("9.91E37\n", "NaN")]
    [InlineData("-9.9E+37\n", "NaN")]
    [InlineData("700,5\n", "Bad Garbled")]
    [InlineData("\u0001\u0002\n", "Bad Garbled")]
    [InlineData("700.", "Broken Silent")] // half an answer
    [InlineData("", "Broken Silent")]
    [InlineData("700.|HANGUP", "Broken Closed")]
    public async Task A_line_is_a_number_or_told(string said, string told) =>
        Assert.Equal(told, await Told(line => new LineExchange(line, new("READ?", LineEnd.CrLf), ReadingUnit.Bar, s_soon), said.Replace("HANGUP", "", StringComparison.Ordinal), hangsUp: said.EndsWith("HANGUP", StringComparison.Ordinal), Encoding.Latin1.GetBytes));

    [Fact]
    public async Task A_line_without_end_is_left() =>
        Assert.Equal("Broken Garbled", await Told(line => new LineExchange(line, new("READ?", LineEnd.Lf), ReadingUnit.Bar, s_soon), new string('7', 5_000), hangsUp: false, Encoding.ASCII.GetBytes));

    [Theory]
    [InlineData("0001 0000 0005 01 04 02 02BC", "700")]
    [InlineData("0001 00|00 0005 01| 04 02 02|BC", "700")]
    [InlineData("0000 0000 0005 01 04 02 0001 | 0001 0000 0005 01 04 02 02BC", "700")] // a late answer to an earlier question
    [InlineData("0001 0000 0003 01 84 02", "Bad Exception")]
    [InlineData("0001 0000 0005 02 04 02 02BC", "Bad WrongDevice")]
    [InlineData("0001 0000 0007 01 04 04 02BC 0000", "Bad Garbled")]
    [InlineData("0001 0007 0005 01 04 02 02BC", "Broken Garbled")]
    [InlineData("0001 0000 FFFF 01 04", "Broken Garbled")]
    [InlineData("0001 0000 0001 01", "Broken Garbled")]
    [InlineData("0001 0000 0005 01 04", "Broken Silent")] // half a frame
    [InlineData("0001 0000 0005 01 04|HANGUP", "Broken Closed")]
    public async Task A_Modbus_TCP_frame_is_a_number_or_told(string said, string told) => Assert.Equal(told, await TcpTold(said));

    [Theory]
    [InlineData("01 04 02 02BC CRC", "700")]
    [InlineData("01|04|02|02|BC|CRC", "700")]
    [InlineData("ECHO 01 04 02 02BC CRC", "700")] // the adapter hears what it sends
    [InlineData("ECHO", "Broken Silent")] // and nobody else answers
    [InlineData("01 84 02 CRC", "Bad Exception")]
    [InlineData("02 04 02 02BC CRC", "Bad WrongDevice")]
    [InlineData("01 04 02 02BC 0000", "Bad Garbled")]
    [InlineData("01 03 02 02BC CRC", "Bad Garbled")]
    [InlineData("01 04 02", "Broken Silent")]
    [InlineData("", "Broken Silent")]
    [InlineData("01 04 02|HANGUP", "Broken Closed")]
    public async Task A_Modbus_RTU_frame_is_a_number_or_told(string said, string told) => Assert.Equal(told, await RtuTold(said));

    [Fact]
    public async Task Requests_go_out_as_the_specifications_have_them()
    {
        var line = new ScriptedLine([], hangsUp: true);
        await new ModbusTcpExchange(line, s_read with { Unit = 17, Table = RegisterTable.Holding, Address = 0x6B }, s_soon).AskAsync(TestContext.Current.CancellationToken);
        Assert.Equal("00010000000611" + "03006B0001", Convert.ToHexString([.. line.Written]));
        line.Written.Clear();
        await new ModbusRtuExchange(line, s_read, s_soon, TimeSpan.Zero).AskAsync(TestContext.Current.CancellationToken);
        Assert.Equal("010400000001" + "31CA", Convert.ToHexString([.. line.Written])); // CRC as pymodbus 3.0.0 computes it
    }

    [Fact]
    public void Hostile_bytes_are_answered_and_never_thrown() =>
        Gen.Select(Gen.OneOf(Gen.Byte, Gen.OneOf<byte>(0, 1, 2, 4, 5, 10, 13, 0x30, 0x84, 0xFF)).Array[0, 600], Gen.Int[1, 40], Gen.Int[0, 2]).ForAll((bytes, piece, kind) =>
        {
            var line = new ScriptedLine(bytes.Chunk(piece), hangsUp: true);
            IExchange exchange = kind switch
            {
                0 => new LineExchange(line, new("READ?", LineEnd.Lf), ReadingUnit.Bar, TimeSpan.FromSeconds(20)),
                1 => new ModbusTcpExchange(line, s_read, TimeSpan.FromSeconds(20)),
                _ => new ModbusRtuExchange(line, s_read, TimeSpan.FromSeconds(20), TimeSpan.Zero),
            };
            for (var i = 0; i < 4; i++)
                Assert.NotNull(exchange.AskAsync(CancellationToken.None).GetAwaiter().GetResult());
        }, iter: 20_000);

    private static Task<string> TcpTold(string said) => Told(line => new ModbusTcpExchange(line, s_read, s_soon), said.Replace("HANGUP", "", StringComparison.Ordinal), said.EndsWith("HANGUP", StringComparison.Ordinal), Hex);

    private static Task<string> RtuTold(string said)
    {
        var hex = said.Replace(" ", "", StringComparison.Ordinal).Replace("HANGUP", "", StringComparison.Ordinal);
        if (hex.EndsWith("CRC", StringComparison.Ordinal))
        {
            var frame = hex[..^3].Replace("ECHO", "", StringComparison.Ordinal).Replace("|", "", StringComparison.Ordinal);
            var crc = Crc16.Of(Convert.FromHexString(frame));
            hex = hex[..^3] + Convert.ToHexString([(byte)crc, (byte)(crc >> 8)]);
        }
        return Told(line => new ModbusRtuExchange(line, s_read, s_soon, TimeSpan.Zero), hex.Replace("ECHO", "01040000000131CA", StringComparison.Ordinal), said.EndsWith("HANGUP", StringComparison.Ordinal), Hex);
    }

    private static async Task<string> Told(Func<ScriptedLine, IExchange> over, string said, bool hangsUp, Func<string, byte[]> bytes)
    {
        await using var exchange = over(new ScriptedLine(said.Split('|').Select(bytes), hangsUp));
        return await exchange.AskAsync(TestContext.Current.CancellationToken) switch
        {
            Exchanged.Value value => value.Number.ToString(System.Globalization.CultureInfo.InvariantCulture),
            Exchanged.Bad bad => $"Bad {bad.Fault}",
            Exchanged.Broken broken => $"Broken {broken.Fault}",
            _ => "?",
        };
    }

    private static byte[] Hex(string text) => Convert.FromHexString(text.Replace(" ", "", StringComparison.Ordinal));
}
