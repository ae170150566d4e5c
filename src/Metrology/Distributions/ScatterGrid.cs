namespace Ramwright.Metrology.Distributions;

/// <summary>
/// The distribution of s/σ for a sample standard deviation s with ν degrees of freedom, as nodes and weights:
/// the mean of g(s/σ) is Σ weight·g(ratio), to some 14 digits for every smooth g when nothing less is asked.
/// </summary>
/// <remarks>
/// s/σ = χ_ν/√ν. In y = ln(s/σ) its density e^(ν·y − ν·e^(2y)/2) is analytic and dies away on both sides, so the plain trapezoidal rule
/// converges exponentially (Trefethen &amp; Weideman, SIAM Review 56 (2014) 385). With a step h the error is about
/// e^(−2π²/(h²·(2ν + S²))), S being the steepest slope dg/dy in normal scores; the step below makes that 10^(−digits).
/// The weights sum to 1 by division, so no gamma function is needed.
/// </remarks>
public sealed class ScatterGrid
{
    private readonly double[] _ratios;
    private readonly double[] _weights;

    /// <param name="df">ν, degrees of freedom, 0.5 or more and at most 1e7.</param>
    /// <param name="slope">How steep g may be: for g = Φ(t·w − δ) the largest |δ|.</param>
    /// <param name="digits">Digits wanted, 4 to 16; fewer make fewer nodes.</param>
    public ScatterGrid(double df, double slope, int digits = 16)
    {
        if (df is not (>= 0.5 and <= 1e7))
            throw new ArgumentOutOfRangeException(nameof(df), df, "Degrees of freedom are 0.5 to 1e7.");
        var steepest = Math.Abs(slope) + 5;
        if (digits is not (>= 4 and <= 16))
            throw new ArgumentOutOfRangeException(nameof(digits), digits, "Digits are 4 to 16.");
        var h = Math.Min(1.6 / digits, Math.PI * Math.Sqrt(2 / (digits * Math.Log(10))) / Math.Sqrt(2 * df + steepest * steepest));
        var least = Math.Pow(10, -digits - 3);
        var down = Steps(df, -h, least);
        var up = Steps(df, h, least);
        _ratios = new double[down + up + 1];
        _weights = new double[_ratios.Length];
        var sum = 0.0;
        for (var i = 0; i < _ratios.Length; i++)
        {
            var y = (i - down) * h;
            _ratios[i] = Math.Exp(y);
            sum += _weights[i] = Weight(df, y);
        }

        for (var i = 0; i < _weights.Length; i++)
            _weights[i] /= sum;
    }

    /// <summary>Values of s/σ, rising.</summary>
    public ReadOnlySpan<double> Ratios => _ratios;

    /// <summary>Their weights; they sum to 1.</summary>
    public ReadOnlySpan<double> Weights => _weights;

    private static double Weight(double df, double y) => Math.Exp(df * (y - 0.5 * (Math.Exp(2 * y) - 1)));

    private static int Steps(double df, double h, double least)
    {
        var count = 1;
        while (Weight(df, count * h) > least)
            count++;
        return count;
    }
}
