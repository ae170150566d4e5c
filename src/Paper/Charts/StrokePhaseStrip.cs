using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;

namespace Ramwright.Paper.Charts;

/// <summary>The names of the phases over a stroke chart: each in the middle of its phase, a row higher where its neighbour is in the way, with a thin line down to its phase.</summary>
internal static class StrokePhaseStrip
{
    /// <summary>Rows of names at most; a name that finds room in none is left out.</summary>
    public const int Rows = 3;

    public static void Draw(Sketch to, StrokeChartInput input, StrokeTimeScale time, double left, double right, double bottom, double size)
    {
        var ends = new double[Rows];
        Array.Fill(ends, double.NegativeInfinity);
        foreach (var phase in input.Phases)
        {
            var (from, until) = (time.X(phase.FromSeconds), time.X(phase.ToSeconds));
            var width = Typeface.Regular.WidthOf(phase.Words, size);
            var middle = Math.Clamp(0.5 * (from + until), left + (0.5 * width), right - (0.5 * width));
            var row = 0;
            while (row < Rows && middle - (0.5 * width) < ends[row] + (0.5 * size))
                row++;
            if (row == Rows)
                continue; // no room for it: a narrow chart leaves it to the moments
            ends[row] = middle + (0.5 * width);
            // A name that rises over its neighbours shuts the rows below it off: the line down must stay free.
            var line = bottom - (row * 1.35 * size);
            to.Text(Ink.Word, middle, line - (0.35 * size), phase.Words, size, Anchor.Middle);
            if (row == 0)
                continue;
            to.Line(Ink.Leader, 0.5 * (from + until), line, 0.5 * (from + until), bottom);
            for (var below = 0; below < row; below++)
                ends[below] = Math.Max(ends[below], (0.5 * (from + until)) + (0.1 * size));
        }
    }
}
