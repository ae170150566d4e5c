namespace Ramwright.Instruments.Tests.Live;

/// <summary>A clock that goes on by a millisecond whenever it is looked at, and never waits: samples lie evenly however busy the machine is.</summary>
internal sealed class StepClock : TimeProvider
{
    private long _ticks;

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override long GetTimestamp() => Interlocked.Add(ref _ticks, TimeSpan.TicksPerMillisecond);

    public override DateTimeOffset GetUtcNow() => new DateTimeOffset(2026, 3, 1, 8, 0, 0, TimeSpan.Zero).AddTicks(GetTimestamp());

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        if (dueTime >= TimeSpan.FromMilliseconds(100))
            return TimeProvider.System.CreateTimer(callback, state, TimeSpan.FromMilliseconds(50), period); // reaching for a lost device takes real time
        if (dueTime >= TimeSpan.Zero)
            ThreadPool.QueueUserWorkItem(_ => callback(state));
        return new Fired();
    }

    private sealed class Fired : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period) => true;

        public void Dispose()
        {
        }

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
