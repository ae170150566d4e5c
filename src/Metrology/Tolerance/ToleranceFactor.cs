namespace Ramwright.Metrology.Tolerance;

/// <summary>Exact normal tolerance factors: how many standard deviations must lie between mean and limit.</summary>
public static class ToleranceFactor
{
    public static double OneSided(int n, double coverage, double confidence, double? df = null) => throw new NotSupportedException("Not written yet.");

    public static double TwoSided(int n, double coverage, double confidence, double? df = null) => throw new NotSupportedException("Not written yet.");
}
