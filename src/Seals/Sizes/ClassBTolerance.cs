using Ramwright.Metrology.Quantities;

namespace Ramwright.Seals.Sizes;

/// <summary>Tolerance of the inside diameter of general O-rings, and of sizes that are in no table.</summary>
public static class ClassBTolerance
{
    /// <summary>Plus/minus tolerance of the inside diameter, rounded to 0.01 mm.</summary>
    /// <param name="inner">Inside diameter d1, above zero.</param>
    /// <remarks>ISO 3601-1:2012, equation (A.1): ±(0.009·d1^0.95 + 0.11) mm with d1 in mm.</remarks>
    public static Length Of(Length inner)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(inner.Metres, nameof(inner));
        return Length.FromMillimetres(Math.Round(0.009 * Math.Pow(inner.Millimetres, 0.95) + 0.11, 2));
    }
}
