using System.Collections.Immutable;
using CsCheck;
using MathNet.Numerics.LinearRegression;
using Ramwright.Metrology.Calibration;

namespace Ramwright.Metrology.Tests.Calibration;

public sealed class CalibrationLineTests
{
    private static readonly double[] Thermometer = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511];
    private static readonly double[] Corrections = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160];

    private static CalibrationLine Line(ImmutableArray<CalibrationPoint> points, CurveForm form = CurveForm.Straight) => Assert.IsType<CalibrationAnswer.Fitted>(CalibrationLine.Fit(points, form)).Line;

    // JCGM 100:2008, H.3 and Table H.6: correction −0.1494 °C at 30 °C with u 0.0041 °C, s 0.0035 °C; y1 −0.1712 with s 0.0029 at 20 °C
    [Fact]
    public void Thermometer_of_the_GUM()
    {
        var line = Line([.. Thermometer.Zip(Corrections, (t, b) => new CalibrationPoint(t, t + b))]);
        Assert.Equal(9, line.DegreesOfFreedom);
        Assert.Equal(0.0035, line.Scatter, 0.00005);
        Assert.Equal(-0.1712, line.CorrectionAt(20), 0.00005);
        Assert.Equal(0.00218, line.CorrectionAt(21) - line.CorrectionAt(20), 0.000005);
        var at30 = line.Correct(30);
        Assert.Equal(30 - 0.1494, at30.Value, 0.00005);
        Assert.Equal(30 - 0.1493768127324778, at30.Value, 1e-12);
        Assert.Equal(0.0041, at30.OfLine, 0.00005);
        Assert.Equal(0.004138595752854953, at30.OfLine, 1e-12);
        Assert.Equal(0.0028775978351599585, line.Correct(20).OfLine, 1e-12);
        Assert.False(at30.Within);
        Assert.True(line.Correct(24).Within);
    }

    // Student's t for 9 degrees of freedom, 97.5 %: 2.262 in every handbook
    [Fact]
    public void The_next_reading_scatters_about_the_line()
    {
        var line = Line([.. Thermometer.Zip(Corrections, (t, b) => new CalibrationPoint(t, t + b))]);
        var corrected = line.Correct(24);
        Assert.Equal(Math.Sqrt(corrected.OfLine * corrected.OfLine + line.Scatter * line.Scatter), corrected.OfNext, 1e-12);
        Assert.Equal(2.262 * corrected.OfNext, line.HalfWidthOf(corrected), 0.0005 * corrected.OfNext);
    }

    // Peer: MathNet.Numerics 5, weighted least squares by normal equations, which lose digits where the points crowd: points spread over half the range, compared within it
    [Fact]
    public void Weighted_fits_are_those_of_a_general_library() => Gen.Select(Gen.Double[0, 700], Gen.Double[-3, 3], Gen.Double[0.2, 2]).Array[5, 20].ForAll(rows =>
    {
        ImmutableArray<CalibrationPoint> points = [.. rows.Select(r => new CalibrationPoint(r.Item1, r.Item1 + r.Item2, r.Item3))];
        if (CalibrationLine.Fit(points, CurveForm.Quadratic) is not CalibrationAnswer.Fitted { Line: var line } || rows.Select(r => Math.Round(r.Item1 / 50)).Distinct().Count() < 5 || rows.Max(r => r.Item1) - rows.Min(r => r.Item1) < 350)
            return true;
        double[][] x = [.. rows.Select(r => new[] { 1, (r.Item1 - 350) / 350, Math.Pow((r.Item1 - 350) / 350, 2) })];
        var peer = WeightedRegression.Weighted(x, rows.Select(r => r.Item2).ToArray(), rows.Select(r => 1 / (r.Item3 * r.Item3)).ToArray(), intercept: false);
        var (low, high) = (rows.Min(r => r.Item1), rows.Max(r => r.Item1));
        return new[] { low, (low + high) / 2, high }.All(at => Math.Abs(line.CorrectionAt(at) - (peer[0] + peer[1] * (at - 350) / 350 + peer[2] * Math.Pow((at - 350) / 350, 2))) < 1e-6);
    }, iter: 300);

    // Of 4,000 simulated calibrations the 95 % interval holds the next reading in 95 %: three standard errors are 1.0 %
    [Fact]
    public void The_interval_holds_the_next_reading_as_often_as_it_says()
    {
        var random = new Random(12);
        double Noise() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var held = Enumerable.Range(0, 4_000).Count(_ =>
        {
            var line = Line([.. Enumerable.Range(0, 6).Select(i => new CalibrationPoint(100 * i, 100 * i + 2 - 0.01 * i + 0.7 * Noise()))]);
            var truth = 450 + 2 - 0.045 + 0.7 * Noise();
            var corrected = line.Correct(450);
            return Math.Abs(truth - corrected.Value) <= line.HalfWidthOf(corrected);
        });
        Assert.InRange(held / 4_000.0, 0.94, 0.96);
    }

    [Fact]
    public void Stated_uncertainties_that_are_too_small_are_noticed()
    {
        CalibrationPoint[] Points(double u) => [.. Thermometer.Zip(Corrections, (t, b) => new CalibrationPoint(t, t + b, u))];
        Assert.True(Line([.. Points(0.0035)]).ChanceOfScatter > 0.05);
        Assert.True(Line([.. Points(0.0010)]).ChanceOfScatter < 0.001);
        Assert.Null(Line([.. Thermometer.Zip(Corrections, (t, b) => new CalibrationPoint(t, t + b))]).ChanceOfScatter);
    }

    [Fact]
    public void What_all_points_share_does_not_average_out() =>
        Assert.Equal(0.5, Line([.. Enumerable.Range(0, 1_000).Select(i => new CalibrationPoint(i, i + 1, 0.1))]).Correct(500, common: 0.5).OfLine, 0.0001);

    [Fact]
    public void One_point_is_an_offset_and_nothing_more()
    {
        Assert.Equal(new CalibrationAnswer.OnePoint(700, 2.5, 0.8), CalibrationLine.Fit([new(700, 702.5, 0.8)]));
        Assert.Equal(new CalibrationAnswer.OnePoint(700, 2.5, null), CalibrationLine.Fit([new(700, 702.5)]));
    }

    [Fact]
    public void Too_few_points_and_equal_readings_are_answers()
    {
        Assert.Equal(new CalibrationAnswer.TooFew(0, 2), CalibrationLine.Fit([]));
        Assert.Equal(new CalibrationAnswer.TooFew(1, 2), CalibrationLine.Fit([new(700, 702), new(700, 703)]));
        Assert.Equal(new CalibrationAnswer.TooFew(2, 3), CalibrationLine.Fit([new(0, 0), new(700, 703), new(700, 702)], CurveForm.Quadratic));
        Assert.IsType<CalibrationAnswer.Fitted>(CalibrationLine.Fit([new(700, 702), new(700, 703)], CurveForm.Constant));
    }

    [Fact]
    public void Two_points_make_a_line_whose_scatter_is_not_known()
    {
        var bare = Assert.IsType<CalibrationAnswer.Through>(CalibrationLine.Fit([new(0, 1), new(700, 703)])).Line;
        Assert.Equal(352, bare.Correct(350).Value, 1e-12);
        Assert.True(double.IsNaN(bare.Correct(350).OfLine));
        var stated = Assert.IsType<CalibrationAnswer.Through>(CalibrationLine.Fit([new(0, 1, 0.3), new(700, 703, 0.3)])).Line;
        Assert.Equal(0.3 / Math.Sqrt(2), stated.Correct(350).OfLine, 1e-12);
        Assert.Equal(0.3, stated.Correct(700).OfLine, 1e-12);
    }

    [Fact]
    public void No_number_is_no_point() => Assert.Throws<ArgumentOutOfRangeException>(() => CalibrationLine.Fit([new(double.NaN, 0), new(1, 1)]));
}
