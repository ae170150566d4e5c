namespace Ramwright.Records.Tests;

/// <summary>A clock that stands still until it is moved.</summary>
internal sealed class HandClock(DateTimeOffset now) : TimeProvider
{
    private DateTimeOffset now = now;

    public static HandClock AtNoon() => new(new(2026, 3, 2, 12, 0, 0, TimeSpan.Zero));

    public void Pass(TimeSpan time) => now += time;

    public override DateTimeOffset GetUtcNow() => now;
}
