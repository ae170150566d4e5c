using System.Runtime.CompilerServices;

namespace Ramwright.Metrology.Distributions;

/// <summary>Checks of probabilities given by a caller.</summary>
internal static class Probability
{
    /// <summary>The value when it is above 0 and below 1 (NaN is not).</summary>
    public static double Inside(double p, [CallerArgumentExpression(nameof(p))] string name = "") => p is > 0 and < 1
        ? p
        : throw new ArgumentOutOfRangeException(name, p, "Above 0 and below 1 is wanted.");
}
