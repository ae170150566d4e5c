using Ramwright.Metrology.Quantities;

namespace Ramwright.Planning.Strip.Ways;

/// <summary>Costs as whole numbers, so that equal plans compare equal: millionths of the currency unit, times 4,096, plus one per step.</summary>
/// <remarks>The last digits make the plan with fewer steps the cheaper of two that cost the same; they never outweigh a millionth in plans of
/// fewer than 4,096 steps. Anything dearer than a million currency units counts as a million.</remarks>
internal static class CostScale
{
    private const long Steps = 4096;

    public const long OneStep = 1;

    public static long Of(Money money) => Of(money.Amount);

    public static long Of(decimal amount) => (long)decimal.Round(Math.Clamp(amount, 0m, 1_000_000m) * 1_000_000m) * Steps;

    /// <summary>Rounded up to a millionth, so that a gap is never understated.</summary>
    public static decimal Amount(long scaled) => (scaled + Steps - 1) / Steps / 1_000_000m;
}
