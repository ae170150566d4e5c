using Ramwright.Records.Events;
using Ramwright.Records.Wire;

namespace Ramwright.Records.Tests.Wire;

/// <summary>
/// <c>Stored/events.txt</c> holds a text of every kind as a ledger somewhere holds it: <c>NAME TEXT</c>, one a line. A line is never changed.
/// A kind that changes gets a new version and a new line; this test then shows that the old line is still read.
/// </summary>
public sealed class StoredNamesTests
{
    private static readonly string[] Lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Wire", "Stored", "events.txt"));

    [Fact]
    public void Every_kind_of_event_is_written_as_it_always_was()
    {
        string[] written = [.. EventSamples.All().Select(e => $"{EventNames.Of(e.GetType())} {WireJson.Write(e)}")];
        File.WriteAllLines(Path.Combine(AppContext.BaseDirectory, "Wire", "Stored", "events.written.txt"), written); // to look at, and to take a new line from
        Assert.Equal(Lines, written, StringComparer.Ordinal);
    }

    [Fact]
    public void Every_stored_text_is_read_and_says_the_same_again() => Assert.All(Lines, line =>
    {
        var (name, body) = (line[..line.IndexOf(' ', StringComparison.Ordinal)], line[(line.IndexOf(' ', StringComparison.Ordinal) + 1)..]);
        Assert.Equal(body, WireJson.Write(WireJson.Read<object>(name, body)));
    });

    [Fact]
    public void Every_name_has_a_stored_text_and_every_event_a_name()
    {
        Assert.Equal(EventNames.All, Lines.Select(l => l.Split(' ')[0]).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        var types = typeof(JobEvent).Assembly.GetTypes().Where(t => t is { IsAbstract: false } && (t.IsSubclassOf(typeof(JobEvent)) || t.IsSubclassOf(typeof(HouseEvent))));
        Assert.All(types, type => Assert.Matches("^[a-z]+(-[a-z]+)*/[1-9]$", EventNames.Of(type)));
    }

    [Theory]
    [InlineData("run-taken/1", """{"series":1,"run":2,"peak":"high","device":"PG-1"}""")]
    [InlineData("run-taken/1", """{"series":1,"run":2,"peak":7e7,"device":"not an id"}""")]
    [InlineData("run-taken/1", """{"series":1,"run":2,"peak":7e7,"device":null}""")]
    [InlineData("run-taken/1", "null")]
    [InlineData("run-taken/1", "")]
    [InlineData("run-taken/2", """{"series":1,"run":2,"peak":7e7,"device":"PG-1"}""")]
    public void A_text_that_is_not_what_its_name_promises_is_refused(string name, string body) =>
        Assert.Equal(name, Assert.Throws<UnreadableEventException>(() => WireJson.Read<JobEvent>(name, body)).Name);

    [Fact]
    public void A_house_event_is_not_read_as_a_jobs() =>
        Assert.Throws<UnreadableEventException>(() => WireJson.Read<JobEvent>("lot-opened/1", Lines.Single(l => l.StartsWith("lot-opened/1", StringComparison.Ordinal))["lot-opened/1 ".Length..]));

    [Theory]
    [InlineData("2026-03-02T13:15:00+01:00", "2026-03-02T12:15:00.0000000Z")]
    [InlineData("2026-03-02T00:30:00.1234567+05:30", "2026-03-01T19:00:00.1234567Z")]
    public void An_instant_is_stored_in_UTC_as_text_that_sorts_as_time_does(string given, string stored)
    {
        var instant = DateTimeOffset.Parse(given, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(stored, UtcText.Write(instant));
        Assert.Equal((instant.UtcTicks, TimeSpan.Zero), (UtcText.Read(stored).UtcTicks, UtcText.Read(stored).Offset));
    }
}
