using Ramwright.Metrology.Quantities;

namespace Ramwright.Proving.Reference;

/// <summary>One contribution to what a device may be off, as a standard uncertainty (JCGM 100:2008).</summary>
/// <param name="What"><c>calibration</c>, <c>drift</c>, <c>temperature</c>, <c>resolution</c>, <c>spring</c>, <c>friction</c>, <c>ram diameter</c> ...</param>
/// <param name="Standard">Standard uncertainty, zero or more.</param>
public sealed record BudgetLine(string What, Pressure Standard)
{
    /// <summary>From an expanded uncertainty of a certificate, k = 2 unless it says otherwise (4.3.3).</summary>
    public static BudgetLine FromExpanded(string what, Pressure expanded, double k = 2) => new(what, expanded / k);

    /// <summary>From limits ± a within which every value is equally likely: a/√3 (4.3.7, 4.4.5).</summary>
    public static BudgetLine FromLimits(string what, Pressure halfWidth) => new(what, halfWidth / Math.Sqrt(3));

    /// <summary>From a reading in steps q: ± q/2, so q/√12 (F.2.2.1).</summary>
    public static BudgetLine FromStep(string what, Pressure step) => FromLimits(what, 0.5 * step);
}
