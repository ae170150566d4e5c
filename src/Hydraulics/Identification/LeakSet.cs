using System.Collections.Immutable;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Hydraulics.Identification;

/// <summary>Which leaks a hypothesis lets grow beyond those of a sound tool.</summary>
internal readonly record struct LeakSet(bool Delivery, bool Chamber, bool Bypass, bool Weep)
{
    /// <summary>Every set that the pump can have. Clearance and inlet check leak in the same half turn and are one here.</summary>
    public static ImmutableArray<LeakSet> All { get; } =
        [.. Enumerable.Range(0, 16).Select(i => new LeakSet((i & 1) != 0, (i & 2) != 0, (i & 4) != 0, (i & 8) != 0))];

    /// <summary>Without the current, a pump that loses in its delivery stroke looks like a slow drive, and so does a relief that weeps: only the others are asked about.</summary>
    public static IEnumerable<LeakSet> Of(bool driveIsSeen) => driveIsSeen ? All : All.Where(s => !s.Chamber && !s.Weep);

    public bool Any => Delivery || Chamber || Bypass;

    /// <summary>Far below its share of tools: a pump that tires near the top looks much like a relief that weeps, so the rows must speak clearly.</summary>
    private const double WeepRate = 0.004;

    /// <summary>ln of the prior probability: shares of tools sent in, as the fault rates of the bundled models (invented data).</summary>
    public double LogPrior(InletKind inlet) =>
        Of(Delivery, 0.07) + Of(Chamber, inlet == InletKind.Port ? 0.02 : 0.05) + Of(Bypass, 0.10) + Of(Weep, WeepRate);

    private static double Of(bool present, double rate) => Math.Log(present ? rate : 1 - rate);
}
