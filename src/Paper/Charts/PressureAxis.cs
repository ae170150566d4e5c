using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Drawing;
using Ramwright.Paper.Lettering;

namespace Ramwright.Paper.Charts;

/// <summary>The upright axis of a chart: pressures between a bottom and a top, and labels at its left that do not run into each other.</summary>
internal sealed class PressureAxis(Pressure low, Pressure high, double top, double bottom, UnitSystem units)
{
    private readonly List<double> taken = [];

    public UnitSystem Units => units;

    public string Unit => QuantityText.Parts(low, units).Unit;

    public double Y(Pressure p) => bottom - ((p - low) / (high - low) * (bottom - top));

    public string Number(Pressure p, int? decimals = null) => QuantityText.Parts(p, units, decimals).Number;

    /// <summary>Value of a run in as many places as tell runs apart: tenths of a bar, whole psi.</summary>
    public string RunNumber(Pressure p) => Number(p, units == UnitSystem.Metric ? 1 : 0);

    /// <summary>A label whose middle stands at the pressure's height, left of <paramref name="right"/>; left out when there is no room.</summary>
    public void Label(Sketch to, Pressure p, double right, double size, string? words = null, bool bold = false)
    {
        var y = Y(p);
        if (taken.Exists(t => Math.Abs(t - y) < size * 1.15))
            return;
        taken.Add(y);
        to.Text(Ink.Word, right - (size * 0.5), y + (size * 0.36), words ?? Number(p), size, Anchor.End, bold);
    }

    /// <summary>Room that the labels need.</summary>
    public double Gutter(double size, params ReadOnlySpan<Pressure> labels)
    {
        var widest = Typeface.Regular.WidthOf(Unit, size);
        foreach (var p in labels)
            widest = Math.Max(widest, Typeface.Regular.WidthOf(Number(p), size));
        return widest + (size * 0.9);
    }
}
