namespace Ramwright.Setting.Belief;

/// <summary>Sums over readings (x, y), from which a straight line's posterior follows.</summary>
internal readonly record struct LineSums(int Count, double X, double Y, double XX, double XY, double YY)
{
    public LineSums With(double x, double y) => new(Count + 1, X + x, Y + y, XX + x * x, XY + x * y, YY + y * y);
}

/// <summary>Normal prior of a line's level at x = 0 and of its gain, apart from each other.</summary>
internal readonly record struct LinePrior(double Level, double LevelSpread, double Gain, double GainSpread);

/// <summary>Level and gain of y = level + gain·x + e after readings with known scatter: a normal distribution, and how well the readings were foretold.</summary>
/// <remarks>
/// Bayesian linear regression with a normal prior: precisions add. Gelman et al., Bayesian Data Analysis, 3rd ed., 14.8; C. Bishop, Pattern Recognition
/// and Machine Learning (2006), (3.50), (3.51) and the evidence (3.86) (numbers from memory).
/// </remarks>
internal readonly record struct ConjugateLine(double Level, double Gain, double LevelVariance, double Covariance, double GainVariance, double LogEvidence)
{
    private const double LogTwoPi = 1.8378770664093454836;

    /// <param name="scatter">Standard deviation of one reading about the line, above zero.</param>
    public static ConjugateLine Of(LineSums sums, LinePrior prior, double scatter)
    {
        var weight = 1 / (scatter * scatter);
        double levelWeight = 1 / (prior.LevelSpread * prior.LevelSpread), gainWeight = 1 / (prior.GainSpread * prior.GainSpread);
        double aa = levelWeight + weight * sums.Count, ag = weight * sums.X, gg = gainWeight + weight * sums.XX;
        // Counted from the prior's line, so that only departures are squared.
        var y = sums.Y - sums.Count * prior.Level - prior.Gain * sums.X;
        var xy = sums.XY - prior.Level * sums.X - prior.Gain * sums.XX;
        var yy = sums.YY - 2 * prior.Level * sums.Y - 2 * prior.Gain * sums.XY
            + sums.Count * prior.Level * prior.Level + 2 * prior.Level * prior.Gain * sums.X + prior.Gain * prior.Gain * sums.XX;
        var determinant = aa * gg - ag * ag;
        double level = weight * (gg * y - ag * xy) / determinant, gain = weight * (aa * xy - ag * y) / determinant;
        var misfit = weight * (yy - level * y - gain * xy);
        var logEvidence = -0.5 * (sums.Count * (LogTwoPi - Math.Log(weight)) + Math.Log(determinant / (levelWeight * gainWeight)) + misfit);
        return new(prior.Level + level, prior.Gain + gain, gg / determinant, -ag / determinant, aa / determinant, logEvidence);
    }
}
