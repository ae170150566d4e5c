using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Tolerance;

/// <summary>The confidence with which mean ∓ k·s holds a share, as a function of k: the defining integral of the two-sided factor.</summary>
/// <remarks>
/// Outer variable u = √n·(mean − μ)/σ, standard normal; the interval holds the share when s/σ ≥ r(u/√n)/k. The integrand is analytic and even,
/// so the trapezoidal rule converges exponentially. Two things set its step: the steepness of the inner χ² probability, √(2ν/n)/k, and the
/// nearest singularity of r, where dr/dx ends: x·r = iπ/2, a distance d = π·√n/(2r) from the axis, which costs an error of e^(−2πd/h).
/// r does not depend on k and is solved once.
/// </remarks>
internal sealed class ContentIntegral
{
    private readonly double _df;
    private readonly double[] _radii;
    private readonly double[] _weights;

    public ContentIntegral(int n, double coverage, double df)
    {
        _df = df;
        var middle = Normal.TailQuantile(0.5 * (1 - coverage));
        var steep = Math.Sqrt(2 * df / n) / Math.Max(1, middle);
        var singularity = Math.PI * Math.Sqrt(n) / (2 * middle);
        var h = Math.Min(0.5 / Math.Sqrt(1 + steep * steep), 2 * Math.PI / 37 * singularity);
        var count = (int)Math.Ceiling(8.6 / h) + 1;
        _radii = new double[count];
        _weights = new double[count];
        double radius = middle, root = Math.Sqrt(n), sum = 0;
        for (var i = 0; i < count; i++)
        {
            _radii[i] = radius = Radius(i * h / root, 1 - coverage, radius);
            sum += _weights[i] = (i == 0 ? 0.5 : 1) * Normal.Density(i * h);
        }

        for (var i = 0; i < count; i++)
            _weights[i] /= sum;
        Middle = _radii[0] * (1 + 0.5 / n);
    }

    private double Middle { get; }

    /// <summary>Howe's approximation, a start for the search and never an answer.</summary>
    public double Guess(double confidence) => Middle * Math.Sqrt(_df / ChiSquared.Quantile(1 - confidence, _df));

    /// <summary>The confidence reached with <paramref name="k"/>, and its slope in ln k.</summary>
    public (double Confidence, double Slope) ConfidenceOf(double k)
    {
        double confidence = 0, slope = 0;
        for (var i = 0; i < _radii.Length; i++)
        {
            var x = _df * _radii[i] * _radii[i] / (k * k);
            confidence += _weights[i] * ChiSquared.Tail(x, _df);
            slope += _weights[i] * 2 * x * ChiSquared.Density(x, _df);
        }

        return (confidence, slope);
    }

    /// <summary>r with Φ(x + r) − Φ(x − r) = 1 − <paramref name="outside"/>; from a start at or below r Newton climbs and cannot pass it.</summary>
    private static double Radius(double x, double outside, double start)
    {
        var r = start;
        for (var step = 0; step < 60; step++)
        {
            var move = (Normal.Tail(r + x) + Normal.Tail(r - x) - outside) / (Normal.Density(r + x) + Normal.Density(r - x));
            r += move;
            if (Math.Abs(move) <= 1e-15 * r)
                break;
        }

        return r;
    }
}
