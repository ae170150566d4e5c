using System.Collections.Frozen;

namespace Ramwright.Fluids.Classes;

/// <summary>How well a rubber bears a class of fluid.</summary>
public enum Bearing
{
    /// <summary>Nothing is known here.</summary>
    Unknown,
    Good,

    /// <summary>Good or limited, by compound and temperature.</summary>
    GoodToLimited,
    Limited,
    NotSuitable,
}

/// <summary>A usual guidance and what to watch.</summary>
public sealed record Guidance(Bearing Bearing, string? Remark);

/// <summary>Rubbers against fluid classes: first-order guidance. The immersion test of the compound's maker (ISO 6072 test rubbers) decides.</summary>
/// <remarks>From memory of the annex of ISO 15380 and of seal handbooks; for advice, never for refusing.</remarks>
public static class Compatibility
{
    private static readonly FrozenDictionary<(string, string), Guidance> Known = Table().ToFrozenDictionary(r => (r.Fluid, r.Elastomer), r => r.Guidance);

    /// <summary>The guidance for a fluid class (ISO 6743-4) and a rubber (ISO 1629); unknown where none is usual.</summary>
    public static Guidance Of(string fluidClass, string elastomer) => Known.GetValueOrDefault((fluidClass, elastomer)) ?? new(Bearing.Unknown, null);

    private static IEnumerable<(string Fluid, string Elastomer, Guidance Guidance)> Table()
    {
        foreach (var mineral in (string[])["HH", "HL", "HM", "HV"])
        {
            yield return (mineral, "NBR", new(Bearing.Good, null));
            yield return (mineral, "HNBR", new(Bearing.Good, null));
            yield return (mineral, "FKM", new(Bearing.Good, null));
            yield return (mineral, "AU", new(Bearing.Good, "watch water and heat"));
            yield return (mineral, "EPDM", new(Bearing.NotSuitable, "it swells in hydrocarbon oil"));
            yield return (mineral, "VMQ", new(Bearing.NotSuitable, "it is sensitive to mineral oil"));
        }

        yield return ("HETG", "NBR", new(Bearing.GoodToLimited, "up to about 80 °C"));
        yield return ("HETG", "HNBR", new(Bearing.Good, null));
        yield return ("HETG", "FKM", new(Bearing.Good, null));
        yield return ("HETG", "AU", new(Bearing.Good, "grades that resist hydrolysis"));
        yield return ("HETG", "EPDM", new(Bearing.NotSuitable, null));
        yield return ("HEES", "NBR", new(Bearing.Limited, "it may swell, by its acrylonitrile content and the ester"));
        yield return ("HEES", "HNBR", new(Bearing.GoodToLimited, null));
        yield return ("HEES", "FKM", new(Bearing.Good, "the usual first choice"));
        yield return ("HEES", "AU", new(Bearing.Limited, "grades that resist hydrolysis"));
        yield return ("HEES", "EPDM", new(Bearing.NotSuitable, null));
        yield return ("HEPG", "NBR", new(Bearing.Limited, null));
        yield return ("HEPG", "HNBR", new(Bearing.GoodToLimited, null));
        yield return ("HEPG", "FKM", new(Bearing.Good, "peroxide-cured grades"));
        yield return ("HEPG", "EPDM", new(Bearing.Good, "only where the polyglycol is free of mineral oil"));
        yield return ("HEPG", "AU", new(Bearing.NotSuitable, "polyglycol attacks many polyurethanes"));
        yield return ("HEPR", "NBR", new(Bearing.GoodToLimited, "it may shrink a little"));
        yield return ("HEPR", "HNBR", new(Bearing.Good, null));
        yield return ("HEPR", "FKM", new(Bearing.Good, null));
        yield return ("HEPR", "EPDM", new(Bearing.NotSuitable, null));
        yield return ("HFC", "NBR", new(Bearing.Good, null));
        yield return ("HFC", "EPDM", new(Bearing.Good, null));
        yield return ("HFC", "AU", new(Bearing.NotSuitable, "hydrolysis"));
        yield return ("HFC", "FKM", new(Bearing.Limited, null));
        yield return ("HFDR", "EPDM", new(Bearing.Good, null));
        yield return ("HFDR", "FKM", new(Bearing.GoodToLimited, "by the kind of phosphate ester"));
        yield return ("HFDR", "NBR", new(Bearing.NotSuitable, null));
    }
}
