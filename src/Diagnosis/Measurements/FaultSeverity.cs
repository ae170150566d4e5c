using System.Collections.Immutable;
using Ramwright.Hydraulics.Strokes;

namespace Ramwright.Diagnosis.Measurements;

/// <summary>How bad a fault is when a tool is sent in for it: the stroke model of the tool with the fault in several severities, all alike likely.</summary>
/// <remarks>
/// Fault ids mean the same in every model. The ranges are invented, from judgement of what is noticed and what is still run; they
/// decide how sharply a measured value speaks, not which fault it speaks for.
/// </remarks>
internal static class FaultSeverity
{
    private static readonly double[] Levels = [0.1, 0.3, 0.5, 0.7, 0.9];

    private static readonly ImmutableDictionary<string, Func<StrokeParameters, double, StrokeParameters>> Known = new Dictionary<string, Func<StrokeParameters, double, StrokeParameters>>(StringComparer.Ordinal)
    {
        ["air-in-oil"] = (t, u) => t with { Oil = t.Oil with { AirShare = Log(u, 0.015, 0.08) }, Filling = t.Filling * Line(u, 0.97, 0.8) },
        ["low-fill"] = (t, u) => t with { Filling = t.Filling * Line(u, 0.85, 0.45) },
        ["delivery-check-leaks"] = (t, u) => t with { DeliveryLeak = Log(u, 3e-15, 6e-14) },
        ["inlet-check-leaks"] = (t, u) => t with { InletLeak = Log(u, 3e-15, 6e-14) },
        ["bypass-leaks"] = (t, u) => t with { BypassLeak = Log(u, 2.5e-16, 1.5e-14) },
        ["release-leaks"] = (t, u) => t with { BypassLeak = Log(u, 4e-16, 3e-14) },
        ["release-open"] = (t, u) => t with { BypassLeak = Log(u, 4e-16, 3e-14) },
        ["pump-worn"] = (t, u) => t with { PistonLeak = Log(u, 3e-15, 6e-14) },
        ["hose-leaks"] = (t, u) => t with { BypassLeak = Log(u, 2e-16, 5e-15) },
        ["relief-weeps"] = (t, u) => t with { WeepLeak = Log(u, 3e-15, 5e-14) },
        ["relief-seat-damaged"] = (t, u) => t with { BypassLeak = Log(u, 5e-16, 1e-14), ClosingRatio = Line(u, 0.05, 0.4), ReliefPascals = t.ReliefPascals * Line(u, 1, 0.9) },
        ["relief-low"] = (t, u) => t with { ReliefPascals = t.ReliefPascals * Line(u, 0.965, 0.75) },
        ["relief-high"] = (t, u) => t with { ReliefPascals = t.ReliefPascals * Line(u, 1.035, 1.15) },
        ["weak-drive"] = (t, u) => t with { ResistanceOhms = t.ResistanceOhms * Line(u, 1.5, 5), MotorFrictionNewtonMetres = t.MotorFrictionNewtonMetres * Line(u, 2, 8) },
        ["brushes-worn"] = (t, u) => t with { ResistanceOhms = t.ResistanceOhms * Line(u, 1.2, 3) },
        ["pack-worn"] = (t, u) => t with { ResistanceOhms = t.ResistanceOhms * Line(u, 1.3, 2.5), SupplyVolts = t.SupplyVolts * Line(u, 0.99, 0.9) },
        ["ram-binds"] = (t, u) => t with { DryFrictionNewtons = Line(u, 500, 2200) },
        ["seal-friction"] = (t, u) => t with { SealFrictionShare = Line(u, 0.03, 0.1) },
        ["spring-tired"] = (t, u) => t with { SpringPreloadNewtons = t.SpringPreloadNewtons * Line(u, 0.8, 0.3) },
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>The tool with the fault, mild to severe; none when the stroke model has no such fault.</summary>
    public static IEnumerable<StrokeParameters> Of(string fault, StrokeParameters tool) => Known.TryGetValue(fault, out var change) ? Levels.Select(u => change(tool, u)) : [];

    private static double Line(double level, double mild, double severe) => mild + level * (severe - mild);

    private static double Log(double level, double mild, double severe) => mild * Math.Pow(severe / mild, level);
}
