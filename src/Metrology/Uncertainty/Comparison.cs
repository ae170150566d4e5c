using Ramwright.Metrology.Uncertainty.MonteCarlo;

namespace Ramwright.Metrology.Uncertainty;

/// <summary>Whether the law of propagation of uncertainty and the simulation agree.</summary>
/// <param name="Tolerance">δ: half the last digit that the simulated standard uncertainty is stated with, in the result's unit.</param>
/// <param name="LowApart">Distance of the lower ends.</param>
/// <param name="HighApart">Distance of the upper ends.</param>
/// <param name="OwnError">How far off the simulated ends may be themselves.</param>
/// <remarks>JCGM 101:2008, 8.1 (clause from memory).</remarks>
public sealed record Comparison(double Tolerance, double LowApart, double HighApart, double OwnError)
{
    /// <summary>Both ends lie within the tolerance: the simpler answer may be used. Else the simulation is the one to report.</summary>
    public bool Agree => LowApart <= Tolerance && HighApart <= Tolerance;

    /// <summary>More trials would not turn the answer.</summary>
    public bool IsSure => Math.Abs(Math.Max(LowApart, HighApart) - Tolerance) > OwnError;

    /// <param name="linear">With the same coverage as the simulation.</param>
    /// <param name="simulated">With an interval as much below as above.</param>
    /// <param name="digits">Digits of the standard uncertainty that count, 1 or 2.</param>
    public static Comparison Of(LinearAnswer.Evaluated linear, MonteCarloFigures simulated, int digits = 2)
    {
        ArgumentNullException.ThrowIfNull(linear);
        ArgumentNullException.ThrowIfNull(simulated);
        return new(
            NumericalTolerance.Of(simulated.Standard, digits),
            Math.Abs(linear.Estimate - linear.Expanded - simulated.Low),
            Math.Abs(linear.Estimate + linear.Expanded - simulated.High),
            simulated.OwnError);
    }
}
