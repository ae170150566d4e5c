using System.Collections.Immutable;
using Ramwright.Metrology.Calibration;
using Ramwright.Metrology.Quantities;
using Ramwright.Proving.Reference;

namespace Ramwright.Proving.Tests.Reference;

public sealed class CalibratedReadingTests
{
    // JCGM 100:2008, H.3 (thermometer, data of Table H.6): correction at 30 °C −0.1494 °C with u = 0.0041 °C, s = 0.0035 °C, 9 degrees of freedom.
    // One further reading there: √(0.0041² + 0.0035²) = 0.0054 °C. Figures of the table from memory; the arithmetic knows no unit.
    private static readonly (double Reading, double Correction)[] Thermometer =
    [
        (21.521, -0.171), (22.012, -0.169), (22.512, -0.166), (23.003, -0.159), (23.507, -0.164), (23.999, -0.165), (24.513, -0.156), (25.002, -0.157), (25.503, -0.159), (26.010, -0.161), (26.511, -0.160),
    ];

    [Fact]
    public void A_straight_line_corrects_and_its_prediction_goes_into_the_budget()
    {
        ImmutableArray<CalibrationPoint> points = [.. Thermometer.Select(t => new CalibrationPoint(t.Reading, t.Reading + t.Correction))];
        var known = Assert.IsType<CalibratedReading.Known>(CalibratedReading.Of(0.01, points, CurveForm.Straight, 21.6, 26.5));
        var line = known.Components.Single(c => c.Name == "calibration line");
        Assert.Equal(9, line.DegreesOfFreedom);
        // At the low end, by the table's r and s: u(line) = 0.0019 °C and the scatter 0.0035 °C together 0.0040 °C.
        Assert.Equal(0.0040, line.Spread.Standard, 0.0002);
        var correction = ReadingCorrection.Of(known.Line, null)!;
        Assert.Equal(-0.1494, correction.At(30), 0.00005);
        Assert.Equal(known.Line!.CorrectionAt(24), correction.At(24), 1e-12);
    }

    [Fact]
    public void Limits_beyond_the_points_are_refused_and_too_few_points_correct_nothing()
    {
        ImmutableArray<CalibrationPoint> points = [new(1e7, 1.001e7), new(3e7, 3.002e7), new(5e7, 5.004e7)];
        var beyond = Assert.IsType<CalibratedReading.BeyondPoints>(CalibratedReading.Of(1e5, points, CurveForm.Straight, 4e7, 7e7));
        Assert.Equal((1e7, 5e7), (beyond.Low, beyond.High));
        var few = Assert.IsType<CalibratedReading.Known>(CalibratedReading.Of(1e5, points[..2], CurveForm.Straight, 2e7, 3e7));
        Assert.Equal([BudgetRemark.PointsTooFew], few.Remarks);
        Assert.Null(few.Line);
    }

    [Fact]
    public void Points_that_scatter_more_than_stated_count_by_their_own_scatter()
    {
        ImmutableArray<CalibrationPoint> points = [.. new[] { 3.0, -4, 5, -3, 4, -5 }.Select((off, i) => new CalibrationPoint(i * 1e7, (i * 1e7) + (off * 1e5), 1e4))];
        var known = Assert.IsType<CalibratedReading.Known>(CalibratedReading.Of(1e5, points, CurveForm.Straight, 1e7, 4e7));
        Assert.Equal([BudgetRemark.PointsScatterMore], known.Remarks);
        Assert.Equal(4, known.Components.Single(c => c.Name == "calibration line").DegreesOfFreedom);
        Assert.True(known.Components.Single(c => c.Name == "calibration line").Spread.Standard > 4e5);
    }

    // By hand: 85 kN read, + 100 N corrected, 2 kN held back, over 1 000 mm²: 87.1 MPa instead of 87.0 MPa.
    [Fact]
    public void A_force_cells_reading_is_corrected_as_a_force()
    {
        var correction = new ReadingCorrection(85_000, [100], Area.FromSquareMetres(1e-3), Force.FromNewtons(2_000));
        Assert.Equal(870, correction.Equivalent(Force.FromKilonewtons(85))!.Value.Bar, 1e-9);
        Assert.Equal(871, correction.Correct(Pressure.FromBar(870)).Bar, 1e-9);
        Assert.Null(ReadingCorrection.Of(null, null));
    }

    // Invented: a sensor 2 bar high everywhere, read twice up and once down at three levels; the reference known to u = 1.25 bar.
    [Fact]
    public void A_comparison_carries_its_uncertainty_over()
    {
        ImmutableArray<SensorPoint> points = [.. new[] { 300e5, 500e5, 730e5 }.SelectMany((p, level) => new SensorPoint[] { new(level, p, p + 2e5, true), new(level, p, p + 2.2e5, true), new(level, p, p + 1.8e5, false) })];
        var task = new SensorTask { AllowedPascals = 7e5, ReferenceStandardPascals = 1.25e5, ResolutionPascals = 1e5 };
        var figures = Assert.IsType<SensorAnswer.Fit>(SensorCheck.Examine(points, task)).Figures;
        var known = Assert.IsType<CalibratedReading.Known>(ComparedReading.Of(points, task, figures, 679e5, 721e5));
        Assert.Equal(["reference of the comparison", "line of the comparison", "hysteresis", "resolution"], known.Components.Select(c => c.Name));
        Assert.Equal(1.25e5, known.Components[0].Spread.Standard);
        Assert.Equal(-2e5, known.Line!.CorrectionAt(700e5), 1e3);
        Assert.IsType<CalibratedReading.BeyondPoints>(ComparedReading.Of(points, task, figures, 679e5, 731e5));
    }
}
