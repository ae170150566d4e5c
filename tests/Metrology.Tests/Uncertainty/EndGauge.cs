using Ramwright.Metrology.Uncertainty;
using static Ramwright.Metrology.Tests.Uncertainty.Models;

namespace Ramwright.Metrology.Tests.Uncertainty;

/// <summary>End-gauge calibration of JCGM 100:2008, H.1; lengths in nanometres.</summary>
internal static class EndGauge
{
    public static Budget Budget => Of(
        "lS + d - lS * (dalpha * theta + alphaS * dtheta)",
        X("lS", 50_000_623, Normal(25, 18, Effect.Systematic)),
        X("d", 215, Normal(5.8, 24), Normal(3.9, 5), Normal(6.7, 8, Effect.Systematic)),
        X("dalpha", 0, Rectangular(1e-6, 50, Effect.Systematic)),
        X("theta", -0.1, Normal(0.2), new Component("cycle", new Spread.UShaped(0.5), Effect.Random)),
        X("alphaS", 11.5e-6, Rectangular(2e-6, effect: Effect.Systematic)),
        X("dtheta", 0, Rectangular(0.05, 2)));
}
