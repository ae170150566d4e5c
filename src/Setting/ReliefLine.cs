using Ramwright.Metrology.Distributions;

namespace Ramwright.Setting;

/// <summary>Relief pressure as a straight line in turns, after some runs: a normal distribution of level and gain.</summary>
/// <remarks>
/// Linear-Gaussian update: y = level + gain·x + e, x in turns clockwise from the last run's position, e of the run-to-run scatter σ.
/// Prior: level flat over the pressures such tools have, gain from <see cref="ReliefPrior"/>. Precisions add (Gelman et al., Bayesian Data Analysis,
/// 3rd ed., 14.2 and 14.8). σ² is the prior's, weighing ν₀ = 4, together with the residuals: (ν₀·σ₀² + RSS)/(ν₀ + n − 2).
/// The device's systematic part shifts all readings alike: the runs cannot lessen it, so it is added to each predicted mean.
/// </remarks>
internal sealed class ReliefLine
{
    private const double PriorWeight = 4;

    private readonly double _systematic;

    private ReliefLine(double level, double gain, double levelVariance, double gainVariance, double covariance, double scatter, double residuals, double systematic)
    {
        (Level, Gain, LevelVariance, GainVariance, Covariance) = (level, gain, levelVariance, gainVariance, covariance);
        (Scatter, Residuals, _systematic) = (scatter, residuals, systematic);
    }

    /// <summary>Mean pressure where the screw stands, bar.</summary>
    public double Level { get; }

    /// <summary>Bar per turn clockwise.</summary>
    public double Gain { get; }

    /// <summary>Standard deviation of the gain, bar per turn.</summary>
    public double GainSpread => Math.Sqrt(GainVariance);

    /// <summary>Run-to-run standard deviation, bar.</summary>
    public double Scatter { get; }

    /// <summary>Sum of squared residuals, bar².</summary>
    public double Residuals { get; }

    private double LevelVariance { get; }

    private double GainVariance { get; }

    private double Covariance { get; }

    /// <param name="turns">Screw positions relative to the last, in turns; one or more.</param>
    /// <param name="bar">Peaks, in bar.</param>
    public static ReliefLine After(ReadOnlySpan<double> turns, ReadOnlySpan<double> bar, ReliefPrior prior, double level, double expectedScatter, double systematic)
    {
        var line = Fit(turns, bar, prior, level, expectedScatter, systematic);
        var df = Math.Max(0, bar.Length - 2);
        var scatter = Math.Sqrt((PriorWeight * expectedScatter * expectedScatter + (df > 0 ? line.Residuals : 0)) / (PriorWeight + df));
        return Fit(turns, bar, prior, level, scatter, systematic);
    }

    /// <summary>Mean and standard deviation, bar, of the true mean pressure after a turn.</summary>
    public (double Mean, double Spread) After(double turn) => (
        Level + Gain * turn,
        Math.Sqrt(Math.Max(0, LevelVariance + 2 * turn * Covariance + turn * turn * GainVariance) + _systematic * _systematic));

    public double ChanceAbove(double bar, double turn)
    {
        var (mean, spread) = After(turn);
        return spread > 0 ? Normal.Tail((bar - mean) / spread) : mean > bar ? 1 : 0;
    }

    public double ChanceBetween(double low, double high, double turn) => Math.Max(0, ChanceAbove(low, turn) - ChanceAbove(high, turn));

    private static ReliefLine Fit(ReadOnlySpan<double> turns, ReadOnlySpan<double> bar, ReliefPrior prior, double level, double scatter, double systematic)
    {
        var weight = 1 / (scatter * scatter);
        var levelPrecision = 1 / (level * level); // flat: as wide as the nominal pressure itself
        var gainPrecision = 1 / (prior.Spread * prior.Spread);
        double aa = levelPrecision, ag = 0, gg = gainPrecision, a = 0, g = gainPrecision * prior.BarPerTurn;
        for (var i = 0; i < bar.Length; i++) // levels are counted from the last run, so that no digits are lost
        {
            var y = bar[i] - bar[^1];
            aa += weight;
            ag += weight * turns[i];
            gg += weight * turns[i] * turns[i];
            a += weight * y;
            g += weight * turns[i] * y;
        }

        a += levelPrecision * (level - bar[^1]);
        var determinant = aa * gg - ag * ag;
        double above = (gg * a - ag * g) / determinant, gain = (aa * g - ag * a) / determinant, residuals = 0;
        for (var i = 0; i < bar.Length; i++)
        {
            var miss = bar[i] - bar[^1] - above - gain * turns[i];
            residuals += miss * miss;
        }

        return new(bar[^1] + above, gain, gg / determinant, aa / determinant, -ag / determinant, scatter, residuals, systematic);
    }
}
