using System.Collections.Immutable;
using Ramwright.Metrology.Conformity;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Proving;

/// <summary>The risks of a proof by JCGM 106, beside the verdict: about the mean peak of the tool, measured as the mean of the runs.</summary>
/// <param name="Mean">Best estimate of the mean peak: the mean of the runs, and half of what peaks may lie above their readings.</param>
/// <param name="Standard">Standard uncertainty of it: systematic part, scatter of the mean, and the capture as a rectangular part.</param>
/// <param name="Conformance">Chance that the mean peak lies within the limits, nothing known beforehand, 0 to 1 (7.3).</param>
/// <param name="SpecificFalseAccept">One less that, for a tool that is accepted (9.3.2).</param>
/// <param name="Past">What the shop's past tools of the model say beforehand.</param>
/// <param name="WithPast">The chance of conformance with them; null where they say nothing.</param>
/// <param name="Global">What the rule does over all such tools; null where past tools say nothing (9.5).</param>
/// <remarks>The rule here is that of the guard bands: the mean of the runs inside both limits moved inward. The verdict asks more, so it is wrong less often. Clauses from memory.</remarks>
public sealed record ProofRisk(Pressure Mean, Pressure Standard, double Conformance, double SpecificFalseAccept, PastTools Past, double? WithPast, GlobalRisk? Global)
{
    /// <summary>The risks; null without a mean or scatter, or where the guards leave no room.</summary>
    /// <param name="series">Limits and what the device may be off.</param>
    /// <param name="verdict">Mean, scatter and number of runs.</param>
    /// <param name="capture">Part of the upper allowance that is a bound: how far peaks may lie above their readings.</param>
    /// <param name="pastMeans">Means of past tools of the model, one for each.</param>
    public static ProofRisk? Of(ProofSeries series, Verdict verdict, Pressure capture, ImmutableArray<Pressure> pastMeans)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(verdict);
        if (verdict is not { Mean: { } read, StandardDeviation: { } deviation, Runs: >= 2 } || verdict.GuardLow >= verdict.GuardHigh)
            return null;
        var half = 0.5 * capture.Pascals;
        var u = Math.Sqrt(Square(0.5 * series.Systematic.BelowLimit.Pascals) + Square(deviation.Pascals) / verdict.Runs + Square(half) / 3);
        if (!(u > 0))
            return null;
        var mean = read.Pascals + half;
        var limits = ToleranceLimits.Between(series.Limits.Min.Pascals, series.Limits.Max.Pascals);
        var conformance = ConformityRisk.Conformance(mean, u, limits);
        var past = PastTools.Of([.. pastMeans.Select(p => p.Pascals + half)], u);
        var known = past is PastTools.Known { Prior: var prior } && u >= 1e-6 * prior.StandardDeviation ? prior : null;
        var accepted = ToleranceLimits.Between(verdict.GuardLow.Pascals + half, verdict.GuardHigh.Pascals + half);
        return new ProofRisk(
            Pressure.FromPascals(mean), Pressure.FromPascals(u), conformance, ConformityRisk.SpecificFalseAccept(mean, u, limits), past,
            known is null ? null : ConformityRisk.Conformance(mean, u, limits, known),
            known is null ? null : ConformityRisk.Global(limits, accepted, u, known));
    }

    private static double Square(double x) => x * x;
}
