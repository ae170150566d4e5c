using Ramwright.Metrology.Distributions;

namespace Ramwright.Metrology.Conformity;

/// <summary>A guard band that holds a stated risk of false acceptance, or the reason why there is none.</summary>
public abstract record HeldRisk
{
    private HeldRisk() { }

    /// <summary>Limits moved inward by the band hold the risk.</summary>
    /// <param name="Width">The band, in the limits' unit; 0 when simple acceptance holds the risk already.</param>
    /// <param name="Accepted">The accepted readings.</param>
    public sealed record Band(double Width, ToleranceLimits Accepted) : HeldRisk;

    /// <summary>Even a reading in the middle of the window is riskier: the measurement is too coarse.</summary>
    /// <param name="Least">The least risk there is.</param>
    public sealed record TooCoarse(double Least) : HeldRisk;

    /// <summary>The band at whose edge a reading has just this chance of a tool that does not conform, nothing known beforehand.</summary>
    /// <param name="limits">What the true value must keep.</param>
    /// <param name="standardUncertainty">u, above zero.</param>
    /// <param name="most">Chance allowed at the edge, above 0 and at most 0.5.</param>
    public static HeldRisk Specific(ToleranceLimits limits, double standardUncertainty, double most)
    {
        var u = Check(standardUncertainty, most);
        double At(double w) => ConformityRisk.SpecificFalseAccept(double.IsInfinity(limits.Low) ? limits.High - w : limits.Low + w, u, limits);
        var widest = Math.Min(limits.HalfWidth, 40 * u);
        if (At(widest) > most)
            return new TooCoarse(At(widest));
        return BandOf(limits, most - At(0) >= 0 ? 0 : Halved(w => most - At(w), widest));
    }

    /// <summary>The least band with which at most this share of all tools is accepted wrongly.</summary>
    /// <inheritdoc cref="Specific" path="/param"/>
    /// <param name="prior">How true values are spread.</param>
    /// <param name="most">Share of all tools, above 0 and at most 0.5.</param>
    public static HeldRisk Global(ToleranceLimits limits, double standardUncertainty, Prior prior, double most)
    {
        var u = Check(standardUncertainty, most);
        double At(double w) => limits.Inward(w) is { } accepted ? ConformityRisk.Global(limits, accepted, u, prior).FalseAccept : 0;
        var widest = Math.Min(limits.HalfWidth, 40 * u);
        return BandOf(limits, At(0) <= most ? 0 : Halved(w => most - At(w), widest));
    }

    private static double Check(double standardUncertainty, double most) => most is > 0 and <= 0.5
        ? Uncertain.Check(standardUncertainty)
        : throw new ArgumentOutOfRangeException(nameof(most), most, "A risk above 0 and at most 0.5 is wanted.");

    private static double Halved(Func<double, double> rising, double widest) => RisingRoot.Find(w => (rising(w), double.NaN), 0.5 * widest, 0, widest);

    private static HeldRisk BandOf(ToleranceLimits limits, double width) => limits.Inward(width) is { } accepted ? new Band(width, accepted) : new TooCoarse(0);
}
