using Ramwright.Metrology.Quantities;
using Ramwright.Paper.Charts;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Tests.Saltmarsh;
using Ramwright.Setting;

namespace Ramwright.Paper.Tests.Charts;

public sealed class ReliefChartTests
{
    private static readonly ReliefChartInput Two = new()
    {
        Window = House.Limits.Pressure,
        Nominal = House.Limits.Nominal,
        Maximum = House.Limits.Maximum,
        Runs = [new(Angle.FromTurns(0), Pressure.FromBar(612)), new(Angle.FromTurns(0.75), Pressure.FromBar(655))],
    };

    private static readonly SettingAdvice Up = new()
    {
        Outcome = SettingOutcome.Turn,
        Direction = TurnDirection.Clockwise,
        Turn = Angle.FromTurns(0.75),
        PriorBarPerTurn = 55,
        BarPerTurn = 58,
        PredictedMean = Pressure.FromBar(698),
        PredictedInterval = new(Pressure.FromBar(689), Pressure.FromBar(708)),
    };

    [Fact]
    public void Shows_the_next_point_to_the_right_of_a_clockwise_turn()
    {
        var chart = ReliefChart.Of(Two with { Advice = Up });
        var next = Assert.Single(chart.Shapes.OfType<Shape.Circle>(), c => c.Ink == Ink.Advised);
        Assert.All(chart.Shapes.OfType<Shape.Circle>().Where(c => c.Ink == Ink.Run), c => Assert.True(c.Centre.X < next.Centre.X && c.Centre.Y > next.Centre.Y));
        Assert.Contains("run 1 at 0°: 612 bar; run 2 at +270°: 655 bar. Advised next: +540°, expected 698 bar.", chart.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Shows_none_when_the_advice_is_to_stop() =>
        Assert.DoesNotContain(ReliefChart.Of(Two with { Advice = Up with { Direction = TurnDirection.Stop } }).Shapes, s => s is Shape.Circle { Ink: Ink.Advised });

    [Fact]
    public void Bears_no_run_one_run_and_a_screw_that_lowers()
    {
        Assert.Contains("No run yet", ReliefChart.Of(Two with { Runs = [] }).Description, StringComparison.Ordinal);
        ReliefChartInput[] inputs =
        [
            Two with { Runs = [], Advice = Up }, Two with { Runs = [Two.Runs[0]], Advice = Up },
            Two with { Advice = Up with { BarPerTurn = -58, Direction = TurnDirection.Anticlockwise } }, Two with { Advice = Up with { BarPerTurn = 0 } },
        ];
        foreach (var input in inputs)
        {
            var svg = Svg.Write(ReliefChart.Of(input));
            Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
            Assert.DoesNotContain("Infinity", svg, StringComparison.Ordinal);
        }
    }
}
