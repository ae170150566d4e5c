using Ramwright.Metrology.Quantities;
using Ramwright.Metrology.Uncertainty;

namespace Ramwright.Proving.Reference;

/// <summary>How a contribution is spread.</summary>
public enum SpreadShape { Normal, Expanded, Rectangular, Triangular, UShaped }

/// <summary>What a contribution is stated in.</summary>
public enum BudgetUnit { Pressure, Force, Length, Temperature }

/// <summary>One contribution to what a reference may be off, as it is printed and kept (JCGM 100:2008, Table H.1 has the same columns).</summary>
/// <param name="What"><c>calibration</c>, <c>calibration line</c>, <c>drift</c>, <c>temperature</c>, <c>resolution</c>, <c>return spring</c> ...</param>
/// <param name="Given">What was stated: half a width, a standard or an expanded uncertainty; a value in SI of <paramref name="Unit"/>.</param>
/// <param name="Divisor">By which it becomes a standard uncertainty, a factor.</param>
/// <param name="Sensitivity">∂p/∂x at the middle of the limits; a factor in pascals over SI of <paramref name="Unit"/>.</param>
/// <param name="Standard">|sensitivity| × given / divisor.</param>
/// <param name="Effect">The same in every run, or new in each.</param>
public sealed record BudgetLine(string What, SpreadShape Shape, BudgetUnit Unit, double Given, double Divisor, double Sensitivity, Pressure Standard, Effect Effect)
{
    /// <summary>Degrees of freedom; null where the spread is taken as known.</summary>
    public double? DegreesOfFreedom { get; init; }

    internal static BudgetLine Of(Contribution line, BudgetUnit unit) => new(
        line.Component.Name,
        line.Component.Spread switch
        {
            Spread.Normal => SpreadShape.Normal,
            Spread.Expanded => SpreadShape.Expanded,
            Spread.Rectangular => SpreadShape.Rectangular,
            Spread.Triangular => SpreadShape.Triangular,
            _ => SpreadShape.UShaped,
        },
        unit, line.Component.Spread.Given, line.Component.Spread.Divisor, line.Sensitivity, Pressure.FromPascals(line.Amount), line.Component.Effect)
    {
        DegreesOfFreedom = double.IsInfinity(line.Component.DegreesOfFreedom) ? null : line.Component.DegreesOfFreedom,
    };
}
