using System.Diagnostics;
using System.Globalization;
using System.Net.Sockets;
using CsCheck;
using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Modbus;
using Ramwright.Instruments.Practice;
using Ramwright.Instruments.Tests.Live;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Tests.Practice;

/// <summary>A device that is acted for practice, read by our own clients and by pymodbus.</summary>
public sealed class PracticeDeviceTests
{
    private static readonly PracticeStrokes s_strokes = new(Pressure.FromBar(700), Pressure.FromBar(3), TimeSpan.FromSeconds(0.8), TimeSpan.FromSeconds(0.4), seed: 5);

    [Theory]
    [InlineData("scpi-tcp 127.0.0.1:PORT ask READ? in MPa")]
    [InlineData("modbus-tcp 127.0.0.1:PORT id 7 input address 4 as float32 words low-first in bar")]
    [InlineData("modbus-tcp 127.0.0.1:PORT holding address 4 as int16 times 0.1 plus -20 in bar")]
    public async Task It_is_read_by_the_bench(string connection)
    {
        var clock = new StepClock();
        await ServedAsync(connection, clock, async text =>
        {
            // Both sides live on one clock, a millisecond for each look: the peaks read are those drawn, but for what lies between two samples.
            var told = await Watching.UntilAsync(Watching.Device(text + " every 1 ms", clock: clock), 2);
            var peaks = told.Split(' ').Select(w => double.TryParse(w, CultureInfo.InvariantCulture, out var bar) ? bar : throw new FormatException(told)).ToList();
            Assert.Equal(s_strokes.PeakOf(1).Bar, peaks[0], 30.0);
            Assert.Equal(s_strokes.PeakOf(2).Bar, peaks[1], 30.0);
        });
    }

    [Fact]
    public async Task It_is_read_by_pymodbus() =>
        await ServedAsync("modbus-tcp 127.0.0.1:PORT id 7 input address 4 as float32 words low-first in bar", new StillClock(TimeSpan.FromSeconds(1.1999)), async text =>
        {
            var port = text.Split(':', ' ')[2];
            using var client = Process.Start(new ProcessStartInfo("/usr/bin/python3", [Path.Combine(Checkout.Root, "tests", "Instruments.Tests", "Live", "peers", "modbus_client.py"), port]) { RedirectStandardOutput = true, UseShellExecute = false })!;
            var said = (await client.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken)).Split('\n', StringSplitOptions.TrimEntries);
            Assert.Equal(s_strokes.At(1.1999).Bar, double.Parse(said[0], CultureInfo.InvariantCulture), 0.006);
            Assert.Equal(["2", "1", "3"], said[1..4]); // no such register, no such function, not so many registers
        });

    [Fact]
    public async Task Hostile_clients_are_left_and_others_served() =>
        await ServedAsync("scpi-tcp 127.0.0.1:PORT ask READ? in bar", new StillClock(TimeSpan.Zero), async text =>
        {
            var port = int.Parse(text.Split(':', ' ')[2], CultureInfo.InvariantCulture);
            var chance = new Random(7);
            for (var i = 0; i < 40; i++)
            {
                using var client = new TcpClient("127.0.0.1", port);
                var bytes = new byte[chance.Next(1, 2_000)];
                chance.NextBytes(bytes);
                await client.GetStream().WriteAsync(bytes, TestContext.Current.CancellationToken);
            }
            using var good = new TcpClient("127.0.0.1", port);
            await good.GetStream().WriteAsync("READ?\n"u8.ToArray(), TestContext.Current.CancellationToken);
            using var reader = new StreamReader(good.GetStream());
            Assert.Equal("0.000000E+00", await reader.ReadLineAsync(TestContext.Current.CancellationToken));
        });

    [Theory]
    [InlineData("modbus-rtu /dev/ttyS0 input address 0 as int16 in bar")]
    [InlineData("modbus-rtu 127.0.0.1:5020 input address 0 as int16 in bar")]
    [InlineData("scpi-tcp 127.0.0.1:5020 ask READ? in kN")]
    [InlineData("csv-folder /srv holds peaks in bar")]
    [InlineData("simulated")]
    public async Task What_cannot_be_acted_is_said(string connection) =>
        Assert.Equal(PracticeEnd.NotActed, await PracticeDevice.ServeAsync(Read(connection), s_strokes, TimeProvider.System, _ => { }, TestContext.Current.CancellationToken));

    [Fact]
    public async Task A_port_that_is_held_is_said() =>
        await ServedAsync("scpi-tcp 127.0.0.1:PORT ask READ? in bar", TimeProvider.System, async text =>
            Assert.Equal(PracticeEnd.CannotListen, await PracticeDevice.ServeAsync(Read(text), s_strokes, TimeProvider.System, _ => { }, TestContext.Current.CancellationToken)));

    [Fact]
    public void Registers_say_what_the_client_reads_from_them() =>
        Gen.Select(Gen.Enum<RegisterForm>(), Gen.Bool, Gen.Int[0, 30_000]).ForAll((form, low, number) =>
        {
            var read = new RegisterRead(1, RegisterTable.Input, 0, form, low && form > RegisterForm.Int16);
            Assert.Equal(number, ReadRequest.Number(read, ModbusSession.Registers(read, number)));
        });

    [Fact]
    public void A_stroke_climbs_to_its_peak_and_rests()
    {
        Assert.Equal(0, s_strokes.At(0.2).Bar);
        Assert.Equal(s_strokes.PeakOf(1).Bar, s_strokes.At(1.19999).Bar, 0.5);
        Assert.Equal(0, s_strokes.At(1.25).Bar);
        Assert.Equal(s_strokes.PeakOf(2).Bar, s_strokes.At(2.39999).Bar, 0.5);
    }

    private static Connection Read(string text) => ((ConnectionAnswer.Read)ConnectionText.Read("test", text)).Connection;

    private static async Task ServedAsync(string connection, TimeProvider clock, Func<string, Task> use)
    {
        var text = connection.Replace("PORT", Peer.FreePort().ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);
        using var off = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var listening = new TaskCompletionSource();
        var serving = PracticeDevice.ServeAsync(Read(text), s_strokes, clock, _ => listening.SetResult(), off.Token);
        await Task.WhenAny(listening.Task, serving);
        await use(text);
        await off.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => serving);
    }

    /// <summary>A clock that stands: the start apart, each look finds the same moment.</summary>
    private sealed class StillClock(TimeSpan moment) : TimeProvider
    {
        private int _looks;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override long GetTimestamp() => Interlocked.Increment(ref _looks) == 1 ? 0 : moment.Ticks;
    }
}
