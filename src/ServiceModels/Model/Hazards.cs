using System.Collections.Immutable;

namespace Ramwright.ServiceModels.Model;

/// <summary>The warning sign that stands beside a caution (ISO 7010, numbers from memory).</summary>
public enum HazardSign
{
    /// <summary>General warning, W001.</summary>
    General,

    /// <summary>Electricity, W012.</summary>
    Electricity,

    /// <summary>Hot surface, W017.</summary>
    HotSurface,
}

/// <summary>A hazard word of the service model.</summary>
/// <param name="Word">As it is written in a model.</param>
/// <param name="Meaning">What can happen.</param>
public sealed record Hazard(string Word, string Meaning, HazardSign Sign = HazardSign.General);

/// <summary>The hazard words of cautions; each chooses a sign.</summary>
public static class Hazards
{
    /// <summary>Words and what they mean, in the order of the reference page.</summary>
    public static ImmutableArray<Hazard> All { get; } =
    [
        new("oil-injection", "oil under pressure goes through skin and glove; an emergency at once, however small the wound looks"),
        new("stored-pressure", "pressure is still shut in although the tool is off"),
        new("stored-spring-energy", "a spring pushes as soon as it is let go"),
        new("flying-parts", "rings, pins and cut ends fly"),
        new("crush", "jaws, ram or press close on a hand"),
        new("sharp-edge", "edges and blades cut"),
        new("hot-surface", "surfaces or oil burn", HazardSign.HotSurface),
        new("battery-short", "a pack is shorted, pierced or swollen: fire", HazardSign.Electricity),
        new("oil-on-skin", "oil on skin, in eyes, on the floor"),
        new("chemical", "cleaners, adhesives, vapours"),
        new("heavy-load", "the work is heavy or tips over"),
        new("damage", "nobody is hurt, but a part is spoilt"),
    ];

    /// <summary>The sign of a word; the general one for a word of the model's own.</summary>
    public static HazardSign SignOf(string word) => All.FirstOrDefault(h => h.Word == word)?.Sign ?? HazardSign.General;
}
