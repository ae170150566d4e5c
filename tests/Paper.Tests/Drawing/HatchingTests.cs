using System.Collections.Immutable;
using CsCheck;
using Ramwright.Paper.Drawing;

namespace Ramwright.Paper.Tests.Drawing;

public sealed class HatchingTests
{
    private static double Length(Shape hatching) => ((Shape.Path)hatching).Stretches.Chunk(2).Sum(pair =>
    {
        var (a, b) = (((Stretch.MoveTo)pair[0]).To, ((Stretch.LineTo)pair[1]).To);
        return Math.Sqrt(Math.Pow(b.X - a.X, 2) + Math.Pow(b.Y - a.Y, 2));
    });

    // Cavalieri: lines a distance d apart measure an area as d times their length.
    [Fact]
    public void Measures_the_area_it_covers() => Gen.Select(Gen.Double[20, 200], Gen.Double[20, 200], Gen.Bool).ForAll((width, height, falling) =>
    {
        var area = 0.5 * Length(Hatching.OfRectangle(Ink.Hatch, new(3, 7), width, height, 0.5, falling));
        return Math.Abs(area - (width * height)) < 0.02 * width * height;
    }, iter: 100);

    [Fact]
    public void Leaves_a_hole_free()
    {
        ImmutableArray<Spot> outer = [new(0, 0), new(100, 0), new(100, 100), new(0, 100)];
        ImmutableArray<Spot> hole = [new(20, 20), new(80, 20), new(80, 80), new(20, 80)];
        Assert.Equal((100 * 100) - (60 * 60), 0.25 * Length(Hatching.Of(Ink.Hatch, 0.25, false, outer, hole)), tolerance: 60.0);
    }
}
