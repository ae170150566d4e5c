using System.Runtime.CompilerServices;
using Ramwright.Hydraulics.Strokes;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Devices;

/// <summary>How steeply the pressure of a tool rises before its relief opens, bar per second: what a slow device misses of a peak.</summary>
public static class ToolRise
{
    /// <summary>Where neither a recording nor the model tells it: that of the made-up Corrie 85, rounded up.</summary>
    public const double UsualBarPerSecond = 2_600;

    /// <summary>The most that a form takes, bar per second.</summary>
    public const double MostBarPerSecond = 1e6;

    private static readonly ConditionalWeakTable<ServiceModel, StrongBox<double>> Simulated = [];

    /// <summary>From a simulated stroke of the sound tool with its dies closing, where the model knows its behaviour; else the usual one.</summary>
    public static double BarPerSecond(ServiceModel model) => Simulated.GetValue(model, m => new(FromStroke(m) ?? UsualBarPerSecond)).Value;

    /// <summary>Whether the model itself tells it.</summary>
    public static bool IsKnown(ServiceModel model) => StrokeParametersReading.Of(model) is StrokeParametersReading.Ready;

    private static double? FromStroke(ServiceModel model)
    {
        if (StrokeParametersReading.Of(model) is not StrokeParametersReading.Ready ready)
            return null;
        var opened = StrokeSimulator.Run(ready.Tool, new StrokePlan { SamplesPerSecond = null }).Events.FirstOrDefault(e => e.Kind == StrokeEventKind.ReliefOpened);
        return opened is { PascalsPerSecond: > 0 and var rise } ? Math.Ceiling(rise / 1e5 / 10) * 10 : null;
    }
}
