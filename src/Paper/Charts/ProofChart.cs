using Ramwright.Metrology.Quantities;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;

namespace Ramwright.Paper.Charts;

/// <summary>
/// The proof chart: limits as strong lines, what is counted against the tool hatched, the nominal value a chain line,
/// runs as filled discs, void ones crossed, places still empty as dotted rings, as-found runs as open rings at the left.
/// </summary>
public static class ProofChart
{
    public static Picture Of(ProofChartInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        return new ProofChartLayout(input).Draw();
    }
}

/// <summary>One chart being laid out.</summary>
internal sealed class ProofChartLayout
{
    private readonly ProofChartInput input;
    private readonly Sketch sketch = new();
    private readonly PressureAxis axis;
    private readonly double size;
    private readonly double left;
    private readonly double right;
    private readonly double seriesLeft;
    private readonly double bottom;
    private readonly double disc;
    private readonly int slots;

    public ProofChartLayout(ProofChartInput input)
    {
        this.input = input;
        size = input.LabelSize;
        disc = size * 0.42;
        var below = input.AsFound.IsEmpty ? size * 1.9 : size * 3.3;
        bottom = input.Height - below;
        var (low, high) = Extent(input);
        axis = new(low, high, size * 1.9, bottom, input.Units);
        left = axis.Gutter(size, input.Limits.Min, input.Limits.Max, input.Nominal ?? input.Limits.Max, input.AsFound.IsEmpty ? input.Limits.Max : input.AsFound[0]);
        right = input.Width - 2;
        var foundRoom = input.AsFound.IsEmpty ? 0 : Math.Min(0.3 * input.Width, Math.Max(size * 6, input.AsFound.Length * FoundPitch));
        seriesLeft = left + foundRoom;
        var valid = input.Runs.Count(r => !r.Void);
        slots = Math.Max(1, input.Runs.Length + Math.Max(0, input.Planned - valid));
    }

    private double Pitch => (right - seriesLeft) / slots;

    private double FoundPitch => Typeface.Regular.WidthOf(axis.RunNumber(input.Limits.Max), size * 0.9) + (size * 0.7);

    public Picture Draw()
    {
        DrawLimits();
        DrawAsFound();
        for (var i = 0; i < slots; i++)
            DrawSlot(i);
        if (!input.AsFound.IsEmpty)
        {
            sketch.Text(Ink.QuietWord, (left + seriesLeft) / 2, input.Height - (size * 0.4), "as found", size, Anchor.Middle);
            sketch.Text(Ink.QuietWord, (seriesLeft + right) / 2, input.Height - (size * 0.4), "as left, runs in the order taken", size, Anchor.Middle);
        }

        return sketch.Finish(input.Width, input.Height, "Proof chart: peak of each full run against its limits", ProofChartWords.Describe(input));
    }

    /// <summary>All that must be on the chart and some air; the limits keep at least a third of the height.</summary>
    private static (Pressure Low, Pressure High) Extent(ProofChartInput input)
    {
        var window = input.Limits.Max - input.Limits.Min;
        var all = input.Runs.Where(r => !r.Void).Select(r => r.Peak).Concat(input.AsFound).Append(input.Limits.Min).Append(input.Limits.Max).ToArray();
        var low = Pressure.FromPascals(Math.Max(all.Min(p => p.Pascals), (input.Limits.Min - 2 * window).Pascals));
        var high = Pressure.FromPascals(Math.Min(all.Max(p => p.Pascals), (input.Limits.Max + 2 * window).Pascals));
        var air = 0.07 * (high - low);
        return (low - air, high + air);
    }

    private void DrawLimits()
    {
        var (yMax, yMin) = (axis.Y(input.Limits.Max), axis.Y(input.Limits.Min));
        DrawGuard(yMax, axis.Y(input.GuardHigh));
        DrawGuard(axis.Y(input.GuardLow), yMin);
        sketch.Line(Ink.Limit, left, yMax, right, yMax);
        sketch.Line(Ink.Limit, left, yMin, right, yMin);
        axis.Label(sketch, input.Limits.Max, left, size, bold: true);
        axis.Label(sketch, input.Limits.Min, left, size, bold: true);
        if (input.Nominal is { } nominal)
        {
            sketch.Line(Ink.Axis, left, axis.Y(nominal), right, axis.Y(nominal));
            axis.Label(sketch, nominal, left, size);
        }

        sketch.Text(Ink.QuietWord, left - (size * 0.5), size * 0.9, axis.Unit, size * 0.9, Anchor.End);
    }

    private void DrawGuard(double top, double bottomOfGuard)
    {
        var height = bottomOfGuard - top;
        if (height > 0.3)
            sketch.Add(Hatching.OfRectangle(Ink.Guard, new(left, top), right - left, Math.Min(height, bottom - top), size * 0.38));
    }

    private void DrawAsFound()
    {
        if (input.AsFound.IsEmpty)
            return;
        var pitch = (seriesLeft - left) / input.AsFound.Length;
        var labels = pitch >= FoundPitch - 0.01;
        for (var i = 0; i < input.AsFound.Length; i++)
        {
            var x = left + (pitch * (i + 0.5));
            var y = Kept(input.AsFound[i]);
            sketch.Circle(Ink.AsFound, x, y, disc);
            if (labels || i == input.AsFound.Length / 2)
                Value(x, y, axis.RunNumber(input.AsFound[i]), bold: false);
        }

        sketch.Line(Ink.Divider, seriesLeft, size * 0.6, seriesLeft, bottom + (size * 1.6));
    }

    private void DrawSlot(int i)
    {
        var x = seriesLeft + (Pitch * (i + 0.5));
        var wide = Pitch >= Typeface.Regular.WidthOf((slots).ToString(System.Globalization.CultureInfo.InvariantCulture), size * 0.9) + 3;
        if (wide || i % 5 == 4 || i == 0)
            sketch.Text(Ink.QuietWord, x, bottom + (size * 1.35), $"{i + 1}", size * 0.9, Anchor.Middle);
        if (i >= input.Runs.Length)
        {
            sketch.Circle(Ink.Empty, x, axis.Y(input.Nominal ?? input.Limits.Middle), disc);
            return;
        }

        var run = input.Runs[i];
        var y = Kept(run.Peak);
        if (run.Void)
        {
            sketch.Cross(Ink.Void, x, y, disc * 0.85);
            Value(x, y, "void", bold: false, isVoid: true);
            return;
        }

        sketch.Circle(Ink.Run, x, y, disc);
        var words = axis.RunNumber(run.Peak);
        if (input.ShowValues && (Pitch >= Typeface.Regular.WidthOf(words, size * 0.9) + 2 || i == input.Runs.Length - 1))
            Value(x, y, words, bold: i == input.Runs.Length - 1 && input.Runs.Length < slots);
    }

    /// <summary>A peak off the chart is drawn at its edge; its value says where it really lies.</summary>
    private double Kept(Pressure peak) => Math.Clamp(axis.Y(peak), (size * 1.9) - disc, bottom - disc);

    /// <summary>The value above its disc, or under it where a limit or the nominal line would run through it.</summary>
    private void Value(double x, double y, string words, bool bold, bool isVoid = false)
    {
        var (above, under) = (y - disc - (size * 0.35), y + disc + (size * 0.95));
        double[] lines = [axis.Y(input.Limits.Max), axis.Y(input.Limits.Min), axis.Y(input.Nominal ?? input.Limits.Max)];
        var crossed = lines.Any(line => line > above - (size * 0.85) && line < above + (size * 0.2));
        sketch.Text(isVoid ? Ink.PencilWord : Ink.Word, x, crossed ? under : above, words, size * 0.9, Anchor.Middle, bold);
    }
}
