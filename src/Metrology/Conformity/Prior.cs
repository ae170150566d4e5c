using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Conformity;

/// <summary>How the true values of the tools that come in are spread, before one is measured.</summary>
public abstract record Prior
{
    private Prior(double mean, double standardDeviation) => (Mean, StandardDeviation) = double.IsFinite(mean) && standardDeviation > 0 && double.IsFinite(standardDeviation)
        ? (mean, standardDeviation)
        : throw new ArgumentOutOfRangeException(nameof(standardDeviation), standardDeviation, "A finite mean and a standard deviation above zero are wanted.");

    /// <summary>Mean, a value in the measurement's unit.</summary>
    public double Mean { get; }

    /// <summary>Standard deviation, a value in the measurement's unit.</summary>
    public double StandardDeviation { get; }

    /// <summary>Density at a true value, one over the measurement's unit.</summary>
    internal abstract double Density(double x);

    /// <summary>Where all but some 1e-18 of it lies.</summary>
    internal abstract (double From, double To) Reach { get; }

    /// <summary>Places where the density changes faster than its standard deviation tells.</summary>
    internal virtual IEnumerable<double> Breaks => [];

    /// <summary>The normal distribution.</summary>
    public sealed record Normal : Prior
    {
        /// <param name="mean">Finite.</param>
        /// <param name="standardDeviation">Above zero.</param>
        public Normal(double mean, double standardDeviation)
            : base(mean, standardDeviation) { }

        internal override (double From, double To) Reach => (Mean - 9 * StandardDeviation, Mean + 9 * StandardDeviation);

        internal override double Density(double x) => Distributions.Normal.Density((x - Mean) / StandardDeviation) / StandardDeviation;
    }

    /// <summary>The gamma distribution, for what is never negative, as a runout.</summary>
    public sealed record Gamma : Prior
    {
        private readonly double shape;
        private readonly double scale;

        /// <param name="shape">1 to 1,000.</param>
        /// <param name="scale">Above zero.</param>
        public Gamma(double shape, double scale)
            : base(shape * scale, Math.Sqrt(shape) * scale)
        {
            if (shape is not (>= 1 and <= 1_000))
                throw new ArgumentOutOfRangeException(nameof(shape), shape, "A shape of 1 to 1,000 is wanted.");
            (this.shape, this.scale) = (shape, scale);
        }

        internal override (double From, double To) Reach => (0, scale * (shape + 9 * Math.Sqrt(shape) + 45));

        internal override IEnumerable<double> Breaks => Enumerable.Range(1, 40).Select(k => StandardDeviation * Math.Pow(0.5, k));

        internal override double Density(double x) => x > 0 ? GammaFunction.Term(shape, x / scale) / x : 0;
    }
}
