using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Tolerance;

/// <summary>The checks that all tolerance computations share.</summary>
internal static class Sample
{
    public static void Check(int n, double coverage, double confidence, double? df)
    {
        Probability.Inside(coverage);
        Check(n, confidence, df);
    }

    public static void Check(int n, double confidence, double? df)
    {
        if (n is < 2 or > 1_000_000)
            throw new ArgumentOutOfRangeException(nameof(n), n, "Two to 1,000,000 readings are wanted.");
        Probability.Inside(confidence);
        if (df is not (null or (>= 0.5 and <= 1e7)))
            throw new ArgumentOutOfRangeException(nameof(df), df, "Degrees of freedom are 0.5 to 1e7.");
    }
}
