using CsCheck;
using Ramwright.Instruments.Devices;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Tests.Devices;

/// <summary>The simulated device. Tools and devices are invented.</summary>
public sealed class SimulatedDeviceTests
{
    private static readonly SimulatedTool s_tool = new() { AsFound = Pressure.FromBar(700), BarPerTurn = 45, Scatter = Pressure.FromBar(3) };
    private static readonly DeviceDescription s_gauge = SimulatedDevice.MadeUpGauge(new(2026, 3, 1));

    [Fact]
    public async Task A_seed_gives_the_same_readings_also_after_a_restart()
    {
        var whole = await Runs(Device(seed: 7), 12);
        Assert.Equal(whole, await Runs(Device(seed: 7), 12));
        Assert.Equal(whole.Skip(5), await Runs(Device(seed: 7, runsBefore: 5), 7));
        Assert.NotEqual(whole, await Runs(Device(seed: 8), 12));
    }

    [Fact]
    public async Task Mean_and_scatter_are_those_of_the_hidden_tool()
    {
        // 4000 readings: the mean to 4 standard errors (0.2 bar), the standard deviation to 5 %.
        // Lag on a steady ramp: rise times time constant, and on average half a sampling interval: 9000 x (0.2 + 0.05) ms = 2.25 bar.
        var bars = await Runs(Device(seed: 1), 4_000);
        var mean = bars.Average();
        Assert.Equal(700 - 2.25, mean, 0.2);
        Assert.Equal(3.0, Math.Sqrt(bars.Sum(b => (b - mean) * (b - mean)) / (bars.Count - 1)), 0.15);
    }

    [Fact]
    public void No_reading_lies_further_below_its_peak_than_the_device_can_miss() =>
        Gen.Select(Gen.Int, Gen.Double[100, 20_000], Gen.Int[0, 5_000]).ForAll((seed, rise, run) =>
        {
            using var device = Device(seed, s_tool with { Scatter = Pressure.FromBar(0), RiseBarPerSecond = rise }, runsBefore: run);
            var reading = device.RunAsync(TestContext.Current.CancellationToken).GetAwaiter().GetResult();
            var missed = 700 - reading.Peak.Bar;
            Assert.InRange(missed, (rise * 200e-6) - 0.051, (rise * (200e-6 + 100e-6)) + 0.051);
        });

    [Fact]
    public async Task The_screw_moves_the_mean_by_its_gain_past_the_backlash()
    {
        var still = s_tool with { Scatter = Pressure.FromBar(0), Backlash = Angle.FromDegrees(30) };
        using var device = Device(1, still);
        var found = (await device.RunAsync(TestContext.Current.CancellationToken)).Peak.Bar;
        device.Turn(Angle.FromDegrees(195)); // takes up half the play, then half a turn
        Assert.Equal(found + 22.5, (await device.RunAsync(TestContext.Current.CancellationToken)).Peak.Bar, 1.1);
        device.Turn(Angle.FromDegrees(-30)); // back through all the play: nothing moves
        Assert.Equal(found + 22.5, (await device.RunAsync(TestContext.Current.CancellationToken)).Peak.Bar, 1.1);
        Assert.Equal(165, device.Screw.Degrees, 1e-9);
    }

    [Fact]
    public async Task A_reading_keeps_to_steps_and_range()
    {
        var coarse = s_gauge with { Resolution = Pressure.FromBar(5), Range = new(Pressure.FromBar(0), Pressure.FromBar(690)) };
        using var device = new SimulatedDevice(s_tool, coarse, 3, TimeProvider.System, double.PositiveInfinity);
        var over = await device.RunAsync(TestContext.Current.CancellationToken);
        Assert.Equal((690, true), (Math.Round(over.Peak.Bar, 6), over.OverRange));
        using var inside = new SimulatedDevice(s_tool with { AsFound = Pressure.FromBar(400) }, coarse, 3, TimeProvider.System, double.PositiveInfinity);
        Assert.All(await Runs(inside, 20), b => Assert.Equal(0, Math.IEEERemainder(b, 5), 1e-6));
    }

    [Fact]
    public async Task Watching_shows_the_rise_the_peak_and_the_rest_run_after_run()
    {
        using var watched = Device(seed: 7);
        var events = new List<PeakEvent>();
        await foreach (var happened in watched.WatchAsync(TestContext.Current.CancellationToken))
        {
            events.Add(happened);
            if (events.OfType<PeakEvent.Resting>().Count() == 3)
                break;
        }
        Assert.Equal(await Runs(Device(seed: 7), 3), events.OfType<PeakEvent.Peaked>().Select(p => Math.Round(p.Reading.Peak.Bar, 6)));
        var first = events.TakeWhile(e => e is PeakEvent.Rising).Cast<PeakEvent.Rising>().ToList();
        Assert.True(first.Count > 10 && first.Zip(first.Skip(1)).All(p => p.First.Pressure.Bar <= p.Second.Pressure.Bar && p.First.Since < p.Second.Since));
    }

    [Fact]
    public async Task Time_is_waited_by_the_clock_and_the_pace()
    {
        var clock = TimeProvider.System;
        using var device = new SimulatedDevice(s_tool with { StrokeTime = TimeSpan.FromSeconds(2), Rest = TimeSpan.FromSeconds(8) }, s_gauge, 1, clock, pace: 100);
        var start = clock.GetTimestamp();
        await device.RunAsync(TestContext.Current.CancellationToken);
        await device.RunAsync(TestContext.Current.CancellationToken); // 20 ms, 80 ms of rest, 20 ms
        Assert.InRange(clock.GetElapsedTime(start).TotalMilliseconds, 110, 5_000);
    }

    [Fact]
    public async Task A_run_that_is_called_off_is_not_counted()
    {
        using var slow = new SimulatedDevice(s_tool, s_gauge, 1, TimeProvider.System, pace: 1);
        using var off = new CancellationTokenSource(TimeSpan.FromMilliseconds(20));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => slow.RunAsync(off.Token));
        Assert.Equal(0, slow.Runs);
    }

    [Fact]
    public void A_calibration_counts_from_its_day_to_its_last()
    {
        var calibration = s_gauge.Calibration!;
        Assert.True(calibration.ValidOn(calibration.Date) && calibration.ValidOn(calibration.Due));
        Assert.False(calibration.ValidOn(calibration.Due.AddDays(1)) || calibration.ValidOn(calibration.Date.AddDays(-1)));
    }

    private static SimulatedDevice Device(int seed, SimulatedTool? tool = null, int runsBefore = 0) => new(tool ?? s_tool, s_gauge, seed, TimeProvider.System, double.PositiveInfinity, runsBefore);

    private static async Task<List<double>> Runs(SimulatedDevice device, int count)
    {
        var bars = new List<double>();
        for (var i = 0; i < count; i++)
            bars.Add(Math.Round((await device.RunAsync(TestContext.Current.CancellationToken)).Peak.Bar, 6));
        return bars;
    }
}
