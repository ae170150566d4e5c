using System.Collections.Immutable;

namespace Ramwright.ServiceModels.Keys;

/// <summary>Lengths of made tools. Each shape uses those that it has.</summary>
internal static class MadeDimensions
{
    private static readonly (string Name, string Meaning)[] Known =
    [
        ("for-diameter", "diameter of the part it grips"),
        ("pin-circle", "diameter of the circle on which the pins stand"),
        ("pin-diameter", "diameter of a pin"),
        ("pin-engagement", "depth to which a pin goes into its hole"),
        ("pin-gap", "gap between the tool's face and the part, bridged by the pin"),
        ("handle", "length from the axis to the hand"),
        ("thickness", "thickness of the plate or jaw"),
        ("width", "width"),
        ("height", "height"),
        ("length", "length"),
        ("bore", "bore through it"),
        ("wall", "wall thickness"),
        ("outer-diameter", "outer diameter"),
        ("inner-diameter", "inner diameter"),
        ("small-diameter", "diameter of the narrow end of a cone"),
        ("large-diameter", "diameter of the wide end of a cone"),
        ("slot-width", "width of a slot"),
        ("slot-length", "length of a slot along the axis"),
        ("prong-width", "width of a prong along the circumference"),
        ("prong-length", "free length of a prong"),
        ("prong-thickness", "radial thickness of a prong"),
        ("prong-circle", "mean diameter on which the prongs stand"),
        ("across-flats", "width across flats"),
        ("drive", "square drive, side"),
        ("offset", "distance from the drive to the part's axis, for a crow-foot or an offset wrench"),
        ("wrench-length", "length of the torque wrench from drive to grip"),
        ("rod-diameter", "diameter of a rod"),
        ("plate-thickness", "thickness of a plate"),
        ("travel", "how far it moves"),
        ("depth", "depth"),
        ("radius", "radius"),
    ];

    public static ImmutableArray<string> Names { get; } = [.. Known.Select(k => k.Name)];

    public static ImmutableArray<Key> Keys { get; } = [.. Known.Select(k => new Key(k.Name, Values.Length, k.Meaning, "12 mm"))];
}
