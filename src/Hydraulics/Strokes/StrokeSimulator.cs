using Ramwright.Hydraulics.Integration;

namespace Ramwright.Hydraulics.Strokes;

/// <summary>Simulates a stroke: trigger, advance, build-up, relief, return.</summary>
public static class StrokeSimulator
{
    /// <summary>Relative accuracy of a step where none is given, a share: event times to some tenths of a millisecond, pressures to 0.1 bar.</summary>
    public const double UsualTolerance = 1e-4;

    private const int MostEvents = 2_000, MostSteps = 50_000;

    /// <summary>Simulates.</summary>
    /// <param name="tool">The tool; every figure is in its range.</param>
    /// <param name="plan">How it is used.</param>
    /// <param name="relative">Accuracy asked of each step as a share, 1e-12 to 1e-2; the absolute parts go with it.</param>
    public static Stroke Run(StrokeParameters tool, StrokePlan plan, double relative = UsualTolerance)
    {
        ArgumentNullException.ThrowIfNull(tool);
        ArgumentNullException.ThrowIfNull(plan);
        if (relative is not (>= 1e-12 and <= 1e-2))
            throw new ArgumentOutOfRangeException(nameof(relative), relative, "A relative accuracy lies between 1e-12 and 1e-2.");
        if (plan.SamplesPerSecond is { } rate and not (>= 10 and <= 100_000))
            throw new ArgumentOutOfRangeException(nameof(plan), rate, "10 to 100,000 samples per second are taken.");
        return new StrokeRun(tool, plan, relative, MostEvents, MostSteps).ToEnd();
    }

    /// <summary>Absolute tolerances by state at a relative one: 0.2 rad/s, 0.02 bar, 0.1 µm, 0.1 mm/s, 0.1 mm³, lift, reading at 1e-4.</summary>
    internal static StiffTolerance Tolerance(double relative, int mostSteps)
    {
        var scale = relative / UsualTolerance;
        return new(relative, [0.2 * scale, 2e3 * scale, 1e-7 * scale, 1e-4 * scale, 1e-10 * scale, 1e-3 * scale, 2e3 * scale], mostSteps);
    }
}
