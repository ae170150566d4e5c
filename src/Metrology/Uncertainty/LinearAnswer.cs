using System.Collections.Immutable;

namespace Ramwright.Metrology.Uncertainty;

/// <summary>One line of a budget.</summary>
/// <param name="Input">The input's name.</param>
/// <param name="Component">The reason, with its spread, divisor and degrees of freedom.</param>
/// <param name="Sensitivity">∂y/∂x, in the result's unit over the input's.</param>
/// <param name="Amount">|∂y/∂x|·u, in the result's unit.</param>
/// <param name="Share">Of the variance of all lines, 0 to 1; correlations left aside.</param>
public sealed record Contribution(string Input, Component Component, double Sensitivity, double Amount, double Share);

/// <summary>What the law of propagation of uncertainty says.</summary>
public abstract record LinearAnswer
{
    private LinearAnswer() { }

    /// <summary>The budget worked out; all amounts in the result's unit.</summary>
    /// <param name="Estimate">The model at the estimates.</param>
    /// <param name="Standard">Combined standard uncertainty.</param>
    /// <param name="Systematic">Its part that is the same in every run.</param>
    /// <param name="Random">Its part that is new in each run.</param>
    /// <param name="DegreesOfFreedom">Effective, Welch and Satterthwaite; may be infinite.</param>
    /// <param name="Coverage">Asked share, above 0 and below 1.</param>
    /// <param name="Factor">Coverage factor k.</param>
    /// <param name="Lines">As given, one for each component.</param>
    public sealed record Evaluated(double Estimate, double Standard, double Systematic, double Random, double DegreesOfFreedom, double Coverage, double Factor, ImmutableArray<Contribution> Lines) : LinearAnswer
    {
        /// <summary>Expanded uncertainty k·u, a value in the result's unit.</summary>
        public double Expanded => Factor * Standard;
    }

    /// <summary>The model has no finite value at the estimates, such as by a division by zero.</summary>
    public sealed record NoValue : LinearAnswer;

    /// <summary>The model has no finite slope by this input there, such as √x at zero.</summary>
    public sealed record NoSlope(string Input) : LinearAnswer;
}
