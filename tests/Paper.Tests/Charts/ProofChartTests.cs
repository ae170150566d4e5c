using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Charts;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Tests.Saltmarsh;

namespace Ramwright.Paper.Tests.Charts;

public sealed class ProofChartTests
{
    private static readonly ProofChartInput Seven = new()
    {
        Limits = House.Limits.Pressure,
        Nominal = House.Limits.Nominal,
        GuardLow = Pressure.FromBar(683),
        GuardHigh = Pressure.FromBar(717),
        Planned = 12,
        Runs = [.. Proofs.AsLeft.Take(7).Select((bar, i) => new ChartRun(Pressure.FromBar(bar), i == 2))],
    };

    private static int Count(Picture picture, Ink ink) => picture.Shapes.Count(s => s is Shape.Circle c && c.Ink == ink);

    [Fact]
    public void Shows_runs_places_and_a_void_one_crossed()
    {
        var chart = ProofChart.Of(Seven);
        Assert.Equal(6, Count(chart, Ink.Run));
        Assert.Equal(6, Count(chart, Ink.Empty)); // 12 planned less 6 valid
        Assert.Equal(2, chart.Shapes.Count(s => s is Shape.Line { Ink: Ink.Void }));
        Assert.Equal(2, chart.Shapes.Count(s => s is Shape.Line { Ink: Ink.Limit }));
        Assert.Equal("Limits 679..721 bar. 6 of 12 runs, from 697.9 bar to 702.1 bar. 1 void.", chart.Description);
    }

    [Fact]
    public void Higher_pressure_lies_higher_and_inside_the_limits()
    {
        var chart = ProofChart.Of(Seven);
        var limits = chart.Shapes.OfType<Shape.Line>().Where(l => l.Ink == Ink.Limit).Select(l => l.From.Y).Order().ToArray();
        var discs = chart.Shapes.OfType<Shape.Circle>().Where(c => c.Ink == Ink.Run).Select(c => c.Centre).OrderBy(c => c.X).ToArray();
        Assert.All(discs, d => Assert.InRange(d.Y, limits[0], limits[1]));
        Assert.True(discs[0].Y < discs[1].Y, "701.2 bar stands above 698.4 bar");
    }

    [Fact]
    public void Keeps_everything_on_the_sheet_however_far_off()
    {
        foreach (var bar in new[] { -1e4, 0, 300, 650, 760, 5e5 })
        {
            var chart = ProofChart.Of(Seven with { Runs = [new(Pressure.FromBar(bar))], AsFound = [Pressure.FromBar(bar), Pressure.FromBar(612)] });
            Assert.All(chart.Shapes.OfType<Shape.Circle>(), c => Assert.InRange(c.Centre.Y, 0, chart.Height));
            Assert.All(chart.Shapes.OfType<Shape.Circle>(), c => Assert.InRange(c.Centre.X, 0, chart.Width));
        }
    }

    [Fact]
    public void Says_the_unit_it_is_asked_for()
    {
        var words = ProofChart.Of(Seven with { Units = UnitSystem.Imperial }).Shapes.OfType<Shape.Text>().Select(t => t.Words).ToArray();
        Assert.Contains("psi", words);
        Assert.Contains("10,457", words);
        Assert.DoesNotContain("bar", words);
    }

    [Fact]
    public void An_empty_series_is_a_row_of_places()
    {
        var chart = ProofChart.Of(Seven with { Runs = [] });
        Assert.Equal(12, Count(chart, Ink.Empty));
        Assert.Contains("No run of 12 taken.", chart.Description, StringComparison.Ordinal);
    }
}
