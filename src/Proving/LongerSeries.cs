using Ramwright.Metrology.Distributions;

namespace Ramwright.Proving;

/// <summary>How likely a new series of so many runs is to decide, after what this one showed.</summary>
/// <remarks>
/// The predictive chance: σ and the true mean are not taken as the estimates but averaged over what the series leaves open (σ by the yardstick,
/// mean ± σ/√n). Given σ, the new scatter is an independent w and the new mean normal with variance σ²(1/n + 1/m);
/// both claims together are an interval for the new mean. One sum over two grids; no simulation. A single run far outside, which also decides, is left out.
/// </remarks>
internal static class LongerSeries
{
    private const int LongestTried = 100;
    private const int Digits = 4;
    private const double Probably = 0.8;
    private const double WorthSaying = 0.5;
    private const double Negligible = 1e-6;

    /// <summary>The shortest new series that probably decides; or the longest, when it is at least as likely as not; or that none does.</summary>
    public static Reason ThatWouldDecide(int runs, Yardstick yardstick, Guards guards, SeriesFigures figures)
    {
        var most = Chance(yardstick, guards, figures, LongestTried);
        if (most < WorthSaying || runs >= LongestTried)
            return new Reason.NoSeriesWouldDecide(Math.Max(LongestTried, runs));
        if (most < Probably)
            return new Reason.LongerSeriesWouldDecide(LongestTried, most);
        int low = runs, high = LongestTried; // the chance at high is enough, at low it is not taken
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            if (Chance(yardstick, guards, figures, middle) >= Probably)
                high = middle;
            else
                low = middle;
        }

        return new Reason.LongerSeriesWouldDecide(high, Chance(yardstick, guards, figures, high));
    }

    /// <summary>Chance, 0 to 1, that a new series of <paramref name="runs"/> conforms or is refused for its shares.</summary>
    public static double Chance(Yardstick yardstick, Guards guards, SeriesFigures figures, int runs)
    {
        double factor = yardstick.DecidingFactor(runs), refusing = yardstick.RefusingFactor(runs);
        var after = new ScatterGrid(runs - 1, 0, Digits);
        var chance = 0.0;
        foreach (var (sigma, before) in yardstick.Possible(figures.Scatter, figures.Runs))
        {
            var spread = sigma * Math.Sqrt(1.0 / figures.Runs + 1.0 / runs);
            for (var j = 0; j < after.Ratios.Length; j++)
            {
                var weight = before * after.Weights[j];
                if (weight < Negligible)
                    continue;
                var own = sigma * after.Ratios[j];
                var used = yardstick.UsedPascals(own, runs);
                var low = (guards.Low.Pascals + factor * used - figures.Mean) / spread;
                var high = (guards.High.Pascals - factor * used - figures.Mean) / spread;
                var refusedLow = Normal.Cdf((guards.LowOutward.Pascals + refusing * own - figures.Mean) / spread);
                var refusedHigh = Normal.Tail((guards.HighOutward.Pascals - refusing * own - figures.Mean) / spread);
                chance += weight * (Math.Max(0, Normal.Cdf(high) - Normal.Cdf(low)) + Math.Min(1, refusedLow + refusedHigh));
            }
        }

        return Math.Min(1, chance);
    }
}
