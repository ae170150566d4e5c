using System.Collections.Immutable;
using Ramwright.Metrology.Calibration;

namespace Ramwright.Metrology.Tests.Calibration;

/// <summary>A made-up sensor of 0 to 700 bar, in bar here and in pascals inside; figures worked out by hand beside.</summary>
public sealed class SensorCheckTests
{
    private const double Bar = 1e5;

    private static readonly SensorTask Task = new() { AllowedPascals = 7 * Bar, ReferenceStandardPascals = 0.5 * Bar, ResolutionPascals = 0.1 * Bar };

    /// <summary>Four levels, up and down, twice; each second time as much higher as told.</summary>
    private static ImmutableArray<SensorPoint> Points(Func<double, double> error, double hysteresis = 0, double repeat = 0) =>
    [
        .. from level in Enumerable.Range(0, 4)
           from rising in new[] { true, false }
           from time in Enumerable.Range(0, 2)
           let reference = 200.0 * level + 100
           select new SensorPoint(level, reference * Bar, (reference + error(reference) + (rising ? -hysteresis : hysteresis) / 2 + (time == 0 ? -repeat : repeat) / 2) * Bar, rising),
    ];

    [Fact]
    public void Zero_and_gain_are_told_apart()
    {
        var figures = Assert.IsType<SensorAnswer.Fit>(SensorCheck.Examine(Points(p => 1.5 + 0.004 * p), Task)).Figures;
        Assert.Equal(1.5 * Bar, figures.Zero, 1e-6);
        Assert.Equal(1.004, figures.Gain, 1e-12);
        Assert.Equal(0, figures.NonLinearity, 1e-6);
        Assert.Equal((3, 4.3), (figures.WorstLevel, Math.Round(figures.WorstError / Bar, 9)));
    }

    [Fact]
    public void Hysteresis_and_repeatability_are_told_apart_and_combined()
    {
        var figures = Assert.IsType<SensorAnswer.Fit>(SensorCheck.Examine(Points(_ => 0, hysteresis: 2, repeat: 1), Task)).Figures;
        Assert.Equal(2 * Bar, figures.Hysteresis!.Value, 1e-6);
        Assert.Equal(Bar / Math.Sqrt(2), figures.Repeatability, 1e-6); // two readings 1 bar apart
        // u² = 0.5² + 0.5/2 + (1² + 0.05²)/3
        Assert.Equal(Math.Sqrt(0.25 + 0.25 + (1 + 0.0025) / 3) * Bar, figures.Standard, 1e-6);
    }

    [Fact]
    public void A_bend_is_no_gain()
    {
        var figures = Assert.IsType<SensorAnswer.Fit>(SensorCheck.Examine(Points(p => (p is 100 or 700) ? 1 : -1), Task)).Figures;
        Assert.Equal(1, figures.Gain, 1e-12);
        Assert.Equal(1 * Bar, figures.NonLinearity, 1e-6);
    }

    [Theory]
    [InlineData(5.9, typeof(SensorAnswer.Fit))]
    [InlineData(6.5, typeof(SensorAnswer.CannotTell))]
    [InlineData(7.5, typeof(SensorAnswer.CannotTell))]
    [InlineData(-8.1, typeof(SensorAnswer.Unfit))]
    public void The_uncertainty_stands_between_fit_and_unfit(double error, Type answer) => Assert.IsType(answer, SensorCheck.Examine(Points(_ => error), Task));

    [Fact]
    public void Too_little_is_an_answer()
    {
        var points = Points(_ => 0);
        Assert.Equal(new SensorAnswer.TooFew(0, 0), SensorCheck.Examine([], Task));
        Assert.Equal(new SensorAnswer.TooFew(2, 2), SensorCheck.Examine([.. points.Where(p => p.Level < 2)], Task));
        Assert.Equal(new SensorAnswer.TooFew(4, 1), SensorCheck.Examine([.. points.Where((_, i) => i % 2 == 0)], Task));
    }

    [Fact]
    public void One_direction_alone_tells_no_hysteresis() =>
        Assert.Null(Assert.IsType<SensorAnswer.Fit>(SensorCheck.Examine([.. Points(_ => 0).Where(p => p.Rising)], Task)).Figures.Hysteresis);
}
