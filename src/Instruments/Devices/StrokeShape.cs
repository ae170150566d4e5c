using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Devices;

/// <summary>A stroke's pressure for a live figure: the ram runs out at a few bar, then the pressure climbs faster and faster to its peak. A drawing, not a simulation of a tool.</summary>
internal static class StrokeShape
{
    private const double AdvanceShare = 0.04;
    private const int AdvanceSamples = 6;
    private const int ClimbSamples = 18;

    /// <summary>Times since the trigger and pressures; ends at the peak with the tool's rise.</summary>
    /// <remarks>The climb is a parabola, p = low + (peak − low)·(t/d)², whose end is as steep as the tool's rise when d = 2·(peak − low)/rise.</remarks>
    public static IEnumerable<(TimeSpan Since, Pressure Pressure)> Of(Pressure peak, SimulatedTool tool)
    {
        var whole = tool.StrokeTime.TotalSeconds;
        var low = AdvanceShare * peak.Bar;
        var climb = Math.Min(0.8 * whole, 2 * (peak.Bar - low) / tool.RiseBarPerSecond);
        for (var i = 1; i <= AdvanceSamples; i++)
            yield return (TimeSpan.FromSeconds((whole - climb) * i / AdvanceSamples), Pressure.FromBar(low));
        for (var i = 1; i <= ClimbSamples; i++)
        {
            var share = (double)i / ClimbSamples;
            yield return (TimeSpan.FromSeconds(whole - climb + (climb * share)), Pressure.FromBar(low + ((peak.Bar - low) * share * share)));
        }
    }
}
