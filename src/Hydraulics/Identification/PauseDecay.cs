using System.Runtime.CompilerServices;
using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Hydraulics.Identification;

/// <summary>Pressure in a pause, motor standing: leaks against the compliance of oil, frame and sticking ram, and oil that cools down from being compressed.</summary>
internal sealed class PauseDecay(StrokeParameters tool, OilTable oil, double volumeCubicMetres, double[] seconds)
{
    /// <summary>Times from the beginning of the pause, rising.</summary>
    public double[] Seconds => seconds;

    /// <param name="state">The tool as tried.</param>
    /// <param name="startPascals">Pressure at the first time.</param>
    /// <param name="coolPascals">What cooling takes in all, and with which time constant.</param>
    /// <param name="coolSeconds">Time constant of the cooling.</param>
    /// <param name="pascals">Filled with the pressure at each time.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Run(in ToolState state, double startPascals, double coolPascals, double coolSeconds, Span<double> pascals)
    {
        var stick = new RamStick(tool, oil, state, volumeCubicMetres, startPascals);
        var standing = state.Standing(tool.Inlet);
        var (pressure, at) = (startPascals, seconds[0]);
        pascals[0] = pressure;
        for (var i = 1; i < seconds.Length; i++)
        {
            var steps = Math.Max(1, (int)Math.Ceiling((seconds[i] - at) / 0.026));
            var h = (seconds[i] - at) / steps;
            for (var k = 0; k < steps; k++)
            {
                var cool = coolPascals / coolSeconds * Math.Exp(-(at - seconds[0] + 0.5 * h) / coolSeconds);
                var first = Rate(stick, state, standing, pressure);
                var half = Rate(stick, state, standing, Math.Max(0, pressure + 0.5 * h * (first - cool)));
                pressure = Math.Max(0, pressure + h * (half - cool));
                stick.At(pressure);
                at += h;
            }

            pascals[i] = pressure;
        }
    }

    private static double Rate(in RamStick stick, in ToolState state, double standing, double pascals) =>
        -(standing * state.Driving(pascals) + state.WeepFlow(pascals)) / stick.Compliance(pascals, rising: false);
}
