using System.Runtime.CompilerServices;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Devices;

/// <summary>A device that exists in the program alone, for practice and demonstration: a hidden tool, a seed, the same readings every time.</summary>
/// <remarks>
/// Reading = true peak + offset − rise × (time constant + a part of the sampling interval), rounded to the resolution, held at the ends of the
/// range. On a steady ramp a first-order lag stays rise × time constant behind, and the highest sample comes up to one interval early.
/// </remarks>
public sealed class SimulatedDevice : IPeakDevice, IDisposable
{
    private const int ScatterDraw = 0;
    private const int SamplingDraw = 8;
    private readonly SimulatedTool _tool;
    private readonly int _seed;
    private readonly TimeProvider _clock;
    private readonly double _pace;
    private readonly SemaphoreSlim _atWork = new(1, 1);
    private readonly Lock _screwLock = new();
    private int _runs;
    private DateTimeOffset _readyAt = DateTimeOffset.MinValue;
    private Angle _screw;
    private Angle _poppet;

    /// <param name="tool">What the tool truly does.</param>
    /// <param name="description">What the device can do.</param>
    /// <param name="seed">Same seed, same readings.</param>
    /// <param name="pace">How many times faster than life time passes; 0.01 or more, infinity for no waiting at all.</param>
    /// <param name="runsBefore">Full runs already made: run k reads the same whether the device was started anew in between or not.</param>
    /// <param name="screw">Position of the screw, counted from as-found. After a restart, turn the recorded turns again instead when the tool has backlash.</param>
    public SimulatedDevice(SimulatedTool tool, DeviceDescription description, int seed, TimeProvider clock, double pace = 1, int runsBefore = 0, Angle screw = default)
    {
        if (pace is not >= 0.01)
            throw new ArgumentOutOfRangeException(nameof(pace), pace, "A pace is 0.01 or more.");
        ArgumentOutOfRangeException.ThrowIfNegative(runsBefore);
        if (tool.RiseBarPerSecond is not (> 0 and < 1e9) || tool.Scatter.Pascals < 0 || tool.Backlash.Radians < 0 || tool.StrokeTime < TimeSpan.Zero || tool.Rest < TimeSpan.Zero)
            throw new ArgumentOutOfRangeException(nameof(tool), tool, "Rise is above zero; scatter, backlash, stroke time and rest are zero or more.");
        (_tool, Description, _seed, _clock, _pace, _runs, _screw, _poppet) = (tool, description, seed, clock, pace, runsBefore, screw, screw);
    }

    public DeviceDescription Description { get; }

    /// <summary>Full runs made so far.</summary>
    public int Runs => _runs;

    /// <summary>Position of the screw, counted from as-found; clockwise is positive.</summary>
    public Angle Screw { get { lock (_screwLock) return _screw; } }

    /// <summary>A made-up fast peak-hold gauge: 0 to 1000 bar in steps of 0.1 bar, calibrated 90 days ago for a year. All values are invented.</summary>
    public static DeviceDescription MadeUpGauge(DateOnly today) => new()
    {
        Kind = DeviceKind.Simulated,
        Name = "practice gauge",
        Maker = "made up",
        Serial = "PRACTICE-1",
        Range = new(Pressure.FromBar(0), Pressure.FromBar(1000)),
        Resolution = Pressure.FromBar(0.1),
        TimeConstant = TimeSpan.FromMicroseconds(200),
        SamplingInterval = TimeSpan.FromMicroseconds(100),
        Calibration = new("practice only", today.AddDays(-90), today.AddDays(275), Pressure.FromBar(2)),
    };

    /// <summary>Turns the screw; clockwise is positive. What lies within the backlash moves nothing.</summary>
    public void Turn(Angle by)
    {
        lock (_screwLock)
        {
            _screw += by;
            var play = 0.5 * _tool.Backlash.Radians;
            _poppet = Angle.FromRadians(Math.Clamp(_poppet.Radians, _screw.Radians - play, _screw.Radians + play));
        }
    }

    public async Task<PeakReading> RunAsync(CancellationToken cancel = default)
    {
        await _atWork.WaitAsync(cancel);
        try
        {
            await WaitAsync(_readyAt - _clock.GetUtcNow(), cancel);
            await WaitAsync(Paced(_tool.StrokeTime), cancel);
            return Peak();
        }
        finally
        {
            _atWork.Release();
        }
    }

    public async IAsyncEnumerable<PeakEvent> WatchAsync([EnumeratorCancellation] CancellationToken cancel = default)
    {
        while (!cancel.IsCancellationRequested)
        {
            await _atWork.WaitAsync(cancel);
            try
            {
                await WaitAsync(_readyAt - _clock.GetUtcNow(), cancel);
                var before = TimeSpan.Zero;
                foreach (var (since, pressure) in StrokeShape.Of(TruePeak(_runs + 1), _tool))
                {
                    await WaitAsync(Paced(since - before), cancel);
                    before = since;
                    yield return new PeakEvent.Rising(_runs + 1, since, Shown(pressure.Bar).Pressure);
                }
                await WaitAsync(Paced(_tool.StrokeTime - before), cancel);
                yield return new PeakEvent.Peaked(Peak());
            }
            finally
            {
                _atWork.Release();
            }
            yield return new PeakEvent.Resting(Paced(_tool.Rest));
        }
    }

    public void Dispose() => _atWork.Dispose();

    private PeakReading Peak()
    {
        var run = ++_runs;
        var now = _clock.GetUtcNow();
        _readyAt = now + Paced(_tool.Rest);
        var late = Description.TimeConstant + (SeededNoise.Uniform(_seed, run, SamplingDraw) * Description.SamplingInterval);
        var (shown, over) = Shown(TruePeak(run).Bar + _tool.DeviceOffset.Bar - (_tool.RiseBarPerSecond * late.TotalSeconds));
        return new(run, shown, now, over);
    }

    private Pressure TruePeak(int run)
    {
        Angle poppet;
        lock (_screwLock)
            poppet = _poppet;
        var mean = _tool.AsFound.Bar + (_tool.BarPerTurn * poppet.Turns) + ((run - 1) * _tool.DriftPerRun.Bar);
        return Pressure.FromBar(Math.Max(0, mean + (_tool.Scatter.Bar * SeededNoise.Normal(_seed, run, ScatterDraw))));
    }

    private (Pressure Pressure, bool OverRange) Shown(double bar)
    {
        var step = Description.Resolution.Bar;
        var rounded = step > 0 ? Math.Round(bar / step) * step : bar;
        var (least, most) = (Description.Range.Min.Bar, Description.Range.Max.Bar);
        return (Pressure.FromBar(Math.Clamp(rounded, least, most)), rounded >= most);
    }

    private TimeSpan Paced(TimeSpan time) => time / _pace;

    private Task WaitAsync(TimeSpan time, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        return time > TimeSpan.Zero ? Task.Delay(time, _clock, cancel) : Task.CompletedTask;
    }
}
