using System.Collections.Immutable;

namespace Ramwright.Metrology.Calibration;

/// <summary>One comparison of a sensor with a reference.</summary>
/// <param name="Level">Which level of pressure it belongs to, from 0 upwards.</param>
/// <param name="Reference">What the reference showed, in pascals.</param>
/// <param name="Reading">What the sensor showed, in pascals.</param>
/// <param name="Rising">Whether pressure was raised to it (or lowered).</param>
public readonly record struct SensorPoint(int Level, double Reference, double Reading, bool Rising);

/// <summary>What is known of the comparison and asked of the sensor; all in pascals.</summary>
public sealed record SensorTask
{
    /// <summary>The most that a reading may be off, above zero, in pascals.</summary>
    public required double AllowedPascals { get; init; }

    /// <summary>Standard uncertainty of the reference, zero or more, in pascals.</summary>
    public required double ReferenceStandardPascals { get; init; }

    /// <summary>Smallest step that the sensor shows, zero or more, in pascals.</summary>
    public double ResolutionPascals { get; init; }
}

/// <summary>What a comparison shows of a sensor, in pascals except the gain.</summary>
/// <param name="Zero">Reading at no pressure, by the line through all errors.</param>
/// <param name="Gain">Change of reading over change of pressure; 1 when right.</param>
/// <param name="NonLinearity">Largest distance of a level's mean error from that line.</param>
/// <param name="Hysteresis">Largest difference between falling and rising at a level; null when only one direction was taken.</param>
/// <param name="Repeatability">Standard deviation of repeats, pooled over levels and directions.</param>
/// <param name="Standard">Standard uncertainty of an error: reference, repeatability, hysteresis, resolution.</param>
/// <param name="WorstLevel">Level with the largest mean error.</param>
/// <param name="WorstError">That error, reading less reference.</param>
public sealed record SensorFigures(double Zero, double Gain, double NonLinearity, double? Hysteresis, double Repeatability, double Standard, int WorstLevel, double WorstError)
{
    /// <summary>Expanded uncertainty, k = 2, in pascals.</summary>
    public double Expanded => 2 * Standard;
}

/// <summary>Whether a sensor may be trusted.</summary>
public abstract record SensorAnswer
{
    private SensorAnswer() { }

    /// <summary>Even with the uncertainty added, no level is off by more than allowed.</summary>
    public sealed record Fit(SensorFigures Figures) : SensorAnswer;

    /// <summary>A level is off by more than allowed, even with the uncertainty taken off.</summary>
    public sealed record Unfit(SensorFigures Figures) : SensorAnswer;

    /// <summary>The uncertainty is too large to tell.</summary>
    public sealed record CannotTell(SensorFigures Figures) : SensorAnswer;

    /// <summary>Too little was taken: three levels at least, and each level twice or more in the same direction.</summary>
    /// <param name="Levels">Levels taken.</param>
    /// <param name="Fewest">Repeats in one direction, at the level with the fewest.</param>
    public sealed record TooFew(int Levels, int Fewest) : SensorAnswer;
}

/// <summary>Compares a replaced pressure sensor with a reference.</summary>
/// <remarks>
/// Errors are reading − reference, so that the reference need not stand at the same value twice. Contributions: hysteresis and resolution rectangular with
/// half their size (EURAMET cg-17, clause from memory); repeatability over the root of the comparisons at a level. The error itself is not corrected: it counts whole.
/// </remarks>
public static class SensorCheck
{
    private const int FewestLevels = 3;

    public static SensorAnswer Examine(ImmutableArray<SensorPoint> points, SensorTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        if (points.Any(p => !double.IsFinite(p.Reference) || !double.IsFinite(p.Reading)) || !(task.AllowedPascals > 0) || !(task.ReferenceStandardPascals >= 0) || !(task.ResolutionPascals >= 0))
            throw new ArgumentOutOfRangeException(nameof(points), "Finite readings, an allowed error above zero and uncertainties of zero or more are wanted.");
        var levels = points.GroupBy(p => p.Level).OrderBy(g => g.Key).Select(g => g.ToImmutableArray()).ToImmutableArray();
        var fewest = levels.Select(l => Math.Max(l.Count(p => p.Rising), l.Count(p => !p.Rising))).DefaultIfEmpty(0).Min();
        var line = LeastSquares.Fit([.. points.Select(p => new DoubleDouble[] { 1, p.Reference })], [.. points.Select(p => p.Reading - p.Reference)], []);
        if (levels.Length < FewestLevels || fewest < 2 || line is null)
            return new SensorAnswer.TooFew(levels.Length, fewest);
        var figures = FiguresOf(levels, fewest, line, task);
        var error = Math.Abs(figures.WorstError);
        return error + figures.Expanded <= task.AllowedPascals ? new SensorAnswer.Fit(figures)
            : error - figures.Expanded > task.AllowedPascals ? new SensorAnswer.Unfit(figures)
            : new SensorAnswer.CannotTell(figures);
    }

    private static SensorFigures FiguresOf(ImmutableArray<ImmutableArray<SensorPoint>> levels, int fewest, LeastSquares line, SensorTask task)
    {
        static double Error(SensorPoint p) => p.Reading - p.Reference;
        var bothWays = levels.Where(l => l.Any(p => p.Rising) && l.Any(p => !p.Rising)).ToList();
        double? hysteresis = bothWays.Count == 0 ? null : bothWays.Max(l => Math.Abs(l.Where(p => !p.Rising).Average(Error) - l.Where(p => p.Rising).Average(Error)));
        var repeatability = Pooled(levels.SelectMany(l => l.GroupBy(p => p.Rising).Select(g => g.Select(Error).ToArray())));
        var worst = levels.MaxBy(l => Math.Abs(l.Average(Error)));
        var nonLinearity = levels.Max(l => Math.Abs(l.Average(Error) - line.Coefficients[0] - line.Coefficients[1] * l.Average(p => p.Reference)));
        var repeats = repeatability * repeatability / fewest;
        var variance = task.ReferenceStandardPascals * task.ReferenceStandardPascals + repeats
            + (Math.Pow((hysteresis ?? 0) / 2, 2) + Math.Pow(task.ResolutionPascals / 2, 2)) / 3;
        return new(line.Coefficients[0], 1 + line.Coefficients[1], nonLinearity, hysteresis, repeatability, Math.Sqrt(variance), worst[0].Level, worst.Average(Error));
    }

    private static double Pooled(IEnumerable<double[]> groups)
    {
        var (squares, df) = (0.0, 0);
        foreach (var group in groups.Where(g => g.Length > 1))
        {
            var s = Screens.Moments.Of(group).StandardDeviation;
            squares += s * s * (group.Length - 1);
            df += group.Length - 1;
        }

        return Math.Sqrt(squares / df);
    }
}
