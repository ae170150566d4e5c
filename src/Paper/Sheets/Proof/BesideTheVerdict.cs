using System.Globalization;
using Ramwright.Metrology.Conformity;
using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Text;
using Ramwright.Paper.Pages;
using Ramwright.Proving;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Paper.Sheets.Proof;

/// <summary>What a report tells beside the verdict: the output force and the risks by JCGM 106.</summary>
internal static class BesideTheVerdict
{
    /// <summary>Side by side where both are there.</summary>
    public static void Fill(Flow flow, ProofReportInput input, UnitSystem units)
    {
        switch (input.OutputForce, input.Risk)
        {
            case ({ } force, { } risk):
                flow.Columns(26, 420, (1, f => Force(f, force, input.Limits, units)), (1.25, f => Risks(f, risk, input.Series, units)));
                break;
            case ({ } force, null):
                Force(flow, force, input.Limits, units);
                break;
            case (null, { } risk):
                Risks(flow, risk, input.Series, units);
                break;
            default:
                return;
        }

        flow.Space(10);
    }

    private static void Force(Flow flow, ProofForce force, Limits limits, UnitSystem units)
    {
        flow.Heading("Output force", "told, not judged");
        flow.SmallFacts(
            70,
            ("at the mean peak", string.Create(CultureInfo.InvariantCulture, $"{Show(force.Estimate, units)} ± {Show(force.Expanded, units)} (95 %, k = {force.Factor:0.00}, JCGM 100)")),
            ("by simulation", string.Create(CultureInfo.InvariantCulture, $"{Show(force.Low, units)} to {Show(force.High, units)} (95 %, JCGM 101); ")
                + (force.Agree ? "the two agree" : $"the two part, since {force.Largest} weighs most: take the simulation's")),
            ("peak capture", force.Capture.Newtons > 0 ? $"up to {Show(force.Capture, units)} more, where peaks lie above their readings" : null),
            ("limits", limits.Force is { } window ? $"{QuantityText.Show(window, units)} in the model" : null));
    }

    private static void Risks(Flow flow, ProofRisk risk, ProofSeries series, UnitSystem units)
    {
        var rule = series.Systematic.BelowLimit == series.Systematic.AboveLimit ? "w = U" : "w = U and the capture";
        flow.Heading("Risks by JCGM 106", "about the tool's mean peak");
        flow.SmallFacts(
            84,
            ("measured", $"{QuantityText.Show(risk.Mean, units)}, u = {QuantityText.Show(risk.Standard, units, units == UnitSystem.Metric ? 2 : 1)}"),
            ("rule beside", $"guarded acceptance of the mean, {rule}; the verdict asks more"),
            ("chance to conform", Chance(risk.Conformance)),
            ("if accepted, false", $"{Chance(risk.SpecificFalseAccept)} (specific)"),
            ("past tools", risk.Past switch
            {
                PastTools.Known known => $"{known.Tools} of the model, mean {Bar(known.Prior.Mean, units)}, standard deviation {Bar(known.Prior.StandardDeviation, units)}; with them the chance to conform is {Chance(risk.WithPast ?? risk.Conformance)}",
                PastTools.TooFew few => $"{few.Tools} of the model: fewer than {PastTools.Fewest} say nothing, so no prior and no global risk",
                _ => "differ no more than measuring alone makes them: no prior and no global risk",
            }),
            ("over all such tools", risk.Global is { } global ? $"{Chance(global.FalseAccept)} accepted wrongly, {Chance(global.FalseReject)} rejected wrongly (global)" : null));
    }

    /// <summary>Never shown as certain.</summary>
    private static string Chance(double chance) => chance switch
    {
        > 0.9999 => "over 99.99 %",
        < 0.0001 => "under 0.01 %",
        _ => (100 * chance).ToString("0.##", CultureInfo.InvariantCulture) + " %",
    };

    private static string Bar(double pascals, UnitSystem units) => QuantityText.Show(Pressure.FromPascals(pascals), units);

    /// <summary>In the unit of the output force itself, small parts of it too.</summary>
    private static string Show(Force f, UnitSystem units) => units == UnitSystem.Metric
        ? f.Kilonewtons.ToString("0.00", CultureInfo.InvariantCulture) + " kN"
        : QuantityText.Show(f, units, 0);
}
