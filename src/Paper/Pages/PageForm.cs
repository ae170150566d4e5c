using Ramwright.Paper.Sheets;

namespace Ramwright.Paper.Pages;

/// <summary>Measures of a page in points. The frame leaves 20 mm at the left for filing and 10 mm elsewhere (ISO 5457, from memory).</summary>
public sealed record PageForm(double Width, double Height, string Name)
{
    public const double PointsPerMillimetre = 72 / 25.4;

    public static PageForm Of(PaperSize size) => size == PaperSize.A4 ? new(595.276, 841.890, "A4") : new(612, 792, "Letter");

    public double FrameLeft => 20 * PointsPerMillimetre;

    public double FrameRight => Width - (10 * PointsPerMillimetre);

    public double FrameTop => 10 * PointsPerMillimetre;

    public double FrameBottom => Height - (10 * PointsPerMillimetre);

    /// <summary>Space between frame and content.</summary>
    public static double Inset => 20;

    public double ContentLeft => FrameLeft + Inset;

    public double ContentWidth => FrameRight - FrameLeft - (2 * Inset);
}
