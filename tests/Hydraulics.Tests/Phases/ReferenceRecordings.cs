using Ramwright.Hydraulics.Phases;
using Ramwright.Hydraulics.Tests.Recordings;

namespace Ramwright.Hydraulics.Tests.Phases;

/// <summary>Phases and moments of the seventeen invented recordings against what is known to have happened in them (Recordings/README.md).</summary>
public sealed class ReferenceRecordings
{
    public static TheoryData<string> Names => [.. Truth.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void Moments_are_found_where_they_happened(string name)
    {
        var truth = Truth.Of(name);
        var segments = Assert.IsType<Segmentation.WholeStroke>(StrokeParting.Of(truth.Recording)).Segments;
        Near(truth.At("t_start"), segments, PhaseEventKind.TriggerPulled, 0.002);
        Near(truth.At("t_close"), segments, PhaseEventKind.DiesClosed, 0.015);
        Near(truth.At("t_relief"), segments, PhaseEventKind.ReliefOpened, 0.004);
        Near(truth.At("t_motor_off"), segments, PhaseEventKind.MotorOff, 0.002);
        Near(truth.PauseFrom("pause1"), segments, PhaseEventKind.TriggerReleased, 0.002);
        Near(truth.PauseFrom("pause1") + 5, segments, PhaseEventKind.TriggerPulledAgain, 0.002);
        Assert.Equal(truth.HasConnector, segments.First(PhaseEventKind.LoadTouched) is not null);
    }

    private static void Near(double? truth, StrokeSegments segments, PhaseEventKind kind, double within)
    {
        var found = segments.First(kind);
        Assert.True(truth is null == found is null, $"{kind}: {truth} against {found?.Seconds}");
        if (truth is { } at && found is not null)
        {
            Assert.True(Math.Abs(found.Seconds - at) <= within, $"{kind}: {at:0.0000} s against {found.Seconds:0.0000} s");
            Assert.True(Math.Abs(found.Seconds - at) <= 1.5 * found.WithinSeconds, $"{kind}: {at:0.0000} s against {found.Seconds:0.0000} s, said to be within {found.WithinSeconds:0.0000} s");
        }
    }
}
