using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Drawing;

namespace Ramwright.Paper.Charts;

/// <summary>
/// The stroke chart: pressure above, current below, on one clock. Moments that part the phases are dotted lines with numbered balloons;
/// their words stand under the chart, so that moments close to each other stay legible.
/// </summary>
public static class StrokeChart
{
    public static Picture Of(StrokeChartInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return new StrokeChartLayout(input).Draw();
    }
}

/// <summary>One chart being laid out.</summary>
internal sealed class StrokeChartLayout
{
    private readonly StrokeChartInput input;
    private readonly Sketch sketch = new();
    private readonly double size, left, right, from, to, currentTop, currentBottom, mostAmperes;
    private readonly PressureAxis axis;

    public StrokeChartLayout(StrokeChartInput input)
    {
        this.input = input;
        size = input.LabelSize;
        (from, to) = (input.Rows[0].Seconds, input.Rows[^1].Seconds);
        var wordLines = (input.Moments.Length + 2) / 3;
        var room = input.Height - (size * (6.7 + (1.5 * wordLines)));
        var top = size * 3.2;
        var pressureBottom = top + (room * 0.62);
        (currentTop, currentBottom) = (pressureBottom + (size * 1.6), top + room);
        var high = input.Rows.Max(r => r.Pressure.Pascals);
        if (input.Window is { } window)
            high = Math.Max(high, window.Max.Pascals);
        axis = new(Pressure.FromPascals(0), Pressure.FromPascals(Math.Max(1.05 * high, 1e5)), top, pressureBottom, input.Units);
        mostAmperes = Math.Max(10, 1.05 * input.Rows.Max(r => r.Amperes));
        left = axis.Gutter(size, Pressure.FromPascals(high)) + (size * 0.6);
        right = input.Width - size;
    }

    public Picture Draw()
    {
        DrawFrame();
        DrawMoments();
        DrawLine(r => axis.Y(r.Pressure));
        DrawLine(r => CurrentY(r.Amperes));
        return sketch.Finish(input.Width, input.Height, $"Stroke of {input.Tool}: pressure and current against time", Describe());
    }

    private double X(double seconds) => left + ((seconds - from) / (to - from) * (right - left));

    private double CurrentY(double amperes) => currentBottom - (Math.Max(amperes, 0) / mostAmperes * (currentBottom - currentTop));

    private void DrawFrame()
    {
        var zero = axis.Y(Pressure.FromPascals(0));
        if (input.Window is { } window)
        {
            foreach (var limit in new[] { window.Max, window.Min })
            {
                sketch.Line(Ink.Guard, left, axis.Y(limit), right, axis.Y(limit));
                axis.Label(sketch, limit, left, size, bold: true);
            }
        }

        var step = NextRound((zero - (size * 3.2)) / (zero - axis.Y(Pressure.FromBar(1))) / 5);
        for (var bar = 0.0; axis.Y(Pressure.FromBar(bar)) > size * 3.2; bar += step)
            axis.Label(sketch, Pressure.FromBar(bar), left, size);
        sketch.Line(Ink.Frame, left, size * 3.2, left, zero);
        sketch.Line(Ink.Frame, left, zero, right, zero);
        sketch.Text(Ink.QuietWord, left - (size * 0.5), size * 1.1, axis.Unit, size * 0.9, Anchor.End);

        var ampereStep = NextRound(mostAmperes / 2.5);
        for (var amperes = 0.0; amperes <= mostAmperes; amperes += ampereStep)
            sketch.Text(Ink.Word, left - (size * 0.5), CurrentY(amperes) + (size * 0.36), amperes.ToString("0", CultureInfo.InvariantCulture), size, Anchor.End);
        sketch.Line(Ink.Frame, left, currentTop, left, currentBottom);
        sketch.Line(Ink.Frame, left, currentBottom, right, currentBottom);
        sketch.Text(Ink.QuietWord, left + (size * 0.5), currentTop + size, "A", size * 0.9);

        var second = NextRound((to - from) / 8);
        for (var s = Math.Ceiling(from / second) * second; s <= to; s += second)
        {
            sketch.Line(Ink.Rule, X(s), currentBottom, X(s), currentBottom + (size * 0.35));
            sketch.Text(Ink.Word, X(s), currentBottom + (size * 1.45), s.ToString("0.##", CultureInfo.InvariantCulture), size * 0.9, Anchor.Middle);
        }

        sketch.Text(Ink.QuietWord, right, currentBottom + (size * 2.7), "seconds", size * 0.9, Anchor.End);
    }

    /// <summary>Balloons stand over their lines, moved aside where they would cover each other; words in three columns below.</summary>
    private void DrawMoments()
    {
        var balloon = double.NegativeInfinity;
        for (var i = 0; i < input.Moments.Length; i++)
        {
            var x = X(input.Moments[i].Seconds);
            sketch.Line(Ink.Divider, x, size * 3.2, x, currentBottom);
            balloon = Math.Max(x, balloon + (size * 1.7));
            sketch.Line(Ink.Leader, x, size * 3.2, balloon, size * 2.1);
            sketch.Circle(Ink.Balloon, balloon, size * 1.3, size * 0.75);
            sketch.Text(Ink.Word, balloon, size * 1.6, $"{i + 1}", size * 0.85, Anchor.Middle, bold: true);
            var column = left + (i % 3 * (right - left) / 3);
            sketch.Text(Ink.Word, column, currentBottom + (size * (4.2 + (1.5 * (i / 3)))), string.Create(CultureInfo.InvariantCulture, $"{i + 1}  {input.Moments[i].Words}, {input.Moments[i].Seconds:0.00} s"), size * 0.9);
        }
    }

    /// <summary>One spot a picture unit, lowest and highest of the rows there, so that no peak is lost.</summary>
    private void DrawLine(Func<(double Seconds, Pressure Pressure, double Amperes), double> height)
    {
        var spots = ImmutableArray.CreateBuilder<Spot>();
        foreach (var column in input.Rows.GroupBy(r => (int)X(r.Seconds)))
        {
            var lowest = column.MaxBy(height);
            var highest = column.MinBy(height);
            foreach (var row in lowest.Seconds <= highest.Seconds ? new[] { lowest, highest } : [highest, lowest])
                spots.Add(new(X(row.Seconds), height(row)));
        }

        sketch.Open(Ink.Fit, spots.ToImmutable());
    }

    /// <summary>The next of 1, 2, 5 times a power of ten.</summary>
    private static double NextRound(double least)
    {
        var ten = Math.Pow(10, Math.Floor(Math.Log10(least)));
        return ten * ((least / ten) switch { <= 1 => 1, <= 2 => 2, <= 5 => 5, _ => 10 });
    }

    private string Describe() => $"Highest pressure {QuantityText.Show(input.Rows.MaxBy(r => r.Pressure.Pascals).Pressure, input.Units)}. "
        + string.Join("; ", input.Moments.Select(m => string.Create(CultureInfo.InvariantCulture, $"{m.Words} at {m.Seconds:0.00} s"))) + ".";
}
