using Ramwright.Instruments.Devices;

namespace Ramwright.Instruments.Tests.Live;

/// <summary>A device that answers lines, and what may go wrong with it. Its strokes: 701.25, 698.5, 703, 699.75, 250 (short), 700.5 bar, each 30 questions at rest and 40 of climb.</summary>
public sealed class LineDeviceTests
{
    [Theory]
    [InlineData("none")]
    [InlineData("crlf")]
    [InlineData("echo")]
    public async Task Each_stroke_is_one_run_and_a_short_one_is_told(string manner)
    {
        var port = Peer.FreePort();
        using var peer = await Peer.LineAsync(port, manner);
        Assert.Equal("701.25 698.5 703 699.75 NotTaken:ShortOfFull 700.5", await Watching.UntilAsync(Watching.Device(Text(port)), 5));
    }

    // Question 60 lies on the climb of the first stroke at 525 bar, question 75 in the rest behind it.
    [Theory]
    [InlineData("nan", 60, "701.25 698.5 703")] // one value is missing on the climb, far from the peak
    [InlineData("absurd", 60, "701.25 698.5 703")]
    [InlineData("text", 60, "701.25 698.5 703")]
    [InlineData("close", 60, "NotTaken:Interrupted Lost:Closed Back NotTaken:BeginningNotSeen 698.5 703 699.75")]
    [InlineData("half", 60, "NotTaken:Interrupted Lost:Closed Back NotTaken:BeginningNotSeen 698.5 703 699.75")]
    [InlineData("silent", 60, "NotTaken:Interrupted Lost:Silent Back NotTaken:BeginningNotSeen 698.5 703 699.75")]
    [InlineData("close", 90, "701.25 Lost:Closed Back 698.5 703")]
    [InlineData("half", 90, "701.25 Lost:Closed Back 698.5 703")]
    public async Task What_goes_wrong_costs_at_most_the_run_under_way(string fault, int at, string told)
    {
        var port = Peer.FreePort();
        using var peer = await Peer.LineAsync(port, fault, at);
        Assert.Equal(told, await Watching.UntilAsync(Watching.Device(Text(port, fault == "silent" ? "1 s" : "10 s")), 3));
    }

    [Fact]
    public async Task A_device_that_starts_again_is_found_again_and_runs_taken_stay()
    {
        var port = Peer.FreePort();
        var peer = await Peer.LineAsync(port);
        try
        {
            Assert.Equal("701.25 698.5 Lost:Closed Back 699.75 NotTaken:ShortOfFull 700.5", await Watching.UntilAsync(Watching.Device(Text(port)), 4, async word =>
            {
                if (word == "698.5")
                    peer.Dispose();
                if (word == "Lost:Closed")
                    peer = await Peer.LineAsync(port, first: 3);
            }));
        }
        finally
        {
            peer.Dispose();
        }
    }

    [Fact]
    public async Task A_device_that_is_not_there_yet_is_waited_for()
    {
        var port = Peer.FreePort();
        Peer? peer = null;
        try
        {
            Assert.Equal("Lost:NotReached Back 701.25", await Watching.UntilAsync(Watching.Device(Text(port)), 1, async word => peer ??= await Peer.LineAsync(port)));
        }
        finally
        {
            peer?.Dispose();
        }
    }

    [Fact]
    public async Task Runs_go_on_from_those_taken_before()
    {
        var port = Peer.FreePort();
        using var peer = await Peer.LineAsync(port);
        var reading = await Watching.Device(Text(port), new() { RunsBefore = 7 }).RunAsync(TestContext.Current.CancellationToken);
        Assert.Equal(8, reading.Run);
        Assert.False(reading.OverRange);
        Assert.Equal(701.25, reading.Estimate!.Highest.Bar, 1e-6);
    }

    [Fact]
    public async Task Serial_lines_are_read_and_a_pulled_cable_is_told()
    {
        using var folder = new TemporaryFolder();
        var (port, path) = (Peer.FreePort(), folder.Name("tty"));
        using var peer = await Peer.LineAsync(port);
        var cable = await Peer.CableAsync(Peer.Pty(path), $"TCP:127.0.0.1:{port}", path);
        try
        {
            var told = await Watching.UntilAsync(Watching.Device($"scpi-serial {path} 115200 8n1 ask READ? in bar every 1 ms within 2 s"), 3, async word =>
            {
                if (word == "698.5")
                    cable.Dispose();
                if (word.StartsWith("Lost:", StringComparison.Ordinal))
                    cable = await Peer.CableAsync(Peer.Pty(path), $"TCP:127.0.0.1:{port}", path);
            });
            Assert.Matches("^701.25 698.5 Lost:(Closed|Silent) Back 703$", told);
        }
        finally
        {
            cable.Dispose();
        }
    }

    [Fact]
    public async Task Watching_shows_the_climb_and_can_be_called_off()
    {
        var port = Peer.FreePort();
        using var peer = await Peer.LineAsync(port);
        var rising = new List<double>();
        await foreach (var happened in Watching.Device(Text(port)).WatchAsync(TestContext.Current.CancellationToken))
        {
            if (happened is PeakEvent.Rising r)
                rising.Add(r.Pressure.Bar);
            if (happened is PeakEvent.Peaked)
                break;
        }
        Assert.True(rising.Count > 5 && rising.SequenceEqual(rising.Order()));
        using var off = new CancellationTokenSource(TimeSpan.FromMilliseconds(50));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Watching.Device("scpi-tcp 127.0.0.1:9 ask READ? in bar").RunAsync(off.Token));
    }

    private static string Text(int port, string within = "10 s") => $"scpi-tcp 127.0.0.1:{port} ask READ? in bar every 1 ms within {within}";
}
