using System.Globalization;
using Ramwright.Hydraulics.Phases;
using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Tests.Phases;

/// <summary>
/// Moments found in 400 simulated strokes against the events of their simulation: up to two faults each, connectors, pauses, 100 Hz to 20 kHz,
/// noise up to 3 bar and 0.5 A, zeros off by up to 8 bar and 1 A. By pressure and current, and by each alone.
/// </summary>
public sealed class SimulatedStrokes
{
    private enum Seen { Both, PressureAlone, CurrentAlone }

    [Fact]
    public void Moments_are_found_in_four_hundred_strokes_with_faults_and_noise()
    {
        var (wrong, alone) = (Enum.GetValues<Seen>().ToDictionary(s => s, _ => new List<string>()), new List<string>());
        foreach (var drawn in DrawnStroke.First(400))
        {
            foreach (var seen in wrong.Keys)
            {
                if (Wrong(drawn, seen) is not { } what)
                    continue;
                (seen == Seen.PressureAlone && drawn.HasConnector ? alone : wrong[seen]).Add($"{drawn.Words}: {what}");
            }
        }

        Few(wrong[Seen.Both], 2);
        Few(wrong[Seen.CurrentAlone], 4);
        Few(wrong[Seen.PressureAlone], 2);
        Few(alone, 8); // of some 100: where a connector's climb has flattened out, pressure alone hardly tells that a motor stops
    }

    /// <summary>What is wrong in a stroke, or null.</summary>
    private static string? Wrong(DrawnStroke drawn, Seen seen)
    {
        var answer = StrokeParting.Of(seen switch
        {
            Seen.PressureAlone => drawn.Recording with { Amperes = null },
            Seen.CurrentAlone => drawn.Recording with { Pascals = null },
            _ => drawn.Recording,
        });
        var givenUp = drawn.Stroke.End == StrokeEnd.GivenUp;
        var segments = answer switch
        {
            Segmentation.WholeStroke whole => whole.Segments,
            Segmentation.HalfStroke { Missing: MissingPart.End } half when givenUp && seen == Seen.PressureAlone => half.Segments, // a motor that stops is not seen
            _ => null,
        };
        if (segments is null)
            return answer.GetType().Name;
        if (segments.Phases[0].FromSeconds != drawn.Recording.Seconds[0] || segments.Phases[^1].ToSeconds != drawn.Recording.Seconds[^1] || segments.Phases.Zip(segments.Phases.Skip(1)).Any(p => p.First.ToSeconds != p.Second.FromSeconds))
            return "the phases leave a hole";
        var row = 1 / drawn.RowsPerSecond;
        var motor = seen == Seen.PressureAlone ? 0.1 : 0.003 + (1.5 * row);
        return Off(StrokeEventKind.TriggerPulled, PhaseEventKind.TriggerPulled, motor)
            ?? (givenUp && seen != Seen.Both ? null : Off(StrokeEventKind.TriggerReleased, PhaseEventKind.TriggerReleased, motor))
            ?? (seen == Seen.PressureAlone ? null : Off(givenUp ? StrokeEventKind.GivenUp : StrokeEventKind.MotorSwitchedOff, PhaseEventKind.MotorOff, motor))
            ?? (seen == Seen.CurrentAlone ? null : Off(StrokeEventKind.DiesClosed, PhaseEventKind.DiesClosed, 0.02 + (2 * row)))
            ?? Off(StrokeEventKind.ReliefOpened, PhaseEventKind.ReliefOpened, seen == Seen.CurrentAlone ? 0.05 : 0.004 + (1.5 * row));

        string? Off(StrokeEventKind happened, PhaseEventKind kind, double within)
        {
            var (truth, found) = (drawn.Stroke.First(happened)?.Seconds, segments.First(kind)?.Seconds);
            if (givenUp && seen == Seen.PressureAlone && kind == PhaseEventKind.DiesClosed)
                return null; // nothing but the current shows that a pump runs dry
            return (truth is null && found is null) || Math.Abs((truth ?? double.NaN) - (found ?? double.NaN)) <= within
                ? null
                : string.Create(CultureInfo.InvariantCulture, $"{kind} at {truth:0.0000} s, found at {found:0.0000} s");
        }
    }

    private static void Few(List<string> wrong, int most) => Assert.True(wrong.Count <= most, $"{wrong.Count} wrong, {most} allowed:\n{string.Join('\n', wrong)}");
}
