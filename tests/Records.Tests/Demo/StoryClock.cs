namespace Ramwright.Records.Tests.Demo;

/// <summary>The time at which a made-up story happens; it is moved from event to event.</summary>
internal sealed class StoryClock : TimeProvider
{
    public DateTimeOffset Now { get; set; }

    public override DateTimeOffset GetUtcNow() => Now;
}
