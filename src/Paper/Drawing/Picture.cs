using System.Collections.Immutable;

namespace Ramwright.Paper.Drawing;

/// <summary>A place on a picture, in its own units: x to the right, y downwards.</summary>
public readonly record struct Spot(double X, double Y)
{
    public Spot Shift(double dx, double dy) => new(X + dx, Y + dy);
}

/// <summary>
/// A line drawing, the same on screen (<see cref="Svg"/>) and on paper: shapes that say what they mean by their <see cref="Ink"/>,
/// never how they look. One unit is one CSS pixel or, on paper, one point at scale 1.
/// </summary>
/// <param name="Width">Above zero.</param>
/// <param name="Height">Above zero.</param>
/// <param name="Title">What the picture is, in a few words; read out in its stead.</param>
public sealed record Picture(double Width, double Height, string Title)
{
    /// <summary>What is to be seen on it, in a sentence or two, for those who do not see it.</summary>
    public string? Description { get; init; }

    /// <summary>Shapes in the order in which they are laid down.</summary>
    public ImmutableArray<Shape> Shapes { get; init; } = [];
}
