using Ramwright.Metrology.Distributions;

namespace Ramwright.Simulate;

/// <summary>Seeded draws of tools and of what their series show.</summary>
internal sealed class Draws(int seed)
{
    private readonly Random _random = new(seed);

    /// <summary>A standard normal number.</summary>
    public double Normal01() => Normal.Quantile(1 - _random.NextDouble());

    /// <summary>s/σ of a series, for n − 1 degrees of freedom.</summary>
    public double ScatterRatio(double df) => Math.Sqrt(Gamma(0.5 * df) / (0.5 * df));

    /// <summary>σ/s₀ of a tool from a population of ν₀ degrees of freedom; 1 where all tools are equal.</summary>
    public double Tool(double alike) => double.IsInfinity(alike) ? 1 : 1 / ScatterRatio(alike);

    /// <summary>G. Marsaglia and W. W. Tsang, "A simple method for generating gamma variables" (2000); below shape 1 by their power of a uniform number.</summary>
    private double Gamma(double shape)
    {
        if (shape < 1)
            return Gamma(shape + 1) * Math.Pow(1 - _random.NextDouble(), 1 / shape);
        double d = shape - 1.0 / 3, c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            var x = Normal01();
            var v = 1 + c * x;
            if (v <= 0)
                continue;
            v = v * v * v;
            if (Math.Log(1 - _random.NextDouble()) < 0.5 * x * x + d - d * v + d * Math.Log(v))
                return d * v;
        }
    }
}
