using Ramwright.Metrology.Quantities;
using Ramwright.Paper.Charts;
using Ramwright.Paper.Drawing;

namespace Ramwright.Paper.Tests.Charts;

public sealed class StrokeChartTests
{
    private static readonly StrokeChartInput Plain = new()
    {
        Tool = "Corrie 85",
        Rows = [.. Enumerable.Range(0, 1001).Select(i => (0.01 * i, (Pressure?)Pressure.FromBar(i < 600 ? 10 : i < 700 ? 10 + (7 * (i - 600)) : 12), (double?)(i < 720 ? 20 : 0)))],
        Moments = [(6.0, "dies closed"), (7.0, "relief opened")],
    };

    private static readonly StrokeChartInput Phased = Plain with { Phases = [(0, 6, "advance"), (6, 7, "build"), (7, 7.01, "opening"), (7.01, 10, "return")] };

    [Fact]
    public void Every_phase_is_named_once_and_every_second_stands_on_a_band()
    {
        var shapes = StrokeChart.Of(Phased).Shapes;
        var words = shapes.OfType<Shape.Text>().Select(t => t.Words).ToList();
        foreach (var phase in Phased.Phases)
            Assert.Single(words, phase.Words);
        Assert.Equal(2, shapes.OfType<Shape.Rectangle>().Count(r => r.Ink == Ink.Band));
        Assert.DoesNotContain(StrokeChart.Of(Plain).Shapes, s => s is Shape.Rectangle);
    }

    [Fact]
    public void With_phases_ten_milliseconds_can_be_seen_beside_six_seconds_and_time_still_runs_on()
    {
        var time = new StrokeTimeScale(Phased, 0, 700);
        Assert.InRange(time.X(7.01) - time.X(7), 25, 50); // of 700: cube roots of 6, 1, 0.01 and 2.99 s are 1.82, 1, 0.22 and 1.44
        Assert.Equal(0, time.X(0), 1e-9);
        Assert.Equal(700, time.X(10), 1e-9);
        for (var s = 0.0; s < 9.99; s += 0.01)
            Assert.True(time.X(s) < time.X(s + 0.01));
        Assert.Equal(350, new StrokeTimeScale(Plain, 0, 700).X(5), 1e-9);
    }

    [Fact]
    public void A_fitted_curve_is_laid_over_what_was_recorded()
    {
        var lines = StrokeChart.Of(Phased with { Fitted = [(6, Pressure.FromBar(10)), (7, Pressure.FromBar(710))] }).Shapes.OfType<Shape.Polyline>().ToList();
        Assert.Equal([Ink.Detail, Ink.Detail, Ink.Fit], lines.Select(l => l.Ink));
    }

    [Fact]
    public void What_was_not_recorded_is_not_drawn()
    {
        var pressure = StrokeChart.Of(Phased with { Rows = [.. Phased.Rows.Select(r => r with { Amperes = null })] });
        Assert.Single(pressure.Shapes.OfType<Shape.Polyline>());
        Assert.DoesNotContain(pressure.Shapes, s => s is Shape.Text { Words: "A" });
        Assert.StartsWith("Stroke of Corrie 85: pressure against time", pressure.Title, StringComparison.Ordinal);
        var current = StrokeChart.Of(Phased with { Rows = [.. Phased.Rows.Select(r => r with { Pressure = null })] });
        Assert.Single(current.Shapes.OfType<Shape.Polyline>());
        Assert.DoesNotContain(current.Shapes, s => s is Shape.Text { Words: "bar" });
    }

    [Fact]
    public void Nothing_leaves_the_chart()
    {
        foreach (var shape in StrokeChart.Of(Phased).Shapes)
        {
            var spots = shape switch { Shape.Line l => [l.From, l.To], Shape.Polyline p => p.Spots, Shape.Circle c => [c.Centre], Shape.Rectangle r => [r.Corner, new(r.Corner.X + r.Width, r.Corner.Y + r.Height)], Shape.Text t => [t.At], _ => System.Collections.Immutable.ImmutableArray<Spot>.Empty };
            Assert.All(spots, s => Assert.True(s.X >= 0 && s.X <= Phased.Width && s.Y >= 0 && s.Y <= Phased.Height, $"{shape}"));
        }
    }
}
