using System.Collections.Immutable;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Uncertainty;

namespace Ramwright.Proving.Reference;

/// <summary>What a certificate makes of a device's readings near the limits to prove. Everything in SI of what the device shows.</summary>
public abstract record CalibratedReading
{
    private CalibratedReading() { }

    /// <summary>Why a corrected reading may be off by its calibration, and how it is corrected.</summary>
    /// <param name="Line">Null where the certificate states no points or too few: readings count as shown.</param>
    /// <param name="HalfWidth">Half the width of the 95 % interval for the next corrected reading there by the line alone; zero without one. A value in SI of the reading.</param>
    public sealed record Known(ImmutableArray<Component> Components, CalibrationLine? Line, double HalfWidth, ImmutableArray<BudgetRemark> Remarks) : CalibratedReading;

    /// <summary>The points do not reach the limits: beyond them the line is a guess.</summary>
    /// <param name="Low">Lowest calibrated reading, a value in SI of the reading.</param>
    /// <param name="High">Highest calibrated reading, a value in SI of the reading.</param>
    public sealed record BeyondPoints(double Low, double High) : CalibratedReading;

    /// <param name="expanded">Of the certificate, k = 2, zero or more: what all points share.</param>
    /// <param name="points">May be empty. Stated uncertainties give weights when every point has one and the points bear them out.</param>
    /// <param name="form">Straight as a rule.</param>
    /// <param name="low">Reading at the lower limit to prove.</param>
    /// <param name="high">Reading at the upper limit to prove.</param>
    public static CalibratedReading Of(double expanded, ImmutableArray<CalibrationPoint> points, CurveForm form, double low, double high)
    {
        var certificate = new Component("calibration", new Spread.Expanded(expanded, 2), Effect.Systematic);
        if (points.IsEmpty)
            return new Known([certificate], null, 0, []);
        var (answer, scattersMore) = Fit(points, form);
        if (answer is not CalibrationAnswer.Fitted { Line: var line })
            return new Known([certificate], null, 0, [BudgetRemark.PointsTooFew]);
        if (low < line.Low || high > line.High)
            return new BeyondPoints(line.Low, line.High);
        // Stated uncertainties are those of the comparisons: the largest stands for one reading of the device.
        var ofReading = scattersMore ? 0 : points.Max(p => p.Standard ?? 0);
        var worst = new[] { low, 0.5 * (low + high), high }.Select(x => line.Correct(x, common: 0, ofReading)).MaxBy(c => c.OfNext)!;
        return new Known(
            [certificate, new("calibration line", new Spread.Normal(worst.OfNext), Effect.Systematic, line.ChanceOfScatter is null ? line.DegreesOfFreedom : double.PositiveInfinity)],
            line, line.HalfWidthOf(worst), scattersMore ? [BudgetRemark.PointsScatterMore] : []);
    }

    /// <summary>With stated uncertainties, unless the points scatter so much more that chance would do it in fewer than 5 % of calibrations.</summary>
    private static (CalibrationAnswer Answer, bool ScattersMore) Fit(ImmutableArray<CalibrationPoint> points, CurveForm form)
    {
        var answer = CalibrationLine.Fit(points, form);
        return answer is CalibrationAnswer.Fitted { Line.ChanceOfScatter: < 0.05 }
            ? (CalibrationLine.Fit([.. points.Select(p => p with { Standard = null })], form), true)
            : (answer, false);
    }
}
