using System.Collections.Immutable;
using Ramwright.Hydraulics.Phases;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Charts;
using Ramwright.Paper.Drawing;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find.Recordings;

/// <summary>A recorded stroke drawn for the screen: pressure, current, phases, fitted curve.</summary>
public static class StrokePicture
{
    public static string Of(StrokeRead read, ServiceModel model, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(read);
        var recording = read.Recording;
        return Svg.Write(StrokeChart.Of(new()
        {
            Tool = model.Tool.Name,
            Rows = [.. recording.Seconds.Select((s, i) => (s, Pressure.FromPascals(Finite(recording.Pascals, i)), Finite(recording.Amperes, i)))],
            Moments = [.. Moments(read.Parts).Select(m => (m.Seconds, Words(m.Kind)))],
            Window = model.Limits.Pressure,
            Units = units,
        }));
    }

    private static double Finite(ImmutableArray<double>? signal, int at) => signal is { } s && double.IsFinite(s[at]) ? s[at] : 0;

    private static ImmutableArray<PhaseEvent> Moments(Segmentation parts) => parts switch
    {
        Segmentation.WholeStroke { Segments: var s } => s.Events,
        Segmentation.HalfStroke { Segments: var s } => s.Events,
        _ => [],
    };

    private static string Words(PhaseEventKind kind) => kind switch
    {
        PhaseEventKind.TriggerPulled => "trigger pulled",
        PhaseEventKind.LoadTouched => "load touched",
        PhaseEventKind.DiesClosed => "dies closed",
        PhaseEventKind.TriggerReleased => "trigger let go",
        PhaseEventKind.TriggerPulledAgain => "pulled again",
        PhaseEventKind.ReliefOpened => "relief opens",
        PhaseEventKind.MotorOff => "motor off",
        PhaseEventKind.ReliefClosed => "relief closes",
        _ => "ram home",
    };
}
