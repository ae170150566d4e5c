using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Uncertainty.MonteCarlo;

/// <summary>Propagates distributions by simulation.</summary>
/// <remarks>
/// JCGM 101:2008, 7.9 (adaptive procedure; clause from memory): blocks of M trials until twice the standard deviation of the mean, the standard
/// uncertainty and both ends of the interval, from block to block, lies within the numerical tolerance. Blocks run on all cores; the answer depends on
/// seed and blocks alone (logarithms and sines may differ in the last digit from one processor family to another).
/// </remarks>
public static class Simulation
{
    private const int LeastBlock = 10_000;
    private const int AtOnce = 8; // blocks run before the next look; more than most machines have cores

    /// <summary>Runs blocks until the figures stand firm, or the most trials are reached.</summary>
    public static MonteCarloAnswer Run(Budget budget, MonteCarloAsk ask)
    {
        ArgumentNullException.ThrowIfNull(budget);
        ArgumentNullException.ThrowIfNull(ask);
        Probability.Inside(ask.Coverage);
        if (ask.MostTrials is not (>= 2 * LeastBlock and <= 20_000_000) || ask.Digits is not (1 or 2) || !(ask.Finer >= 1))
            throw new ArgumentOutOfRangeException(nameof(ask), ask, "Trials are 20,000 to 20,000,000, digits 1 or 2, and finer is 1 or more.");
        var size = (int)Math.Clamp(Math.Ceiling(100 / (1 - ask.Coverage)), LeastBlock, ask.MostTrials / 2);
        var most = ask.MostTrials / size;
        var fine = size * (1 - ask.Coverage) >= 99.9; // a block too short for the coverage shows no ends to settle by
        var trials = new BlockSeries(budget, ask, size);
        while (true)
        {
            trials.Grow(Math.Min(most, trials.Ready + AtOnce));
            while (trials.Counted < trials.Ready)
            {
                trials.CountNext();
                if (trials.Failed > 0)
                    return new MonteCarloAnswer.NotEverywhere(trials.Failed, trials.Counted * size);
                if (fine && trials.Counted >= 2 && trials.OwnError <= NumericalTolerance.Of(trials.Standard, ask.Digits) / ask.Finer)
                    return new MonteCarloAnswer.Settled(trials.Figures());
            }

            if (trials.Counted == most)
                return new MonteCarloAnswer.AtLimit(trials.Figures());
        }
    }

    /// <summary>Runs a number of trials, whatever their figures.</summary>
    /// <param name="trials">10,000 to 20,000,000; rounded up to whole blocks of 10,000.</param>
    public static MonteCarloAnswer Run(Budget budget, MonteCarloAsk ask, int trials)
    {
        ArgumentNullException.ThrowIfNull(budget);
        ArgumentNullException.ThrowIfNull(ask);
        if (trials is not (>= LeastBlock and <= 20_000_000))
            throw new ArgumentOutOfRangeException(nameof(trials), trials, "10,000 to 20,000,000 trials are wanted.");
        var series = new BlockSeries(budget, ask, LeastBlock) { EndsOfEachBlock = false };
        series.Grow((trials + LeastBlock - 1) / LeastBlock);
        while (series.Counted < series.Ready)
            series.CountNext();
        return series.Failed > 0
            ? new MonteCarloAnswer.NotEverywhere(series.Failed, series.Counted * LeastBlock)
            : new MonteCarloAnswer.AtLimit(series.Figures());
    }
}
