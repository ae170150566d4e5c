using System.Collections.Immutable;

namespace Ramwright.Seals.Materials;

/// <summary>A rubber by its code in ISO 1629 (ASTM D1418 writes the same).</summary>
public sealed record Elastomer(string Code, string Polymer)
{
    /// <summary>The rubbers that seals of hydraulic tools are made of.</summary>
    public static ImmutableArray<Elastomer> All { get; } =
    [
        new("NBR", "nitrile (acrylonitrile-butadiene)"),
        new("HNBR", "hydrogenated nitrile"),
        new("FKM", "fluorocarbon"),
        new("EPDM", "ethylene-propylene-diene"),
        new("VMQ", "silicone"),
        new("FVMQ", "fluorosilicone"),
        new("CR", "chloroprene"),
        new("ACM", "polyacrylate"),
        new("AU", "polyester urethane"),
        new("EU", "polyether urethane"),
        new("FEPM", "tetrafluoroethylene-propylene"),
        new("IIR", "butyl"),
        new("SBR", "styrene-butadiene"),
    ];

    /// <summary>The rubber by its code; null when the code names none, as for plastics and metals.</summary>
    public static Elastomer? Find(string code) => All.FirstOrDefault(e => e.Code == code);
}
