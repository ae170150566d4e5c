using System.Collections.Immutable;

namespace Ramwright.ServiceModels.Model;

/// <summary>The hazard words of cautions; each chooses a sign.</summary>
public static class Hazards
{
    /// <summary>Words and what they mean, in the order of the reference page.</summary>
    public static ImmutableArray<(string Word, string Meaning)> All { get; } =
    [
        ("oil-injection", "oil under pressure goes through skin and glove; an emergency at once, however small the wound looks"),
        ("stored-pressure", "pressure is still shut in although the tool is off"),
        ("stored-spring-energy", "a spring pushes as soon as it is let go"),
        ("flying-parts", "rings, pins and cut ends fly"),
        ("crush", "jaws, ram or press close on a hand"),
        ("sharp-edge", "edges and blades cut"),
        ("hot-surface", "surfaces or oil burn"),
        ("battery-short", "a pack is shorted, pierced or swollen: fire"),
        ("oil-on-skin", "oil on skin, in eyes, on the floor"),
        ("chemical", "cleaners, adhesives, vapours"),
        ("heavy-load", "the work is heavy or tips over"),
        ("damage", "nobody is hurt, but a part is spoilt"),
    ];
}
