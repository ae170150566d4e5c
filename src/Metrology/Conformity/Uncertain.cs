using System.Runtime.CompilerServices;
using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Conformity;

/// <summary>Normal measurement errors: the checks and chances that all risks share.</summary>
internal static class Uncertain
{
    /// <summary>The standard uncertainty itself when it is finite and above zero.</summary>
    public static double Check(double standardUncertainty, [CallerArgumentExpression(nameof(standardUncertainty))] string name = "") => standardUncertainty > 0 && double.IsFinite(standardUncertainty)
        ? standardUncertainty
        : throw new ArgumentOutOfRangeException(name, standardUncertainty, "A standard uncertainty above zero is wanted.");

    /// <summary>Chance that a normal variable lies within limits, without cancellation in the tails.</summary>
    public static double Inside(ToleranceLimits limits, double mean, double sd)
    {
        var (low, high) = ((limits.Low - mean) / sd, (limits.High - mean) / sd);
        return low > 0 ? Normal.Tail(low) - Normal.Tail(high) : Normal.Cdf(high) - Normal.Cdf(low);
    }

    /// <summary>Chance that it does not.</summary>
    public static double Outside(ToleranceLimits limits, double mean, double sd) => Normal.Cdf((limits.Low - mean) / sd) + Normal.Tail((limits.High - mean) / sd);
}
