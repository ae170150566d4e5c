using System.Collections.Immutable;
using System.Globalization;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;

namespace Ramwright.Paper.Charts;

/// <summary>
/// The stroke chart: pressure above, current below, on one clock. Phases are bands with names; moments that part them are dotted lines with numbered balloons,
/// their words under the chart, so that moments close to each other stay legible. A fitted curve is laid over what was recorded.
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
    private readonly double size, left, right, top, pressureBottom, currentTop, currentBottom, mostAmperes;
    private readonly int wordColumns;
    private readonly bool hasPressure, hasCurrent;
    private readonly PressureAxis axis;
    private readonly StrokeTimeScale time;

    public StrokeChartLayout(StrokeChartInput input)
    {
        this.input = input;
        size = input.LabelSize;
        (hasPressure, hasCurrent) = (input.Rows.Any(r => r.Pressure is not null), input.Rows.Any(r => r.Amperes is not null));
        wordColumns = Math.Clamp((int)(input.Width / (14 * size)), 1, 3);
        var wordLines = (input.Moments.Length + wordColumns - 1) / wordColumns;
        var phaseRoom = input.Phases.IsEmpty ? 0 : size * 1.35 * (StrokePhaseStrip.Rows - 0.6);
        var room = input.Height - phaseRoom - (size * (6.7 + (1.5 * wordLines)));
        top = phaseRoom + (size * 3.2);
        pressureBottom = hasPressure ? top + (room * (hasCurrent ? 0.62 : 1)) : top;
        (currentTop, currentBottom) = (hasPressure ? pressureBottom + (size * 1.6) : top, hasCurrent ? top + room : pressureBottom);
        var high = input.Rows.Max(r => r.Pressure?.Pascals ?? 0);
        if (input.Window is { } window)
            high = Math.Max(high, window.Max.Pascals);
        axis = new(Pressure.FromPascals(0), Pressure.FromPascals(Math.Max(1.05 * high, 1e5)), top, pressureBottom, input.Units);
        mostAmperes = Math.Max(10, 1.05 * input.Rows.Max(r => r.Amperes ?? 0));
        left = axis.Gutter(size, Pressure.FromPascals(high)) + (size * 0.6);
        right = input.Width - size;
        time = new(input, left, right);
    }

    public Picture Draw()
    {
        DrawPhases();
        if (hasPressure)
            DrawPressureFrame();
        if (hasCurrent)
            DrawCurrentFrame();
        DrawTime();
        DrawMoments();
        var ink = input.Fitted.IsEmpty ? Ink.Fit : Ink.Detail; // what was recorded steps back behind what was fitted
        DrawLine(ink, input.Rows.Where(r => r.Pressure is not null).Select(r => (r.Seconds, axis.Y(r.Pressure!.Value))));
        DrawLine(ink, input.Rows.Where(r => r.Amperes is not null).Select(r => (r.Seconds, CurrentY(r.Amperes!.Value))));
        DrawLine(Ink.Fit, input.Fitted.Select(f => (f.Seconds, axis.Y(f.Pressure))));
        return sketch.Finish(input.Width, input.Height, $"Stroke of {input.Tool}: {(hasPressure && hasCurrent ? "pressure and current" : hasPressure ? "pressure" : "current")} against time", Describe());
    }

    private double CurrentY(double amperes) => currentBottom - (Math.Max(amperes, 0) / mostAmperes * (currentBottom - currentTop));

    /// <summary>Every second phase stands on a band, so that its ends are seen down to the clock; names over them.</summary>
    private void DrawPhases()
    {
        for (var i = 1; i < input.Phases.Length; i += 2)
        {
            var x = time.X(input.Phases[i].FromSeconds);
            sketch.Rectangle(Ink.Band, x, top, time.X(input.Phases[i].ToSeconds) - x, currentBottom - top);
        }

        StrokePhaseStrip.Draw(sketch, input, time, left, right, top - (size * 0.1), size * 0.9);
    }

    private void DrawPressureFrame()
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

        var step = NextRound((zero - top) / (zero - axis.Y(Pressure.FromBar(1))) / 5);
        for (var bar = 0.0; axis.Y(Pressure.FromBar(bar)) > top; bar += step)
            axis.Label(sketch, Pressure.FromBar(bar), left, size);
        sketch.Line(Ink.Frame, left, top, left, zero);
        sketch.Line(Ink.Frame, left, zero, right, zero);
        sketch.Text(Ink.QuietWord, left - (size * 0.5), top - (size * 1.1), axis.Unit, size * 0.9, Anchor.End);
    }

    private void DrawCurrentFrame()
    {
        var step = NextRound(mostAmperes / 2.5);
        for (var amperes = 0.0; amperes <= mostAmperes; amperes += step)
            sketch.Text(Ink.Word, left - (size * 0.5), CurrentY(amperes) + (size * 0.36), amperes.ToString("0", CultureInfo.InvariantCulture), size, Anchor.End);
        sketch.Line(Ink.Frame, left, currentTop, left, currentBottom);
        sketch.Line(Ink.Frame, left, currentBottom, right, currentBottom);
        sketch.Text(Ink.QuietWord, left + (size * 0.5), currentTop + size, "A", size * 0.9);
    }

    /// <summary>Even time has round seconds; stretched time has the ends of its phases, where they do not run into each other.</summary>
    private void DrawTime()
    {
        var (from, to) = (input.Rows[0].Seconds, input.Rows[^1].Seconds);
        var second = NextRound((to - from) / 8);
        var even = Enumerable.Range(0, 20).Select(i => (Math.Ceiling(from / second) + i) * second).TakeWhile(s => s <= to);
        var taken = double.NegativeInfinity;
        foreach (var s in time.IsEven ? even : time.Ends)
        {
            var x = time.X(s);
            sketch.Line(Ink.Rule, x, currentBottom, x, currentBottom + (size * 0.35));
            var words = s.ToString(time.IsEven ? "0.##" : "0.00", CultureInfo.InvariantCulture);
            var half = 0.5 * Typeface.Regular.WidthOf(words, size * 0.9);
            var middle = Math.Min(x, input.Width - half);
            if (middle - half < taken + (size * 0.4))
                continue;
            taken = middle + half;
            sketch.Text(Ink.Word, middle, currentBottom + (size * 1.45), words, size * 0.9, Anchor.Middle);
        }

        sketch.Text(Ink.QuietWord, right, currentBottom + (size * 2.7), time.IsEven ? "seconds" : "seconds, stretched where much happens", size * 0.9, Anchor.End);
    }

    /// <summary>Balloons stand over their lines, moved aside where they would cover each other; words in three columns below.</summary>
    private void DrawMoments()
    {
        var names = input.Phases.IsEmpty ? top : top - (size * 1.35 * (StrokePhaseStrip.Rows - 0.6));
        var spots = Balloons();
        for (var i = 0; i < input.Moments.Length; i++)
        {
            var x = time.X(input.Moments[i].Seconds);
            sketch.Line(Ink.Divider, x, names, x, currentBottom);
            sketch.Line(Ink.Leader, x, names, spots[i], names - (size * 1.1));
            sketch.Circle(Ink.Balloon, spots[i], names - (size * 1.9), size * 0.75);
            sketch.Text(Ink.Word, spots[i], names - (size * 1.6), $"{i + 1}", size * 0.85, Anchor.Middle, bold: true);
            var column = left + (i % wordColumns * (right - left) / wordColumns);
            sketch.Text(Ink.Word, column, currentBottom + (size * (4.2 + (1.5 * (i / wordColumns)))), string.Create(CultureInfo.InvariantCulture, $"{i + 1}  {input.Moments[i].Words}, {input.Moments[i].Seconds:0.00} s"), size * 0.9);
        }
    }

    /// <summary>Where the balloons stand: over their moments, pushed right where they crowd, and back left where they would leave the chart.</summary>
    private double[] Balloons()
    {
        var spots = input.Moments.Select(m => time.X(m.Seconds)).ToArray();
        for (var i = 1; i < spots.Length; i++)
            spots[i] = Math.Max(spots[i], spots[i - 1] + (size * 1.7));
        var limit = input.Width - (size * 0.8);
        for (var i = spots.Length - 1; i >= 0; i--, limit -= size * 1.7)
            spots[i] = Math.Min(spots[i], limit);
        return spots;
    }

    /// <summary>One spot a picture unit, lowest and highest of the rows there, so that no peak is lost.</summary>
    private void DrawLine(Ink ink, IEnumerable<(double Seconds, double Y)> rows)
    {
        var spots = ImmutableArray.CreateBuilder<Spot>();
        foreach (var column in rows.GroupBy(r => (int)time.X(r.Seconds)))
        {
            var lowest = column.MaxBy(r => r.Y);
            var highest = column.MinBy(r => r.Y);
            foreach (var row in lowest.Seconds <= highest.Seconds ? new[] { lowest, highest } : [highest, lowest])
                spots.Add(new(time.X(row.Seconds), row.Y));
        }

        if (spots.Count > 0)
            sketch.Open(ink, spots.ToImmutable());
    }

    /// <summary>The next of 1, 2, 5 times a power of ten.</summary>
    private static double NextRound(double least)
    {
        var ten = Math.Pow(10, Math.Floor(Math.Log10(least)));
        return ten * ((least / ten) switch { <= 1 => 1, <= 2 => 2, <= 5 => 5, _ => 10 });
    }

    private string Describe()
    {
        var highest = input.Rows.Where(r => r.Pressure is not null).Select(r => r.Pressure!.Value).DefaultIfEmpty().MaxBy(p => p.Pascals);
        var words = input.Moments.Select(m => string.Create(CultureInfo.InvariantCulture, $"{m.Words} at {m.Seconds:0.00} s"))
            .Concat(input.Phases.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Words} from {p.FromSeconds:0.00} to {p.ToSeconds:0.00} s")));
        return (hasPressure ? $"Highest pressure {QuantityText.Show(highest, input.Units)}. " : "") + string.Join("; ", words) + ".";
    }
}
