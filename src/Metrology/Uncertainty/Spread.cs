namespace Ramwright.Metrology.Uncertainty;

/// <summary>How the true value may lie around an estimate; each form is centred on it.</summary>
/// <remarks>Divisors: JCGM 100:2008, 4.3.3 to 4.3.9 and (U-shaped) H.1.3.4; clauses from memory.</remarks>
public abstract record Spread
{
    private Spread(double given, double divisor)
    {
        if (!(given >= 0 && double.IsFinite(given)))
            throw new ArgumentOutOfRangeException(nameof(given), given, "An uncertainty is a finite number, zero or more.");
        if (!(divisor > 0 && double.IsFinite(divisor)))
            throw new ArgumentOutOfRangeException(nameof(divisor), divisor, "A coverage factor is a finite number above zero.");
        (Given, Divisor) = (given, divisor);
    }

    /// <summary>What was stated: half the width, a standard or an expanded uncertainty; a value in the input's unit.</summary>
    public double Given { get; }

    /// <summary>Factor by which it is divided to become a standard uncertainty.</summary>
    public double Divisor { get; }

    /// <summary>The standard uncertainty, a value in the input's unit.</summary>
    public double Standard => Given / Divisor;

    /// <summary>Bell-shaped, by its standard uncertainty. With few degrees of freedom it is drawn from Student's t.</summary>
    public sealed record Normal(double U) : Spread(U, 1);

    /// <summary>Bell-shaped, by an expanded uncertainty and its coverage factor, as certificates state it.</summary>
    public sealed record Expanded(double U, double K) : Spread(U, K);

    /// <summary>Anywhere within ± half the width alike.</summary>
    public sealed record Rectangular(double HalfWidth) : Spread(HalfWidth, Math.Sqrt(3));

    /// <summary>The middle twice as likely as the average, the ends never.</summary>
    public sealed record Triangular(double HalfWidth) : Spread(HalfWidth, Math.Sqrt(6));

    /// <summary>Mostly near the ends, as of something that swings (the arcsine distribution).</summary>
    public sealed record UShaped(double HalfWidth) : Spread(HalfWidth, Math.Sqrt(2));
}
