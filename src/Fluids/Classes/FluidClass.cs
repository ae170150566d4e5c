using System.Collections.Immutable;

namespace Ramwright.Fluids.Classes;

/// <summary>A class of hydraulic fluid by ISO 6743-4.</summary>
/// <param name="Code">HM, HEES ...</param>
/// <param name="Family">What it is based on, in a word or two.</param>
/// <param name="Description">What it is.</param>
/// <remarks>
/// Codes: ISO 6743-4; specifications ISO 11158 (HH, HL, HM, HR, HV, HS, HG), ISO 15380 (HETG, HEPG, HEES, HEPR), ISO 12922 (HFAE to HFDU).
/// The descriptions are from memory.
/// </remarks>
public sealed record FluidClass(string Code, string Family, string Description)
{
    public static ImmutableArray<FluidClass> All { get; } =
    [
        new("HH", "mineral", "refined mineral oil without inhibitors"),
        new("HL", "mineral", "mineral oil protecting against rust and oxidation"),
        new("HM", "mineral", "HL with protection against wear"),
        new("HR", "mineral", "HL with a viscosity-index improver"),
        new("HV", "mineral", "HM with a viscosity-index improver"),
        new("HS", "synthetic", "synthetic, no particular resistance to fire"),
        new("HG", "mineral", "HM that keeps slideways from sticking"),
        new("HETG", "environmentally acceptable", "vegetable oils (triglycerides)"),
        new("HEPG", "environmentally acceptable", "polyglycols"),
        new("HEES", "environmentally acceptable", "synthetic esters"),
        new("HEPR", "environmentally acceptable", "polyalphaolefins and related hydrocarbons"),
        new("HFAE", "fire resistant", "oil in water, more than 80 % water"),
        new("HFAS", "fire resistant", "chemicals in water, more than 80 % water"),
        new("HFB", "fire resistant", "water in oil"),
        new("HFC", "fire resistant", "water with polymer, more than 35 % water"),
        new("HFDR", "fire resistant", "phosphate esters"),
        new("HFDU", "less flammable", "other fluids without water, mostly esters"),
    ];

    /// <summary>The class by its code; null when ISO 6743-4 has none of this code.</summary>
    public static FluidClass? Find(string code) => All.FirstOrDefault(c => c.Code == code);
}
