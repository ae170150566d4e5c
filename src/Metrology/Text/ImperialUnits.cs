namespace Ramwright.Metrology.Text;

/// <summary>Exact sizes of the imperial and US units in SI (NIST SP 811:2008, Appendix B; pound and inch by the agreement of 1959).</summary>
public static class ImperialUnits
{
    public const double MetresPerInch = 0.0254;
    public const double KilogramsPerPound = 0.45359237;

    /// <summary>Pound × standard acceleration of free fall, 9.80665 m/s².</summary>
    public const double NewtonsPerPoundForce = KilogramsPerPound * 9.80665;

    public const double PascalsPerPsi = NewtonsPerPoundForce / (MetresPerInch * MetresPerInch);

    /// <summary>US fluid ounce: 231/128 cubic inches.</summary>
    public const double CubicMetresPerFluidOunce = 231.0 / 128 * MetresPerInch * MetresPerInch * MetresPerInch;
}
