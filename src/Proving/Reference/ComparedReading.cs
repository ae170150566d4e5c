using System.Collections.Immutable;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Uncertainty;

namespace Ramwright.Proving.Reference;

/// <summary>What a comparison at this visit makes of the readings of a tool's own sensor: its uncertainty is carried over into the proof.</summary>
/// <remarks>
/// Readings are corrected by the line through all comparisons. They may be off by the reference (which no repeating makes smaller), by the line and the scatter
/// about it, by half the hysteresis and half a step, both rectangular.
/// </remarks>
public static class ComparedReading
{
    /// <param name="points">Of a sensor found fit, in pascals.</param>
    /// <param name="task">What was known of the comparison.</param>
    /// <param name="figures">What it showed.</param>
    /// <param name="lowPascals">Lower limit to prove.</param>
    /// <param name="highPascals">Upper limit to prove.</param>
    public static CalibratedReading Of(ImmutableArray<SensorPoint> points, SensorTask task, SensorFigures figures, double lowPascals, double highPascals)
    {
        ArgumentNullException.ThrowIfNull(task);
        ArgumentNullException.ThrowIfNull(figures);
        var (low, high) = (points.Min(p => p.Reference), points.Max(p => p.Reference));
        if (CalibrationLine.Fit([.. points.Select(p => new CalibrationPoint(p.Reading, p.Reference))]) is not CalibrationAnswer.Fitted { Line: var line }
            || lowPascals < low || highPascals > high)
            return new CalibratedReading.BeyondPoints(low, high);
        var worst = new[] { lowPascals, highPascals }.Select(x => line.Correct(x)).MaxBy(c => c.OfNext)!;
        return new CalibratedReading.Known(
            [
                new("reference of the comparison", new Spread.Normal(task.ReferenceStandardPascals), Effect.Systematic),
                new("line of the comparison", new Spread.Normal(worst.OfNext), Effect.Systematic, line.DegreesOfFreedom),
                new("hysteresis", new Spread.Rectangular(0.5 * (figures.Hysteresis ?? 0)), Effect.Systematic),
                new("resolution", new Spread.Rectangular(0.5 * task.ResolutionPascals), Effect.Systematic),
            ],
            line, line.HalfWidthOf(worst), []);
    }
}
