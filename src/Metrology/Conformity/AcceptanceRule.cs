namespace Ramwright.Metrology.Conformity;

/// <summary>Which readings are accepted.</summary>
/// <remarks>JCGM 106:2012, clause 8; ILAC-G8:09/2019, clause 4 (clauses from memory).</remarks>
public abstract record AcceptanceRule
{
    private AcceptanceRule() { }

    /// <summary>Guard band over the expanded uncertainty U (k = 2), a ratio.</summary>
    public abstract double Ratio { get; }

    /// <summary>Every reading within the limits (shared risk).</summary>
    public sealed record Simple : AcceptanceRule
    {
        public override double Ratio => 0;
    }

    /// <summary>The limits moved inward by U: of tools just at a limit, 2.3 % at most are accepted.</summary>
    public sealed record ByU : AcceptanceRule
    {
        public override double Ratio => 1;
    }

    /// <summary>The limits moved inward by r·U.</summary>
    public sealed record ByPartOfU : AcceptanceRule
    {
        /// <param name="ratio">0 to 3.</param>
        public ByPartOfU(double ratio) => Ratio = ratio is >= 0 and <= 3 ? ratio : throw new ArgumentOutOfRangeException(nameof(ratio), ratio, "A guard band is 0 to 3 times U.");

        public override double Ratio { get; }
    }

    /// <summary>The accepted readings; null when the band eats all of the window.</summary>
    /// <param name="limits">What the true value must keep.</param>
    /// <param name="standardUncertainty">u, above zero, in the limits' unit.</param>
    public ToleranceLimits? Accepted(ToleranceLimits limits, double standardUncertainty) => limits.Inward(Ratio * 2 * Uncertain.Check(standardUncertainty));
}
