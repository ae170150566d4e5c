using Ramwright.ServiceModels.Model;

namespace Ramwright.Planning.Map;

/// <summary>A part and where it lies, in millimetres: from x <see cref="Left"/> to <see cref="Right"/>, radii about its own axis at <see cref="Axis"/>.</summary>
internal sealed record PlacedPart(Part Part, double Left, double Right, double Inner, double Outer, double Axis, Outline Outline)
{
    /// <summary>Nothing is drawn thinner than this; millimetres.</summary>
    private const double Least = 0.5;

    /// <summary>Halfway along the axis; millimetres.</summary>
    public double Middle => (Left + Right) / 2;

    public MapBox Box => new(Left, Axis - Outer, Right, Axis + Outer);

    public bool IsHollow => Inner > 0;

    public static PlacedPart At(Part part, MapPlace place)
    {
        var left = Math.Min(place.From.Millimetres, place.To.Millimetres);
        var right = Math.Max(Math.Max(place.From.Millimetres, place.To.Millimetres), left + Least);
        var outer = Math.Max(Math.Max(place.Outer.Millimetres, place.Inner.Millimetres), Least);
        var inner = Math.Clamp(place.Inner.Millimetres, 0, outer - Least / 2);
        return new PlacedPart(part, left, right, inner, outer, place.Offset.Millimetres, place.Outline);
    }
}
