namespace Ramwright.Metrology.Conformity;

/// <summary>What a rule does over all tools that come in.</summary>
/// <param name="FalseAccept">Share of all tools that do not conform and are accepted.</param>
/// <param name="FalseReject">Share of all tools that conform and are rejected.</param>
/// <param name="Accepted">Share of all tools that are accepted.</param>
/// <param name="Conforming">Share of all tools that conform.</param>
public sealed record GlobalRisk(double FalseAccept, double FalseReject, double Accepted, double Conforming)
{
    /// <summary>Of the accepted tools the share that does not conform; 0 when none is accepted.</summary>
    public double FalseAcceptOfAccepted => Accepted > 0 ? FalseAccept / Accepted : 0;
}

/// <summary>The risks of deciding by a measurement that is not exact. Measurement errors are normal.</summary>
/// <remarks>
/// JCGM 106:2012: 7.3 to 7.4 (conformance probability), 9.3 (specific risks), 9.4 and 9.5 (global risks); clauses from memory.
/// Global risks integrate prior density times chance of acceptance by Gauss panels no wider than half of u and of the prior's deviation: to 1e-12 and better.
/// </remarks>
public static class ConformityRisk
{
    /// <summary>Chance that the true value keeps the limits, from one reading alone (nothing known beforehand).</summary>
    /// <param name="reading">Measured value, in the limits' unit.</param>
    /// <param name="standardUncertainty">u, above zero.</param>
    /// <param name="limits">What the true value must keep.</param>
    public static double Conformance(double reading, double standardUncertainty, ToleranceLimits limits) => Uncertain.Inside(limits, reading, Uncertain.Check(standardUncertainty));

    /// <summary>Chance that the true value keeps the limits, from a reading and what past tools were like.</summary>
    /// <inheritdoc cref="Conformance(double, double, ToleranceLimits)" path="/param"/>
    /// <param name="prior">How true values are spread.</param>
    public static double Conformance(double reading, double standardUncertainty, ToleranceLimits limits, Prior prior)
    {
        ArgumentNullException.ThrowIfNull(prior);
        var u = Uncertain.Check(standardUncertainty);
        if (prior is Prior.Normal { Mean: var mean, StandardDeviation: var sd })
        {
            var weight = sd * sd / (sd * sd + u * u); // of the reading
            return Uncertain.Inside(limits, mean + weight * (reading - mean), u * Math.Sqrt(weight));
        }

        var (from, to) = prior.Reach;
        double Joint(double low, double high) => Panels.Integrate(x => prior.Density(x) * Distributions.Normal.Density((reading - x) / u), Panels.Edges(Math.Max(low, from), Math.Min(high, to), prior, u, reading));
        return Joint(limits.Low, limits.High) / Joint(from, to);
    }

    /// <summary>Chance that a tool is accepted wrongly when its reading is this: specific consumer's risk.</summary>
    /// <inheritdoc cref="Conformance(double, double, ToleranceLimits)" path="/param"/>
    public static double SpecificFalseAccept(double reading, double standardUncertainty, ToleranceLimits limits) => Uncertain.Outside(limits, reading, Uncertain.Check(standardUncertainty));

    /// <summary>What a rule does over all tools.</summary>
    /// <param name="limits">What the true value must keep.</param>
    /// <param name="accepted">Which readings are accepted.</param>
    /// <param name="standardUncertainty">u, above zero, in the limits' unit; at least a millionth of the prior's deviation.</param>
    /// <param name="prior">How true values are spread.</param>
    public static GlobalRisk Global(ToleranceLimits limits, ToleranceLimits accepted, double standardUncertainty, Prior prior)
    {
        ArgumentNullException.ThrowIfNull(prior);
        var u = Uncertain.Check(standardUncertainty);
        ArgumentOutOfRangeException.ThrowIfLessThan(u, 1e-6 * prior.StandardDeviation, nameof(standardUncertainty));
        var (from, to) = prior.Reach;
        double[] Edges(double low, double high) => Panels.Edges(Math.Max(low, from), Math.Min(high, to), prior, u, accepted.Low, accepted.High);
        double Accepted(double x) => prior.Density(x) * Uncertain.Inside(accepted, x, u);
        double Rejected(double x) => prior.Density(x) * Uncertain.Outside(accepted, x, u);
        var inside = Edges(limits.Low, limits.High);
        var falseAccept = Panels.Integrate(Accepted, Edges(from, limits.Low)) + Panels.Integrate(Accepted, Edges(limits.High, to));
        return new(falseAccept, Panels.Integrate(Rejected, inside), falseAccept + Panels.Integrate(Accepted, inside), Panels.Integrate(prior.Density, inside));
    }
}
