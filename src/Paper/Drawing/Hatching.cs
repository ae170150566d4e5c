using System.Collections.Immutable;

namespace Ramwright.Paper.Drawing;

/// <summary>Hatch lines at 45° clipped to a closed outline: drawn as lines, so that screen and paper show the same and no pattern needs an id.</summary>
public static class Hatching
{
    /// <summary>The hatching of a polygon; holes are further rings (even-odd).</summary>
    /// <param name="spacing">Distance between lines in picture units, above zero.</param>
    /// <param name="falling">True leans the other way, for the neighbour of a hatched part.</param>
    public static Shape Of(Ink ink, double spacing, bool falling, params ImmutableArray<ImmutableArray<Spot>> rings)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(spacing);
        var stretches = ImmutableArray.CreateBuilder<Stretch>();
        var lean = falling ? -1.0 : 1.0;
        // On a 45° line x + lean·y is constant; neighbours differ by spacing·√2. Multiples of it, so that hatchings side by side line up.
        var step = spacing * Math.Sqrt(2);
        var keys = rings.SelectMany(r => r).Select(s => s.X + (lean * s.Y)).DefaultIfEmpty(0).ToArray();
        var first = Math.Ceiling(keys.Min() / step);
        var last = Math.Min(Math.Floor(keys.Max() / step), first + 4_000);
        for (var i = first; i <= last; i++)
            Cross(stretches, rings, lean, i * step);
        return new Shape.Path(ink, stretches.ToImmutable());
    }

    /// <summary>The hatching of a rectangle.</summary>
    public static Shape OfRectangle(Ink ink, Spot corner, double width, double height, double spacing, bool falling = false) =>
        Of(ink, spacing, falling, [corner, corner.Shift(width, 0), corner.Shift(width, height), corner.Shift(0, height)]);

    /// <summary>The hatching of a disc.</summary>
    public static Shape OfCircle(Ink ink, Spot centre, double radius, double spacing, bool falling = false) =>
        Of(ink, spacing, falling, [.. Enumerable.Range(0, 48).Select(i => centre.Shift(radius * Math.Cos(i * Math.PI / 24), radius * Math.Sin(i * Math.PI / 24)))]);

    private static void Cross(ImmutableArray<Stretch>.Builder to, ImmutableArray<ImmutableArray<Spot>> rings, double lean, double key)
    {
        var hits = new List<Spot>();
        foreach (var ring in rings)
        {
            for (var i = 0; i < ring.Length; i++)
            {
                var (a, b) = (ring[i], ring[(i + 1) % ring.Length]);
                var (ka, kb) = (a.X + (lean * a.Y) - key, b.X + (lean * b.Y) - key);
                if (ka < 0 == kb < 0)
                    continue;
                var t = ka / (ka - kb);
                hits.Add(new(a.X + (t * (b.X - a.X)), a.Y + (t * (b.Y - a.Y))));
            }
        }

        hits.Sort((p, q) => p.X.CompareTo(q.X));
        for (var i = 0; i + 1 < hits.Count; i += 2)
        {
            to.Add(new Stretch.MoveTo(hits[i]));
            to.Add(new Stretch.LineTo(hits[i + 1]));
        }
    }
}
