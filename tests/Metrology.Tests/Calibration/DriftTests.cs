using System.Collections.Immutable;
using Ramwright.Metrology.Calibration;

namespace Ramwright.Metrology.Tests.Calibration;

public sealed class DriftTests
{
    private static CalibrationLine Line(CurveForm form, params ImmutableArray<(double Reading, double Correction)> points) =>
        CalibrationLine.Fit([.. points.Select(p => new CalibrationPoint(p.Reading, p.Reading + p.Correction, 0.5))], form) switch
        {
            CalibrationAnswer.Fitted fitted => fitted.Line,
            CalibrationAnswer.Through through => through.Line,
            var other => throw new InvalidOperationException(other.ToString()),
        };

    [Fact]
    public void The_largest_change_is_found_and_counted_per_year()
    {
        var drift = Assert.IsType<Drift.Measured>(Drift.Between(Line(CurveForm.Straight, (0, 0), (350, 1), (700, 2)), Line(CurveForm.Straight, (0, 0.5), (350, 2.5), (700, 4.5)), 2));
        Assert.Equal((700, 2.5, 1.25), (drift.At, Math.Round(drift.Change, 12), Math.Round(drift.PerYear, 12)));
        Assert.Equal(Math.Sqrt(2) * 0.5 * Math.Sqrt(5.0 / 6), drift.Standard, 1e-12); // an end of three even points carries 5/6 of a variance
        Assert.Equal(2.5 / (2 * drift.Standard), drift.Ratio, 1e-12);
        Assert.Equal(1.25, drift.HalfWidthFor(1), 1e-12);
    }

    [Fact]
    public void The_top_of_a_parabola_counts()
    {
        var drift = Assert.IsType<Drift.Measured>(Drift.Between(Line(CurveForm.Quadratic, (0, 0), (300, 0), (700, 0)), Line(CurveForm.Quadratic, (0, 0), (350, 3), (700, 0)), 1));
        Assert.Equal(350, drift.At, 1e-9);
        Assert.Equal(3, drift.Change, 1e-9);
    }

    [Fact]
    public void A_change_that_cannot_be_seen_still_counts_in_a_budget()
    {
        var drift = Assert.IsType<Drift.Measured>(Drift.Between(Line(CurveForm.Straight, (0, 1), (700, 1)), Line(CurveForm.Straight, (0, 1), (700, 1)), 1));
        Assert.True(drift.Ratio < 1);
        Assert.Equal(2 * drift.Standard, drift.HalfWidthFor(1), 1e-12);
    }

    [Fact]
    public void Ranges_that_do_not_meet_have_no_drift() =>
        Assert.IsType<Drift.NoCommonRange>(Drift.Between(Line(CurveForm.Straight, (0, 0), (100, 0)), Line(CurveForm.Straight, (200, 0), (700, 0)), 1));
}
