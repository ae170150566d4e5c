using System.Collections.Immutable;

namespace Ramwright.Paper.Drawing;

/// <summary>Where a text stands towards its spot.</summary>
public enum Anchor { Start, Middle, End }

/// <summary>Something laid down on a picture.</summary>
public abstract record Shape
{
    private Shape() { }

    /// <summary>A straight line.</summary>
    public sealed record Line(Ink Ink, Spot From, Spot To) : Shape;

    /// <summary>Straight lines through the spots; closed ones may be filled.</summary>
    public sealed record Polyline(Ink Ink, ImmutableArray<Spot> Spots, bool Closed) : Shape;

    /// <summary>Any outline of lines and curves.</summary>
    public sealed record Path(Ink Ink, ImmutableArray<Stretch> Stretches) : Shape;

    public sealed record Circle(Ink Ink, Spot Centre, double Radius) : Shape;

    public sealed record Rectangle(Ink Ink, Spot Corner, double Width, double Height) : Shape;

    /// <summary>One line of text on the base line through <paramref name="At"/>.</summary>
    /// <param name="Size">Height of the face in picture units.</param>
    public sealed record Text(Ink Ink, Spot At, string Words, double Size, Anchor Anchor = Anchor.Start, bool Bold = false) : Shape;

    /// <summary>Shapes that belong together, such as one part with its hatching; the words become the group's name when read out.</summary>
    /// <param name="Meaning">What the group stands for.</param>
    public sealed record Group(Ink Meaning, string? Words, ImmutableArray<Shape> Shapes) : Shape;
}

/// <summary>A stretch of a path.</summary>
public abstract record Stretch
{
    private Stretch() { }

    public sealed record MoveTo(Spot To) : Stretch;

    public sealed record LineTo(Spot To) : Stretch;

    /// <summary>A cubic Bézier curve.</summary>
    public sealed record CurveTo(Spot First, Spot Second, Spot To) : Stretch;

    public sealed record Close : Stretch;
}
