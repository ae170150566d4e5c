using System.Collections.Immutable;

namespace Ramwright.Paper.Drawing;

/// <summary>A picture in the making.</summary>
public sealed class Sketch
{
    private readonly ImmutableArray<Shape>.Builder shapes = ImmutableArray.CreateBuilder<Shape>();

    public void Add(Shape shape) => shapes.Add(shape);

    public void Line(Ink ink, double x1, double y1, double x2, double y2) => Add(new Shape.Line(ink, new(x1, y1), new(x2, y2)));

    public void Circle(Ink ink, double x, double y, double radius) => Add(new Shape.Circle(ink, new(x, y), radius));

    public void Rectangle(Ink ink, double x, double y, double width, double height) => Add(new Shape.Rectangle(ink, new(x, y), width, height));

    public void Closed(Ink ink, params ImmutableArray<Spot> spots) => Add(new Shape.Polyline(ink, spots, Closed: true));

    public void Open(Ink ink, params ImmutableArray<Spot> spots) => Add(new Shape.Polyline(ink, spots, Closed: false));

    public void Text(Ink ink, double x, double y, string words, double size, Anchor anchor = Anchor.Start, bool bold = false) =>
        Add(new Shape.Text(ink, new(x, y), words, size, anchor, bold));

    /// <summary>Two strokes across each other.</summary>
    public void Cross(Ink ink, double x, double y, double reach)
    {
        Line(ink, x - reach, y - reach, x + reach, y + reach);
        Line(ink, x - reach, y + reach, x + reach, y - reach);
    }

    public ImmutableArray<Shape> Shapes() => shapes.ToImmutable();

    public Picture Finish(double width, double height, string title, string? description = null) =>
        new(width, height, title) { Description = description, Shapes = Shapes() };
}
