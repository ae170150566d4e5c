using System.Collections.Immutable;
using Ramwright.Metrology.Distributions;
using Ramwright.Metrology.Uncertainty;

namespace Ramwright.Metrology.Calibration;

/// <summary>A reading made right by a calibration line.</summary>
/// <param name="Value">Reading plus correction, in the reading's unit.</param>
/// <param name="OfLine">Standard uncertainty of the line there.</param>
/// <param name="OfNext">Standard uncertainty of one corrected reading: line and scatter.</param>
/// <param name="Within">Whether the reading lies in the calibrated range; beyond it the line is a guess.</param>
public sealed record Corrected(double Value, double OfLine, double OfNext, bool Within);

/// <summary>The correction of a device over its readings, from comparisons with a reference.</summary>
/// <remarks>
/// Correction = reference − reading, fitted by weighted least squares about the mean reading. JCGM 100:2008, H.3 (clause from memory). With stated
/// uncertainties weights are 1/u² and the line's uncertainty follows from them; without, it follows from the scatter.
/// </remarks>
public sealed class CalibrationLine
{
    /// <summary>The most points that are taken.</summary>
    public const int MostPoints = 10_000;

    private readonly LeastSquares _fit;
    private readonly double _centre;
    private readonly bool _stated;

    private CalibrationLine(LeastSquares fit, double centre, bool stated, double low, double high) =>
        (_fit, _centre, _stated, Low, High) = (fit, centre, stated, low, high);

    /// <summary>Lowest calibrated reading, a value in the reading's unit.</summary>
    public double Low { get; }

    /// <summary>Highest calibrated reading, a value in the reading's unit.</summary>
    public double High { get; }

    /// <summary>Reading about which the correction is written, a value in the reading's unit.</summary>
    public double Centre => _centre;

    /// <summary>Correction = c₀ + c₁·(x − centre) + c₂·(x − centre)²; as many as the form has.</summary>
    public ImmutableArray<double> Coefficients => [.. _fit.Coefficients];

    /// <summary>Points less coefficients.</summary>
    public int DegreesOfFreedom => _fit.DegreesOfFreedom;

    /// <summary>Standard deviation of the residuals, a value in the reading's unit; with stated uncertainties a ratio to them. NaN without degrees of freedom.</summary>
    public double Scatter => _fit.DegreesOfFreedom > 0 ? Math.Sqrt(_fit.Squares / _fit.DegreesOfFreedom) : double.NaN;

    /// <summary>Chance of a scatter as large when the stated uncertainties are right; null without stated ones. Below 5 % they are too small, or the form is wrong.</summary>
    public double? ChanceOfScatter => _stated && _fit.DegreesOfFreedom > 0 ? ChiSquared.Tail(_fit.Squares, _fit.DegreesOfFreedom) : null;

    /// <summary>Fits the correction.</summary>
    /// <param name="points">At most <see cref="MostPoints"/>. Stated uncertainties count when every point has one.</param>
    /// <param name="form">Straight as a rule; a parabola wants a reason.</param>
    public static CalibrationAnswer Fit(ImmutableArray<CalibrationPoint> points, CurveForm form = CurveForm.Straight)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(points.Length, MostPoints, nameof(points));
        if (!points.All(p => p.IsNumber))
            throw new ArgumentOutOfRangeException(nameof(points), "Readings are finite, and a stated uncertainty is above zero.");
        if (points is [var only])
            return new CalibrationAnswer.OnePoint(only.Reading, only.Reference - only.Reading, only.Standard);
        var wanted = (int)form + 1;
        var different = points.Select(p => p.Reading).Distinct().Count();
        if (different < wanted || points.IsEmpty)
            return new CalibrationAnswer.TooFew(different, wanted);
        var centre = points.Average(p => p.Reading);
        var stated = points.All(p => p.Standard is not null);
        double[] weights = stated ? [.. points.Select(p => 1 / (p.Standard!.Value * p.Standard.Value))] : [];
        var fit = LeastSquares.Fit([.. points.Select(p => Row(p.Reading, centre, wanted))], [.. points.Select(p => p.Reference - p.Reading)], weights);
        if (fit is null)
            return new CalibrationAnswer.TooFew(different, wanted);
        var line = new CalibrationLine(fit, centre, stated, points.Min(p => p.Reading), points.Max(p => p.Reading));
        return fit.DegreesOfFreedom > 0 ? new CalibrationAnswer.Fitted(line) : new CalibrationAnswer.Through(line);
    }

    /// <summary>The correction at a reading, a value in its unit.</summary>
    public double CorrectionAt(double reading)
    {
        var sum = 0.0;
        for (var i = _fit.Coefficients.Length - 1; i >= 0; i--)
            sum = sum * (reading - _centre) + _fit.Coefficients[i];
        return sum;
    }

    /// <summary>A reading made right. Uncertainties are NaN when neither scatter nor stated uncertainties are known.</summary>
    /// <param name="reading">Finite.</param>
    /// <param name="common">Standard uncertainty that all points share, such as the reference's own; it does not average out.</param>
    /// <param name="ofReading">Standard uncertainty of this reading when uncertainties were stated; else the scatter counts.</param>
    public Corrected Correct(double reading, double common = 0, double ofReading = 0)
    {
        if (!double.IsFinite(reading) || !(common >= 0) || !(ofReading >= 0))
            throw new ArgumentOutOfRangeException(nameof(reading), reading, "A finite reading and uncertainties of zero or more are wanted.");
        var one = _stated ? 1 : Scatter;
        var line = _fit.Leverage(Array.ConvertAll(Row(reading, _centre, _fit.Coefficients.Length), x => (double)x)) * one * one + common * common;
        var scatter = _stated ? ofReading : one;
        return new(reading + CorrectionAt(reading), Math.Sqrt(line), Math.Sqrt(line + scatter * scatter), reading >= Low && reading <= High);
    }

    /// <summary>Half the width of the interval that holds the next corrected reading, in its unit.</summary>
    /// <param name="corrected">From <see cref="Correct"/>.</param>
    /// <param name="coverage">Above 0 and below 1.</param>
    public double HalfWidthOf(Corrected corrected, double coverage = 0.95)
    {
        ArgumentNullException.ThrowIfNull(corrected);
        return corrected.OfNext * Propagation.Factor(coverage, _stated ? double.PositiveInfinity : Math.Max(1, _fit.DegreesOfFreedom));
    }

    /// <summary>The reading within a range at which the difference to another line is largest: at an end, or at the top of a parabola.</summary>
    internal double FarthestFrom(CalibrationLine other, double low, double high)
    {
        double Apart(double x) => Math.Abs(CorrectionAt(x) - other.CorrectionAt(x));
        var (slopeLow, slopeHigh) = (SlopeAt(low) - other.SlopeAt(low), SlopeAt(high) - other.SlopeAt(high)); // straight in x
        var top = slopeLow * slopeHigh < 0 ? low + (high - low) * slopeLow / (slopeLow - slopeHigh) : low;
        return new[] { low, high, top }.MaxBy(Apart);
    }

    private double SlopeAt(double reading) => _fit.Coefficients.Length switch
    {
        1 => 0,
        2 => _fit.Coefficients[1],
        _ => _fit.Coefficients[1] + 2 * _fit.Coefficients[2] * (reading - _centre),
    };

    private static DoubleDouble[] Row(double reading, double centre, int length)
    {
        var row = new DoubleDouble[length];
        row[0] = 1;
        for (var i = 1; i < length; i++)
            row[i] = row[i - 1] * ((DoubleDouble)reading - centre);
        return row;
    }
}
