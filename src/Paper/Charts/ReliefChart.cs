using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Drawing;
using Ramwright.Setting;

namespace Ramwright.Paper.Charts;

/// <summary>
/// The relief chart: pressure against screw turns. Window as strong lines with its space hatched outside, the maximum dashed,
/// runs as numbered discs, the fitted line with the region where the next run is expected, and the advised point as a ring.
/// </summary>
public static class ReliefChart
{
    public static Picture Of(ReliefChartInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return new ReliefChartLayout(input).Draw();
    }
}

/// <summary>One chart being laid out.</summary>
internal sealed class ReliefChartLayout
{
    private readonly ReliefChartInput input;
    private readonly Sketch sketch = new();
    private readonly PressureAxis axis;
    private readonly double size;
    private readonly double left;
    private readonly double right;
    private readonly double top;
    private readonly double bottom;
    private readonly double lowTurns;
    private readonly double highTurns;

    public ReliefChartLayout(ReliefChartInput input)
    {
        this.input = input;
        size = input.LabelSize;
        (top, bottom, right) = (size * 1.9, input.Height - (size * 3.3), input.Width - (size * 1.2));
        var all = input.Runs.Select(r => r.Peak).Append(input.Window.Min).Append(input.Window.Max).Append(input.Maximum)
            .Concat(input.Advice?.PredictedInterval is { } i ? [i.Min, i.Max] : (IEnumerable<Pressure>)[]).ToArray();
        var low = Pressure.FromPascals(all.Min(p => p.Pascals));
        var high = Pressure.FromPascals(all.Max(p => p.Pascals));
        var air = 0.08 * (high - low);
        axis = new(low - air, high + air, top, bottom, input.Units);
        left = axis.Gutter(size, input.Window.Min, input.Window.Max, input.Maximum);
        (lowTurns, highTurns) = TurnsShown();
    }

    /// <summary>Where the screw will stand after the advised turn; null without a turn.</summary>
    private double? NextTurns => input.Advice is { Direction: not TurnDirection.Stop } a && !input.Runs.IsEmpty
        ? input.Runs[^1].Screw.Turns + (a.Direction == TurnDirection.Clockwise ? a.Turn.Turns : -a.Turn.Turns)
        : null;

    public Picture Draw()
    {
        DrawWindow();
        DrawTicks();
        DrawFit();
        for (var i = 0; i < input.Runs.Length; i++)
            DrawRun(i);
        DrawNext();
        return sketch.Finish(input.Width, input.Height, "Relief chart: pressure against turns of the screw", Describe());
    }

    private (double Low, double High) TurnsShown()
    {
        var turns = input.Runs.Select(r => r.Screw.Turns).ToList();
        if (NextTurns is { } next)
            turns.Add(next);
        turns.Add(0);
        var (low, high) = (turns.Min(), turns.Max());
        var air = Math.Max((high - low) * 0.12, 1.0 / 24);
        return (low - air, high + air);
    }

    private double X(double turns) => left + ((turns - lowTurns) / (highTurns - lowTurns) * (right - left));

    private void DrawWindow()
    {
        var (yMax, yMin, yTop) = (axis.Y(input.Window.Max), axis.Y(input.Window.Min), axis.Y(input.Maximum));
        sketch.Add(Hatching.OfRectangle(Ink.Window, new(left, yMax - (size * 0.6)), right - left, size * 0.6, size * 0.38));
        sketch.Add(Hatching.OfRectangle(Ink.Window, new(left, yMin), right - left, size * 0.6, size * 0.38));
        sketch.Line(Ink.Limit, left, yMax, right, yMax);
        sketch.Line(Ink.Limit, left, yMin, right, yMin);
        sketch.Line(Ink.Maximum, left, yTop, right, yTop);
        sketch.Text(Ink.PencilWord, left + (size * 0.4), yTop - (size * 0.4), "maximum", size * 0.9);
        axis.Label(sketch, input.Maximum, left, size);
        axis.Label(sketch, input.Window.Max, left, size, bold: true);
        axis.Label(sketch, input.Window.Min, left, size, bold: true);
        if (input.Nominal is { } nominal)
        {
            sketch.Line(Ink.Axis, left, axis.Y(nominal), right, axis.Y(nominal));
            axis.Label(sketch, nominal, left, size);
        }

        if (!input.Runs.IsEmpty)
            axis.Label(sketch, input.Runs[0].Peak, left, size);
        sketch.Text(Ink.QuietWord, left - (size * 0.5), size * 0.9, axis.Unit, size * 0.9, Anchor.End);
    }

    private void DrawTicks()
    {
        sketch.Line(Ink.Rule, left, bottom, right, bottom);
        ReadOnlySpan<int> steps = [15, 30, 60, 90, 180, 360, 720, 1440, 3600];
        var span = (highTurns - lowTurns) * 360;
        var step = 36_000;
        foreach (var s in steps)
        {
            if (span / s <= 8)
            {
                step = s;
                break;
            }
        }

        for (var d = Math.Ceiling(lowTurns * 360 / step) * step; d <= highTurns * 360; d += step)
        {
            sketch.Line(Ink.Rule, X(d / 360), bottom, X(d / 360), bottom + (size * 0.35));
            sketch.Text(Ink.Word, X(d / 360), bottom + (size * 1.45), Signed(d), size * 0.9, Anchor.Middle);
        }

        sketch.Text(Ink.QuietWord, (left + right) / 2, input.Height - (size * 0.4), "screw from as found, clockwise counts up", size, Anchor.Middle);
    }

    private static string Signed(double degrees) => (degrees > 0 ? "+" : "") + QuantityText.Show(Angle.FromDegrees(degrees), UnitSystem.Metric, 0);

    /// <summary>The advised gain through the middle of the runs, inside the frame.</summary>
    private void DrawFit()
    {
        if (input.Advice is not { } advice || input.Runs.Length == 0)
            return;
        var (t0, p0) = (input.Runs.Average(r => r.Screw.Turns), input.Runs.Average(r => r.Peak.Bar));
        if (NextTurns is { } next && advice.PredictedInterval is { } interval)
        {
            var last = input.Runs[^1].Screw.Turns;
            var on = axis.Y(Pressure.FromBar(p0 + (advice.BarPerTurn * (last - t0))));
            sketch.Closed(Ink.Band, new Spot(X(last), on), new Spot(X(next), axis.Y(interval.Max)), new Spot(X(next), axis.Y(interval.Min)));
        }

        var (a, b) = (Inside(lowTurns), Inside(highTurns));
        sketch.Line(Ink.Fit, X(a), axis.Y(At(a)), X(b), axis.Y(At(b)));

        Pressure At(double turns) => Pressure.FromBar(p0 + (advice.BarPerTurn * (turns - t0)));
        double Inside(double turns)
        {
            var y = Math.Clamp(axis.Y(At(turns)), top, bottom);
            return Math.Abs(advice.BarPerTurn) < 1e-9 || y == axis.Y(At(turns)) ? turns : t0 + ((turns - t0) * (y - axis.Y(At(t0))) / (axis.Y(At(turns)) - axis.Y(At(t0))));
        }
    }

    private void DrawRun(int i)
    {
        var (x, y) = (X(input.Runs[i].Screw.Turns), axis.Y(input.Runs[i].Peak));
        sketch.Circle(Ink.Run, x, y, size * 0.72);
        sketch.Text(Ink.PaperWord, x, y + (size * 0.3), $"{i + 1}", size * 0.85, Anchor.Middle, bold: true);
        sketch.Text(Ink.Word, x + (size * 1.05), y + (size * 1.1), axis.RunNumber(input.Runs[i].Peak), size * 0.9);
    }

    private void DrawNext()
    {
        if (NextTurns is not { } next || input.Advice?.PredictedMean is not { } mean)
            return;
        var x = X(next);
        if (input.Advice.PredictedInterval is { } interval)
        {
            sketch.Line(Ink.Fit, x, axis.Y(interval.Max), x, axis.Y(interval.Min));
            sketch.Line(Ink.Fit, x - (size * 0.4), axis.Y(interval.Max), x + (size * 0.4), axis.Y(interval.Max));
            sketch.Line(Ink.Fit, x - (size * 0.4), axis.Y(interval.Min), x + (size * 0.4), axis.Y(interval.Min));
        }

        sketch.Circle(Ink.Advised, x, axis.Y(mean), size * 0.72);
        sketch.Text(Ink.Word, x, Math.Min(axis.Y(input.Advice.PredictedInterval?.Min ?? mean) + (size * 1.3), bottom - (size * 0.3)), "next, " + Signed(next * 360), size * 0.9, Anchor.Middle, bold: true);
    }

    private string Describe()
    {
        var runs = string.Join("; ", input.Runs.Select((r, i) => $"run {i + 1} at {Signed(r.Screw.Degrees)}: {QuantityText.Show(r.Peak, input.Units)}"));
        var next = NextTurns is { } n && input.Advice?.PredictedMean is { } mean ? $" Advised next: {Signed(n * 360)}, expected {QuantityText.Show(mean, input.Units)}." : "";
        return $"Window {QuantityText.Show(input.Window, input.Units)}, maximum {QuantityText.Show(input.Maximum, input.Units)}. {(runs.Length == 0 ? "No run yet" : runs)}.{next}";
    }
}
