using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>The current that a sound drive would have drawn against the recorded pressure: stands in where none was recorded.</summary>
internal static class VirtualCurrent
{
    /// <summary>J·dω/dt = k·i − friction − filling·D·p/(2π·gear·efficiency), i = (U − k·ω)/R up to the limit. One value per row, A.</summary>
    public static double[] Of(StrokeSignal signal, StrokeMarks marks, StrokeParameters tool)
    {
        var amperes = new double[signal.Count];
        var parts = Math.Max(1, (int)Math.Ceiling(signal.Step / 1e-3));
        var h = signal.Step / parts;
        foreach (var pull in marks.Pulls)
        {
            var speed = 0.0;
            for (var row = pull.From; row <= pull.To && row < signal.Count; row++)
            {
                var load = tool.MotorFrictionNewtonMetres + tool.FilledCubicMetres * Math.Max(0, signal.Pascals![row]) / (2 * Math.PI * tool.GearRatio * tool.GearEfficiency);
                var drawn = 0.0;
                for (var part = 0; part < parts; part++)
                {
                    var i = Math.Clamp((tool.SupplyVolts - tool.TorqueConstant * speed) / tool.ResistanceOhms, 0, tool.CurrentLimitAmperes);
                    speed = Math.Max(0, speed + h / tool.Inertia * (tool.TorqueConstant * i - load));
                    drawn += i / parts;
                }

                amperes[row] = drawn;
            }
        }

        return amperes;
    }
}
