using Ramwright.Metrology.Quantities;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Proving;

/// <summary>What a caller must keep; a series from a person is checked where it is read.</summary>
internal static class SeriesContract
{
    public static void Check(ProofSeries series)
    {
        ArgumentNullException.ThrowIfNull(series);
        if (series.Peaks.IsDefault)
            throw new ArgumentException("The peaks were not given; an empty list is a series without a run.", nameof(series));
        if (series.PlannedRuns < 2)
            throw new ArgumentException($"{series.PlannedRuns} planned runs; a series has 2 or more.", nameof(series));
        var most = series.PlannedRuns + (series.Declared is Declared.Extension extension ? extension.MoreRuns : 0);
        if (series.Peaks.Length > most)
            throw new ArgumentException($"{series.Peaks.Length} runs in a series of {most}; runs are never added to a series.", nameof(series));
        if (series.Declared is Declared.Extension { MoreRuns: < 1 or > 1_000 })
            throw new ArgumentException("An extension has 1 to 1,000 runs.", nameof(series));
        if (series.Declared is Declared.Moderated && series.PlannedRuns > EarlierSeries.MostRuns)
            throw new ArgumentException($"A moderated series has at most {EarlierSeries.MostRuns} runs.", nameof(series));
        if (series.Declared is not Declared.OwnScatter && series.Rule != DecisionRule.OneSidedPerLimit)
            throw new ArgumentException("An extension or moderation goes with one-sided claims per limit alone.", nameof(series));
        if (series.Coverage is not (> 0 and < 1) || series.Confidence is not (> 0 and < 1))
            throw new ArgumentException("Coverage and confidence lie above 0 and below 1.", nameof(series));
        var zero = Pressure.FromPascals(0);
        if (series.Systematic.BelowLimit < zero || series.Systematic.AboveLimit < zero || series.Systematic.RandomExpanded < zero)
            throw new ArgumentException("An uncertainty is zero or more.", nameof(series));
        if (series.Resolution is { } step && step <= zero)
            throw new ArgumentException("The step of a device is above zero.", nameof(series));
    }
}
