using Ramwright.Metrology.Distributions;

namespace Ramwright.Proving;

/// <summary>How likely the declared extension is to decide, after what the planned runs showed.</summary>
/// <remarks>
/// The runs there are count again, so this is no new series: σ is averaged over what they leave open, the mean and the scatter of the runs to come
/// over their own distributions, and the last look is taken at each. A single run far outside, which also decides, is left out.
/// </remarks>
internal static class ExtensionChance
{
    private const int Digits = 4;
    private const int Means = 101; // equally likely means of the runs to come
    private const double Negligible = 1e-5;

    /// <summary>0 to 1.</summary>
    public static double Of(int more, Yardstick yardstick, Guards guards, SeriesFigures figures)
    {
        int first = figures.Runs, all = first + more;
        double factor = yardstick.DecidingFactor(all), refusing = yardstick.RefusingFactor(all), coupling = (double)first * more / all;
        var scatters = more > 1 ? new ScatterGrid(more - 1, 0, Digits) : null;
        ReadOnlySpan<double> ratios = scatters is null ? [0] : scatters.Ratios, weights = scatters is null ? [1] : scatters.Weights;
        var steps = new double[Means];
        for (var i = 0; i < Means; i++)
            steps[i] = Normal.Quantile((i + 0.5) / Means) * Math.Sqrt(1.0 / first + 1.0 / more);
        var chance = 0.0;
        foreach (var (sigma, before) in yardstick.Possible(figures.Scatter, first))
        {
            for (var j = 0; j < ratios.Length; j++)
            {
                if (before * weights[j] < Negligible)
                    continue;
                var own = sigma * ratios[j];
                var squares = (first - 1) * figures.Scatter * figures.Scatter + (more - 1) * own * own;
                var deciding = 0;
                foreach (var step in steps)
                {
                    var apart = step * sigma; // mean of the runs to come less the mean of those there are
                    var mean = figures.Mean + apart * more / all;
                    var scatter = Math.Sqrt((squares + coupling * apart * apart) / (all - 1));
                    var conforms = mean - factor * scatter >= guards.Low.Pascals && mean + factor * scatter <= guards.High.Pascals;
                    var refused = mean - refusing * scatter < guards.LowOutward.Pascals || mean + refusing * scatter > guards.HighOutward.Pascals;
                    deciding += conforms || refused ? 1 : 0;
                }

                chance += before * weights[j] * deciding / Means;
            }
        }

        return Math.Min(1, chance);
    }
}
