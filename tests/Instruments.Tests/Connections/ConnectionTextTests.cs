using CsCheck;
using Ramwright.Instruments.Connections;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Tests.Connections;

/// <summary>One reader for the text that says how a device is reached. Devices are invented.</summary>
public sealed class ConnectionTextTests
{
    [Theory]
    [InlineData("simulated", "simulated")]
    [InlineData("scpi-tcp 10.0.0.5:5025 ask \"READ?\" in bar every 20 ms", "scpi-tcp 10.0.0.5:5025 ask \"READ?\" in bar begins 50 bar ends 25 bar every 20 ms within 1000 ms")]
    [InlineData("# the bench meter\nscpi-tcp [fd00::5]:5025\n  ask MEAS? line crlf\n  in psi lag 1ms full 6000 psi", "scpi-tcp [fd00::5]:5025 ask \"MEAS?\" line crlf in psi lag 1 ms begins 50 bar ends 25 bar full 41368543.759 Pa every 20 ms within 1000 ms")]
    [InlineData("scpi-serial /dev/ttyUSB0 ask \"say \"\"p\"\"\" in MPa begins 4 MPa", "scpi-serial /dev/ttyUSB0 9600 8n1 ask \"say \"\"p\"\"\" in MPa begins 40 bar ends 20 bar every 20 ms within 1000 ms")]
    [InlineData("modbus-tcp meter.local:502 input number 30001 as float32 words low-first in bar times 0.1", "modbus-tcp meter.local:502 id 1 input address 0 as float32 words low-first in bar times 0.1 begins 50 bar ends 25 bar every 20 ms within 1000 ms")]
    [InlineData("modbus-rtu COM3 holding number 400011 as int16 plus -2.5 id 17 in kN", "modbus-rtu COM3 19200 8e1 id 17 holding address 10 as int16 in kN plus -2.5 begins 50 bar ends 25 bar every 20 ms within 1000 ms")]
    [InlineData("modbus-rtu 10.0.0.9:4001 input address 65535 as uint16 in bar within 0.25 s", "modbus-rtu 10.0.0.9:4001 id 1 input address 65535 as uint16 in bar begins 50 bar ends 25 bar every 20 ms within 250 ms")]
    [InlineData("csv-folder \"/srv/log ger\" holds recordings named \"run *.csv\" in bar", "csv-folder \"/srv/log ger\" holds recordings named \"run *.csv\" in bar begins 50 bar ends 25 bar")]
    public void What_is_written_is_understood_and_can_be_stored(string text, string stored)
    {
        var read = Assert.IsType<ConnectionAnswer.Read>(ConnectionText.Read("bench", text)).Connection;
        Assert.StartsWith(stored[..Math.Min(40, stored.Length)], ConnectionText.Write(read), StringComparison.Ordinal);
        if (!text.Contains("psi", StringComparison.Ordinal))
            Assert.Equal(stored, ConnectionText.Write(read));
        Assert.Equal(read, Assert.IsType<ConnectionAnswer.Read>(ConnectionText.Read("bench", ConnectionText.Write(read))).Connection);
    }

    [Theory]
    [InlineData("", "1:1+0 unknown-connection")]
    [InlineData("scpi-tpc 10.0.0.5:5025", "1:1+8 unknown-connection")]
    [InlineData("simulated twice", "1:11+5 unknown-clause")]
    [InlineData("scpi-tcp", "1:1+8 bad-place-of-device|1:1+8 missing-clause|1:1+8 missing-clause")]
    [InlineData("scpi-tcp 10.0.0.5 ask X in bar", "1:10+8 bad-place-of-device")]
    [InlineData("scpi-tcp 10.0.0.5:99999 ask X in bar", "1:10+14 bad-place-of-device")]
    [InlineData("scpi-tcp b@d:1 ask X in bar", "1:10+5 bad-place-of-device")]
    [InlineData("scpi-tcp a:1 ask X in bar evry 20 ms", "1:27+4 unknown-clause")]
    [InlineData("scpi-tcp a:1 ask X in bar every 20", "1:33+2 missing-unit")]
    [InlineData("scpi-tcp a:1 ask X in bar every 20 bar", "1:36+3 wrong-dimension")]
    [InlineData("scpi-tcp a:1 ask X in bar every 20 h", "1:33+2 out-of-range")]
    [InlineData("scpi-tcp a:1 ask X in bar every", "1:27+5 missing-clause-value")]
    [InlineData("scpi-tcp a:1 ask X in bar in psi", "1:27+2 duplicate-clause")]
    [InlineData("scpi-tcp a:1 ask X in furlong", "1:23+7 unknown-unit")]
    [InlineData("scpi-tcp a:1 ask \"X in bar", "1:18+1 open-quote|1:1+8 missing-clause")]
    [InlineData("scpi-tcp a:1 ask X in bar times 0", "1:27+5 out-of-range")]
    [InlineData("scpi-tcp a:1 ask X in bar times NaN", "1:33+3 bad-number")]
    [InlineData("scpi-tcp a:1 ask X in bar begins 20 bar ends 20 bar", "1:41+4 clause-conflict")]
    [InlineData("scpi-tcp a:1 ask X in bar begins 60 bar full 50 bar", "1:41+4 clause-conflict")]
    [InlineData("scpi-serial ttyUSB0 9601x ask X in bar", "1:13+7 bad-place-of-device|1:21+5 unknown-clause")]
    [InlineData("scpi-serial /dev/ttyS0 100 9q9 ask X in bar", "1:24+3 bad-serial-line|1:28+3 bad-serial-line")]
    [InlineData("modbus-tcp a:502 in bar", "1:1+10 missing-clause|1:1+10 missing-clause")]
    [InlineData("modbus-tcp a:502 input 30001 as int16 in bar", "1:24+5 bad-register")]
    [InlineData("modbus-tcp a:502 input number 40001 as int16 in bar", "1:31+5 bad-register")]
    [InlineData("modbus-tcp a:502 input address 65535 as int32 in bar", "1:32+5 bad-register")]
    [InlineData("modbus-tcp a:502 input address 1 holding address 1 as int16 in bar", "1:34+7 clause-conflict")]
    [InlineData("modbus-tcp a:502 id 256 input address 1 as int16 words low-first in bar", "1:21+3 out-of-range|1:50+5 clause-conflict")]
    [InlineData("csv-folder /srv in bar", "1:1+10 missing-clause")]
    [InlineData("csv-folder /srv holds photographs in bar", "1:23+11 clause-conflict")]
    public void Every_mistake_is_shown_at_its_place(string text, string marks) =>
        Assert.Equal(marks.Split('|').Order(StringComparer.Ordinal), Mistakes(text).Select(m => m.At()).Order(StringComparer.Ordinal));

    [Fact]
    public void Every_code_has_its_page()
    {
        foreach (var code in ConnectionCodes.All)
            Assert.StartsWith($"# {code}\n", File.ReadAllText(Path.Combine(Checkout.Root, "docs", "reference", "mistakes", code + ".md")), StringComparison.Ordinal);
    }

    [Fact]
    public void The_samples_of_the_reference_page_are_read()
    {
        var page = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "reference", "instrument-connections.md"));
        var samples = page.Split("```text\n").Skip(1).Select(b => b[..b.IndexOf("```", StringComparison.Ordinal)]).ToList();
        Assert.True(samples.Count > 5);
        Assert.All(samples, s => Assert.IsType<ConnectionAnswer.Read>(ConnectionText.Read("page", s)));
    }

    [Fact]
    public void Scraps_of_connections_never_throw() => Gen.OneOf("simulated", "scpi-tcp", "modbus-rtu", "csv-folder", "a:1", "/dev/x", "9600", "8n1", "ask", "\"", "\"X\"", "in", "bar", "every", "20", "ms", "20 ms", "input", "number", "30001", "as", "int16", "float32", "words", "low-first", "id", "#", "\n", "\0", "é", "begins", "1e999", "-", "[", "]:", ":", "holds", "peaks", "\ud800")
        .Array[0, 24].ForAll(words =>
        {
            var text = string.Join(' ', words);
            if (ConnectionText.Read("f", text) is ConnectionAnswer.Refused refused)
                Assert.All(refused.Mistakes, m => Assert.True(m.At is { Line: >= 1, Column: >= 1 } && m.What.Length > 0 && m.Mend.Length > 0));
        }, iter: 20_000);

    [Fact]
    public void Any_connection_can_be_stored() => s_any.ForAll(connection =>
        Assert.Equal(connection, Assert.IsType<ConnectionAnswer.Read>(ConnectionText.Read("f", ConnectionText.Write(connection))).Connection), iter: 5_000);

    private static readonly Gen<Signal> s_signal = Gen.Select(Gen.Enum<ReadingUnit>(), Gen.Double[1e-6, 1e6], Gen.Double[-100, 100], Gen.Int[0, 100_000], Gen.Double[2, 900]).Select((unit, factor, offset, lag, begins) => new Signal
    {
        Unit = unit,
        Factor = factor,
        Offset = offset,
        Lag = lag == 0 ? null : TimeSpan.FromMicroseconds(lag),
        Begins = Pressure.FromBar(begins),
        Ends = Pressure.FromBar(0.51 * begins),
        Full = lag % 2 == 0 ? null : Pressure.FromPascals(1.5e5 * begins),
    });

    private static readonly Gen<string> s_words = Gen.Char[" ~"].Array[1, 40].Select(c => new string(c));

    private static readonly Gen<Connection> s_any = Gen.Select(s_signal, s_words, Gen.Int[1, 65_534], Gen.Enum<SerialFrame>(), Gen.Enum<RegisterForm>(), Gen.Int[0, 5]).Select((signal, words, number, frame, form, kind) =>
    {
        var polling = new Polling(TimeSpan.FromMilliseconds(1 + (number % 10_000)), TimeSpan.FromMilliseconds(10 + (number % 30_000 * 0.5)));
        Wire tcp = new Wire.Tcp(number % 2 == 0 ? "fd00::5" : "meter-1.local", number);
        Wire serial = new Wire.Serial("/dev/" + words, 300 + number, frame);
        var read = new RegisterRead((byte)number, (RegisterTable)(number % 2), (ushort)number, form, form > RegisterForm.Int16 && number % 3 == 0);
        return kind switch
        {
            0 => (Connection)new Connection.Polled(tcp, new Dialogue.Line(words, LineEnd.CrLf), polling, signal),
            1 => new Connection.Polled(serial, new Dialogue.Line(words, LineEnd.Cr), polling, signal),
            2 => new Connection.Polled(tcp, new Dialogue.Registers(ModbusFraming.Tcp, read), polling, signal),
            3 => new Connection.Polled(serial, new Dialogue.Registers(ModbusFraming.Rtu, read), polling, signal),
            4 => new Connection.Folder("/" + words, words, FolderHolds.Peaks, signal),
            _ => new Connection.Polled(tcp, new Dialogue.Registers(ModbusFraming.Rtu, read), polling, signal),
        };
    });

    private static IReadOnlyList<Metrology.Input.Mistake> Mistakes(string text) => Assert.IsType<ConnectionAnswer.Refused>(ConnectionText.Read("bench", text)).Mistakes;
}
