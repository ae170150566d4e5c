namespace Ramwright.Setting.Belief;

/// <summary>One supposition of play, scatter, way of answering and part of the prior gain, with level and gain as it would have them.</summary>
/// <param name="Weight">Probability of the supposition, 0 to 1.</param>
/// <param name="Level">Mean pressure where the screw stands, bar.</param>
/// <param name="Gain">Bar per turn clockwise.</param>
/// <param name="LevelVariance">bar².</param>
/// <param name="GainVariance">(bar per turn)².</param>
/// <param name="Scatter">Run-to-run standard deviation, bar.</param>
/// <param name="SeatTurns">Where the spring's seat stands.</param>
internal readonly record struct Strand(
    double Weight, double Level, double Gain, double LevelVariance, double Covariance, double GainVariance,
    double Scatter, Play Play, double SeatTurns, Answering Answering)
{
    private const double LogRootTwoPi = 0.91893853320467274178, InverseRootTwoPi = 0.39894228040143267794;

    /// <summary>How far a turn moves what the pressure answers to, in turns.</summary>
    public double Moved(double turn, double screw, int raisingSign) =>
        Answering.Effective(Play.Follow(SeatTurns, screw + turn), raisingSign) - Answering.Effective(SeatTurns, raisingSign);

    /// <summary>Mean and variance, bar and bar², of the mean pressure after an effective turn.</summary>
    public (double Mean, double Variance) After(double moved) =>
        (Level + Gain * moved, Math.Max(0, LevelVariance + moved * (2 * Covariance + moved * GainVariance)));

    /// <summary>Logarithm of the density, 1/bar, with which the strand foretells a reading where the screw stands.</summary>
    public double LogDensity(double bar)
    {
        var variance = LevelVariance + Scatter * Scatter;
        return -0.5 * ((bar - Level) * (bar - Level) / variance + Math.Log(variance)) - LogRootTwoPi;
    }

    /// <summary>The strand after one more reading where the screw stands; its weight is left as it was.</summary>
    public Strand Read(double bar)
    {
        var variance = LevelVariance + Scatter * Scatter;
        double miss = bar - Level, levelPull = LevelVariance / variance, gainPull = Covariance / variance;
        return this with
        {
            Level = Level + levelPull * miss,
            Gain = Gain + gainPull * miss,
            LevelVariance = LevelVariance - levelPull * LevelVariance,
            Covariance = Covariance - gainPull * LevelVariance,
            GainVariance = GainVariance - gainPull * Covariance,
        };
    }

    /// <summary>The strand after its level may have moved by itself, as when the screw is locked.</summary>
    public Strand Loosened(double bar) => this with { LevelVariance = LevelVariance + bar * bar };

    /// <summary>Φ(z) to 7.5e-8, many times quicker than to full digits: a sum over thousands of strands asks for no more.</summary>
    /// <remarks>Abramowitz &amp; Stegun 26.2.17.</remarks>
    public static double Share(double z)
    {
        var size = Math.Abs(z);
        if (size > 6.5)
            return z > 0 ? 1 : 0;
        var t = 1 / (1 + 0.2316419 * size);
        var tail = InverseRootTwoPi * Math.Exp(-0.5 * size * size) * t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
        return z > 0 ? 1 - tail : tail;
    }
}
