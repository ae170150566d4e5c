using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;
using Ramwright.ServiceModels.Reading;
using Ramwright.ServiceModels.Yaml;
using static System.FormattableString;

namespace Ramwright.ServiceModels.Lint;

/// <summary>Limits that contradict each other or the tool.</summary>
internal static class LimitsLint
{
    /// <summary>Force and pressure × area may differ by this share before it is said: ram diameters are given to 0.1 mm.</summary>
    private const double ForceSlack = 0.03;

    public static void Look(Draft draft, MistakeList mistakes, MistakeList notes)
    {
        if (!draft.LimitsKnown)
            return;
        var limits = draft.Model.Limits;
        var window = Show(limits.Pressure);
        if (!limits.Pressure.Holds(limits.Nominal))
            mistakes.Add(draft.ValueAt("limits", "nominal"), Invariant($"the nominal pressure {limits.Nominal.Bar:0.#} bar lies outside the limits {window}"), "write a nominal pressure between the limits, or leave it out: the middle is then taken", "nominal-outside");
        if (limits.Maximum < limits.Pressure.Max)
            mistakes.Add(draft.ValueAt("limits", "maximum"), Invariant($"the maximum {limits.Maximum.Bar:0.#} bar lies below the upper limit {limits.Pressure.Max.Bar:0.#} bar: a sound tool would be quarantined"), "write the pressure above which the frame must be inspected; it lies above the upper limit", "maximum-below-window");
        if (draft.Model.Behaviour?.Relief?.Reach is { } reach && (reach.Min > limits.Pressure.Min || reach.Max < limits.Pressure.Max))
            mistakes.Add(draft.ValueAt("behaviour", "relief", "reach"), Invariant($"the relief reaches {Show(reach)}, which does not cover the limits {window} (line {draft.LineOf("limits", "pressure")})"), "correct the reach of the screw or the limits; a tool that cannot be set there cannot be proven", "outside-reach");
        if (limits.Force is { } force && draft.Model.Behaviour?.Ram is { } ram)
            CompareForce(force, limits.Pressure, ram, draft, notes);
    }

    private static void CompareForce(ForceWindow force, PressureWindow pressure, RamData ram, Draft draft, MistakeList notes)
    {
        var area = Area.OfCircle(ram.Diameter);
        var (low, high) = (pressure.Min * area, pressure.Max * area);
        if (Math.Abs(force.Min / low - 1) > ForceSlack || Math.Abs(force.Max / high - 1) > ForceSlack)
            notes.Add(draft.ValueAt("limits", "force"), Invariant($"force limits {force.Min.Kilonewtons:0.#}..{force.Max.Kilonewtons:0.#} kN differ by more than 3 % from pressure × area, {low.Kilonewtons:0.#}..{high.Kilonewtons:0.#} kN"), "see to the ram diameter and to whether the force is stated after the return spring", "force-pressure");
    }

    private static string Show(PressureWindow window) => Invariant($"{window.Min.Bar:0.#}..{window.Max.Bar:0.#} bar");
}
