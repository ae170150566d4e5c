namespace Ramwright.Instruments.Tests.Live;

/// <summary>Registers read from pymodbus, a Modbus server of others, by TCP and over a serial cable made by socat.</summary>
public sealed class ModbusDeviceTests
{
    [Theory]
    [InlineData("input number 30001 as float32 in bar", "701.25 698.5 703")]
    [InlineData("input address 2 as float32 words low-first in bar", "701.25 698.5 703")]
    [InlineData("input number 30005 as int16 times 0.1 in bar", "701.2 698.5 703")]
    [InlineData("holding number 40011 as uint32 times 0.001 in kPa", "701.25 698.5 703")]
    public async Task Each_form_of_value_is_read(string value, string told)
    {
        var port = Peer.FreePort();
        using var peer = Peer.ModbusTcp(port);
        var words = await Watching.UntilAsync(Watching.Device($"modbus-tcp 127.0.0.1:{port} {value} every 1 ms within 10 s"), 3);
        Assert.Equal(told, words.Replace("Lost:NotReached Back ", "", StringComparison.Ordinal)); // until it listens
    }

    [Theory]
    [InlineData("id 1 input address 60 as uint16 in bar", "Exception")] // no such register
    [InlineData("id 9 input address 0 as float32 in bar", "Exception|Silent")] // no such device
    public async Task A_device_that_cannot_is_lost_with_its_reason(string value, string faults)
    {
        var port = Peer.FreePort();
        using var peer = Peer.ModbusTcp(port);
        var device = Watching.Device($"modbus-tcp 127.0.0.1:{port} {value} every 1 ms within 500 ms");
        for (var i = 0; i < 60; i++)
        {
            await foreach (var happened in device.WatchAsync(TestContext.Current.CancellationToken))
            {
                var lost = Assert.IsType<Ramwright.Instruments.Devices.PeakEvent.Lost>(happened);
                if (faults.Split('|').Contains(lost.Fault.ToString()))
                    return;
                break; // not listening yet
            }
            await Task.Delay(200, TestContext.Current.CancellationToken);
        }
        Assert.Fail("The fault was never told.");
    }

    [Fact]
    public async Task Frames_cross_a_serial_cable_and_a_pulled_one_is_told()
    {
        using var folder = new TemporaryFolder();
        var (here, there) = (folder.Name("here"), folder.Name("there"));
        var cable = await Peer.CableAsync(Peer.Pty(here), Peer.Pty(there), here, there);
        var peer = Peer.ModbusRtu(there);
        var pulled = false;
        try
        {
            var told = await Watching.UntilAsync(Watching.Device($"modbus-rtu {here} 19200 8n1 id 1 input address 0 as float32 in bar every 1 ms within 2 s"), 3, async word =>
            {
                if (word == "698.5")
                {
                    cable.Dispose();
                    pulled = true;
                }
                if (word.StartsWith("Lost:", StringComparison.Ordinal) && pulled)
                {
                    peer.Dispose();
                    cable = await Peer.CableAsync(Peer.Pty(here), Peer.Pty(there), here, there);
                    peer = Peer.ModbusRtu(there);
                }
            });
            Assert.Matches("^(Lost:Silent Back )?701.25 698.5 Lost:(Closed|Silent|NotReached) Back 701.25$", told); // the peer begins anew
        }
        finally
        {
            peer.Dispose();
            cable.Dispose();
        }
    }
}
