using System.Collections.Immutable;

namespace Ramwright.Metrology.Screens;

/// <summary>What a screen looks for.</summary>
public enum Screen
{
    /// <summary>One reading apart from the others (Grubbs).</summary>
    Apart,

    /// <summary>Several readings apart (generalized ESD).</summary>
    SeveralApart,

    /// <summary>Readings climb or fall in the order taken (Mann–Kendall).</summary>
    Trend,

    /// <summary>Neighbours resemble each other, or alternate (von Neumann).</summary>
    Neighbours,

    /// <summary>A reading far out against the steps from neighbour to neighbour (individuals chart).</summary>
    Jump,

    /// <summary>The level moves (EWMA).</summary>
    Drift,

    /// <summary>Readings are not spread as normal ones (Shapiro–Wilk; pooled with earlier series where there are any).</summary>
    NotNormal,
}

/// <summary>What one screen found.</summary>
/// <param name="Screen">Which.</param>
/// <param name="PValue">Chance of as much with nothing there, 0 to 1.</param>
/// <param name="Adjusted">The same, adjusted for all screens looked through together (Holm).</param>
/// <param name="Flagged">Whether the adjusted chance is below the level of the report.</param>
/// <param name="Readings">Which readings it is about, from 0; none where it is about all.</param>
/// <param name="Rises">For a trend: up. For neighbours: alike. For a drift: upward.</param>
public sealed record ScreenFinding(Screen Screen, double PValue, double Adjusted, bool Flagged, ImmutableArray<int> Readings, bool Rises);

/// <summary>All screens of a series together: the chance of any false flag among them stays at the level. They flag and explain; they delete nothing.</summary>
/// <param name="Level">Chance of one or more flags when there is nothing to see: above 0 and below 1.</param>
/// <param name="Findings">One for each screen that could look.</param>
public sealed record ScreenReport(double Level, ImmutableArray<ScreenFinding> Findings)
{
    /// <summary>Fewest and most readings that are looked through.</summary>
    public const int Fewest = 4, Most = 1_000;

    /// <summary>The findings that stand out.</summary>
    public IEnumerable<ScreenFinding> Flags => Findings.Where(f => f.Flagged);

    /// <summary>Looks through a series; no finding when it has fewer than <see cref="Fewest"/> readings, more than <see cref="Most"/>, or all are equal or within one step.</summary>
    /// <param name="readings">In the order taken, finite.</param>
    /// <param name="earlier">Earlier series of the same kind, for the form of the scatter.</param>
    /// <param name="level">Above 0 and below 1; 5 % is common practice.</param>
    /// <param name="resolution">Smallest step of the device, zero or more: readings within one step of each other show nothing but the step.</param>
    public static ScreenReport Of(ReadOnlySpan<double> readings, ImmutableArray<ImmutableArray<double>> earlier = default, double level = 0.05, double resolution = 0)
    {
        Distributions.Probability.Inside(level);
        if (readings.Length is < Fewest or > Most || WithinOneStep(readings, resolution) || IndividualsChart.Of(readings) is not { } chart)
            return new(level, []);
        var found = Look(readings, chart, earlier.IsDefault ? [] : earlier);
        var adjusted = Holm.Adjust([.. found.Select(f => f.PValue)]);
        return new(level, [.. found.Select((f, i) => f with { Adjusted = adjusted[i], Flagged = adjusted[i] < level })]);
    }

    private static List<ScreenFinding> Look(ReadOnlySpan<double> readings, IndividualsChart chart, ImmutableArray<ImmutableArray<double>> earlier)
    {
        var nothing = NullSeries.Of(readings.Length);
        var found = new List<ScreenFinding>();
        void Add(Screen screen, double chance, ImmutableArray<int> about, bool rises) => found.Add(new(screen, chance, 1, false, about, rises));
        if (Grubbs.Test(readings) is { } apart)
            Add(Screen.Apart, apart.PValue, [apart.Index], readings[apart.Index] > chart.Mean);
        var steps = GeneralizedEsd.Steps(readings, NullSeries.MostOutliers(readings.Length));
        if (steps.Length > 1)
            Add(Screen.SeveralApart, nothing.ChanceOfSeveralOutliers(NullSeries.SeveralOutliers(steps)), MostUnlikely(steps), false);
        var trend = MannKendall.Test(readings);
        Add(Screen.Trend, trend.PValue, [], trend.S > 0);
        if (VonNeumann.Test(readings) is { } neighbours)
            Add(Screen.Neighbours, neighbours.PValue, [], neighbours.NeighboursAlike);
        Add(Screen.Jump, nothing.ChanceOfSingleReading(NullSeries.SingleReading(readings, chart)), [chart.Farthest], readings[chart.Farthest] > chart.Mean);
        var average = NullSeries.MovingAverage(readings, chart);
        var (deviations, at) = average.Farthest();
        Add(Screen.Drift, nothing.ChanceOfDrift(deviations), [at], average.Values[at] > average.Target);
        if ((earlier.IsEmpty ? ShapiroWilk.Test(readings) : PooledNormality.Test([[.. readings], .. earlier]) ?? ShapiroWilk.Test(readings)) is { } form)
            Add(Screen.NotNormal, form.PValue, [], false);
        return found;
    }

    private static bool WithinOneStep(ReadOnlySpan<double> readings, double resolution)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var x in readings)
            (low, high) = (Math.Min(low, x), Math.Max(high, x));
        return resolution > 0 && high - low <= resolution * 1.000001; // steps are decimal fractions
    }

    /// <summary>The readings taken away up to the most unlikely step.</summary>
    private static ImmutableArray<int> MostUnlikely(ImmutableArray<EsdStep> steps)
    {
        var last = 0;
        for (var i = 1; i < steps.Length; i++)
            if (steps[i].PValue <= steps[last].PValue)
                last = i;
        return [.. steps.Take(last + 1).Select(s => s.Index).Order()];
    }
}
