using System.Collections.Immutable;
using Ramwright.Metrology.Screens;

namespace Ramwright.Proving;

/// <summary>Mean and scatter of the runs, in pascals.</summary>
/// <param name="Runs">How many.</param>
/// <param name="Mean">NaN without a run.</param>
/// <param name="Deviation">Sample standard deviation (n − 1); NaN below two runs.</param>
/// <param name="Scatter">The tool's own, never less than equal readings can hide; NaN below two runs or where it is hidden altogether.</param>
/// <param name="Used">What the claims rest on: <paramref name="Scatter"/> or, if it is larger, the moderated one.</param>
internal readonly record struct SeriesFigures(int Runs, double Mean, double Deviation, double Scatter, double Used)
{
    public bool HasScatter => Scatter > 0;

    /// <remarks>
    /// A reading in steps of q is known to ± q/2. Readings that are all equal may hide deviations whose sample standard deviation is as large as
    /// (q/2)·√(n/(n−1)), half of them up and half down. The scatter is never taken as smaller than that, so a coarse device cannot show more than a
    /// fine one. Where the step is not stated, the smallest difference between two readings stands for it: the step is no larger than that.
    /// </remarks>
    public static SeriesFigures Of(ProofSeries series, Yardstick yardstick)
    {
        var peaks = series.Peaks.Select(p => p.Pascals).ToArray();
        var moments = Moments.Of(peaks);
        if (peaks.Length < 2)
            return new(peaks.Length, moments.Mean, double.NaN, double.NaN, double.NaN);
        var step = series.Resolution?.Pascals ?? SmallestDifference(peaks);
        var floor = 0.5 * step * Math.Sqrt(peaks.Length / (peaks.Length - 1.0));
        var scatter = Math.Max(moments.StandardDeviation, floor);
        return scatter > 0
            ? new(peaks.Length, moments.Mean, moments.StandardDeviation, scatter, yardstick.UsedPascals(scatter, peaks.Length))
            : new(peaks.Length, moments.Mean, moments.StandardDeviation, double.NaN, double.NaN);
    }

    private static double SmallestDifference(double[] peaks)
    {
        var sorted = peaks.ToImmutableSortedSet();
        return sorted.Count < 2 ? 0 : sorted.Skip(1).Zip(sorted, (high, low) => high - low).Min();
    }
}
