using System.Collections.Immutable;

namespace Ramwright.Metrology.Screens;

/// <summary>A chart of single readings with the scatter taken from neighbours, so that a shift does not hide itself. It flags; it deletes nothing.</summary>
/// <param name="Mean">Of all readings, in their unit.</param>
/// <param name="MeanMovingRange">Of the steps between neighbours.</param>
/// <param name="Outside">Readings beyond three standard deviations, from 0.</param>
/// <param name="Farthest">The reading farthest from the mean, from 0.</param>
/// <remarks>NIST/SEMATECH e-Handbook 6.3.2.2; for ranges of two d2 = 2/√π, d3 = √(2 − 4/π), D4 = 1 + 3·d3/d2.</remarks>
public sealed record IndividualsChart(double Mean, double MeanMovingRange, ImmutableArray<int> Outside, int Farthest)
{
    private const double D2 = 1.1283791670955126; // 2/√π
    private const double D4 = 3.2665323; // 3.267 in tables

    /// <summary>Standard deviation from one reading to the next, a value in the readings' unit.</summary>
    public double Sigma => MeanMovingRange / D2;

    /// <summary>Upper limit, a value in the readings' unit.</summary>
    public double Upper => Mean + 3 * Sigma;

    /// <summary>Lower limit, a value in the readings' unit.</summary>
    public double Lower => Mean - 3 * Sigma;

    /// <summary>Upper limit of the moving ranges, a value in the readings' unit.</summary>
    public double UpperRange => D4 * MeanMovingRange;

    /// <summary>The chart, or null below two readings and for equal neighbours.</summary>
    public static IndividualsChart? Of(ReadOnlySpan<double> readings)
    {
        if (readings.Length < 2)
            return null;
        var mean = Moments.Of(readings).Mean;
        double ranges = 0;
        for (var i = 1; i < readings.Length; i++)
            ranges += Math.Abs(readings[i] - readings[i - 1]);
        ranges /= readings.Length - 1;
        if (!(ranges > 0))
            return null;
        var farthest = 0;
        var outside = ImmutableArray.CreateBuilder<int>();
        for (var i = 0; i < readings.Length; i++)
        {
            if (Math.Abs(readings[i] - mean) > Math.Abs(readings[farthest] - mean))
                farthest = i;
            if (Math.Abs(readings[i] - mean) > 3 * ranges / D2)
                outside.Add(i);
        }

        return new(mean, ranges, outside.ToImmutable(), farthest);
    }
}
