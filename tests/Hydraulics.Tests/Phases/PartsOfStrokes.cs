using System.Collections.Immutable;
using Ramwright.Hydraulics.Phases;
using Ramwright.Hydraulics.Recordings;
using Ramwright.Hydraulics.Tests.Recordings;

namespace Ramwright.Hydraulics.Tests.Phases;

/// <summary>Recordings that hold less, or more, than a stroke. Rows from healthy-hold (trigger 0.2502, dies 4.3276, pause 4.504 to 9.504, relief 9.6456, motor off 9.6956 s).</summary>
public sealed class PartsOfStrokes
{
    private static readonly Recording Whole = Truth.Of("healthy-hold").Recording;

    [Theory]
    [InlineData(0, 2.0)] // in the advance
    [InlineData(0, 4.45)] // in the build
    [InlineData(0, 9.6)] // in the second build
    public void A_recording_that_ends_while_the_motor_runs_lacks_its_end(double from, double to) =>
        Assert.Equal(MissingPart.End, Assert.IsType<Segmentation.HalfStroke>(StrokeParting.Of(Cut(Whole, from, to))).Missing);

    [Theory]
    [InlineData(1.0, 10.6)] // in the advance
    [InlineData(4.4, 10.6)] // in the build
    public void A_recording_that_begins_while_the_motor_runs_lacks_its_beginning(double from, double to)
    {
        var half = Assert.IsType<Segmentation.HalfStroke>(StrokeParting.Of(Cut(Whole, from, to)));
        Assert.Equal(MissingPart.Beginning, half.Missing);
        Assert.Null(half.Segments.Standstill);
        Assert.Null(half.Segments.First(PhaseEventKind.TriggerPulled));
        Assert.Equal(9.6456, half.Segments.First(PhaseEventKind.ReliefOpened)!.Seconds, 0.004);
        Assert.Contains(half.Segments.Notes, n => n.Kind == PhaseNoteKind.NoStandstill);
    }

    [Fact]
    public void A_recording_of_standstill_holds_no_stroke()
    {
        Assert.IsType<Segmentation.NoStroke>(StrokeParting.Of(Cut(Whole, 0, 0.24)));
        Assert.IsType<Segmentation.NoStroke>(StrokeParting.Of(Cut(Whole, 10.4, 10.6)));
        Assert.IsType<Segmentation.NoStroke>(StrokeParting.Of(Cut(Whole, 0, 0.24) with { Amperes = null }));
        Assert.IsType<Segmentation.NoStroke>(StrokeParting.Of(Cut(Whole, 0, 0.24) with { Pascals = null }));
        Assert.IsType<Segmentation.NoStroke>(StrokeParting.Of(new Recording([0, 1], null, null)));
        Assert.IsType<Segmentation.NoStroke>(StrokeParting.Of(new Recording([.. Enumerable.Range(0, 100).Select(i => 0.001 * i)], [.. Enumerable.Repeat(double.NaN, 100)], [.. Enumerable.Repeat(0.0, 100)])));
    }

    [Fact]
    public void A_second_stroke_is_left_out_and_noted()
    {
        var shift = Whole.Seconds[^1] + 0.001;
        var twice = new Recording([.. Whole.Seconds, .. Whole.Seconds.Select(s => s + shift)], [.. Whole.Pascals!.Value, .. Whole.Pascals!.Value], [.. Whole.Amperes!.Value, .. Whole.Amperes!.Value]);
        var segments = Assert.IsType<Segmentation.WholeStroke>(StrokeParting.Of(twice)).Segments;
        Assert.Equal(9.6456, segments.First(PhaseEventKind.ReliefOpened)!.Seconds, 0.004);
        Assert.Contains(segments.Notes, n => n is { Kind: PhaseNoteKind.AnotherStroke, Words: "another stroke begins at 10.87 s; it was left out" });
    }

    [Fact]
    public void Two_holds_and_three_builds_are_counted()
    {
        // The pause once more, 20 bar lower: rows 4.3 to 9.52 s, in which the trigger is let go at 420 bar and pulled again, stand twice.
        var (first, second) = (Cut(Whole, 0, 9.5195), Cut(Whole, 4.4, 10.7));
        var shift = first.Seconds[^1] + 0.001 - second.Seconds[0];
        var twice = new Recording([.. first.Seconds, .. second.Seconds.Select(s => s + shift)], [.. first.Pascals!.Value, .. second.Pascals!.Value], [.. first.Amperes!.Value, .. second.Amperes!.Value]);
        var segments = Assert.IsType<Segmentation.WholeStroke>(StrokeParting.Of(twice)).Segments;
        Assert.Equal(["Standstill 1", "Advance 1", "Build 1", "Hold 1", "Build 2", "Hold 2", "Build 3", "Opening 1", "Return 1", "Rest 1"], segments.Phases.Select(p => $"{p.Kind} {p.Nth}"));
        Assert.Equal(2, segments.Events.Count(e => e.Kind == PhaseEventKind.TriggerReleased));
    }

    [Fact]
    public void Missing_rows_around_the_relief_are_noted()
    {
        var seconds = Whole.Seconds;
        var clipped = Whole with { Pascals = [.. Whole.Pascals!.Value.Select(p => p > 600e5 ? double.NaN : p)] };
        var segments = Assert.IsType<Segmentation.WholeStroke>(StrokeParting.Of(clipped)).Segments;
        Assert.Equal(9.6456, segments.First(PhaseEventKind.ReliefOpened)!.Seconds, 0.01);
        Assert.Contains(segments.Notes, n => n.Kind == PhaseNoteKind.RowsMissing);
    }

    [Fact]
    public void Standstill_gives_zero_and_noise_of_both_sensors()
    {
        // Noise 1.2 bar and 0.25 A with steps of 0.25 bar and 0.1 A, zero not off (truth.json): steps add step²/12 to the variance.
        var standstill = Assert.IsType<Segmentation.WholeStroke>(StrokeParting.Of(Whole)).Segments.Standstill!;
        Assert.Equal(0, standstill.Pressure!.Zero, 4 * standstill.Pressure.ZeroUncertainty);
        Assert.InRange(standstill.Pressure.Noise, 1.0e5, 1.4e5);
        Assert.Equal(0, standstill.Current!.Zero, 4 * standstill.Current.ZeroUncertainty);
        Assert.InRange(standstill.Current.Noise, 0.21, 0.30);
    }

    [Fact]
    public void Uneven_rows_give_the_same_moments()
    {
        var random = new Random(7);
        var kept = Enumerable.Range(0, Whole.Seconds.Length).Where(_ => random.NextDouble() < 0.6).ToList();
        var uneven = new Recording([.. kept.Select(i => Whole.Seconds[i])], [.. kept.Select(i => Whole.Pascals!.Value[i])], [.. kept.Select(i => Whole.Amperes!.Value[i])]);
        var segments = Assert.IsType<Segmentation.WholeStroke>(StrokeParting.Of(uneven)).Segments;
        Assert.Equal(0.2502, segments.First(PhaseEventKind.TriggerPulled)!.Seconds, 0.003);
        Assert.Equal(4.3276, segments.First(PhaseEventKind.DiesClosed)!.Seconds, 0.015);
        Assert.Equal(9.6456, segments.First(PhaseEventKind.ReliefOpened)!.Seconds, 0.006);
    }

    private static Recording Cut(Recording recording, double from, double to)
    {
        var rows = Enumerable.Range(0, recording.Seconds.Length).Where(i => recording.Seconds[i] >= from && recording.Seconds[i] <= to).ToList();
        ImmutableArray<double>? Of(ImmutableArray<double>? signal) => signal is { } values ? [.. rows.Select(i => values[i])] : null;
        return new([.. rows.Select(i => recording.Seconds[i])], Of(recording.Pascals), Of(recording.Amperes));
    }
}
