using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Hydraulics.Identification;

/// <summary>Which leaks a hypothesis lets grow beyond those of a sound tool.</summary>
internal readonly record struct LeakSet(bool Delivery, bool Chamber, bool Bypass, bool Weep)
{
    /// <summary>Every set that the pump can have. Clearance and inlet check leak in the same half turn and are one here.</summary>
    public static ImmutableArray<LeakSet> All { get; } =
        [.. Enumerable.Range(0, 16).Select(i => new LeakSet((i & 1) != 0, (i & 2) != 0, (i & 4) != 0, (i & 8) != 0))];

    public bool Any => Delivery || Chamber || Bypass;

    /// <summary>ln of the prior probability: shares of tools sent in, as the fault rates of the bundled models (invented data).</summary>
    public double LogPrior(InletKind inlet) =>
        Of(Delivery, 0.07) + Of(Chamber, inlet == InletKind.Port ? 0.02 : 0.05) + Of(Bypass, 0.10) + Of(Weep, 0.05);

    private static double Of(bool present, double rate) => Math.Log(present ? rate : 1 - rate);
}
