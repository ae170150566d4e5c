using System.Collections.Immutable;
using Ramwright.Metrology.Uncertainty.Expressions;

namespace Ramwright.Metrology.Uncertainty;

/// <summary>The ready-made budget of the force at the ram: pressure × area − spring − friction, all in SI.</summary>
/// <remarks>A balance of forces on a ram at rest or moving slowly; what the jaws lose is not in it.</remarks>
public static class OutputForce
{
    /// <summary>The model as it is written in a budget file.</summary>
    public const string Model = "pressure * area - spring - friction";

    private static readonly ImmutableArray<string> Names = ["pressure", "area", "spring", "friction"];

    /// <param name="pressurePascals">Gauge pressure and what its measurement may be off.</param>
    /// <param name="areaSquareMetres">Area of the ram.</param>
    /// <param name="springNewtons">Force of the return spring at this stroke.</param>
    /// <param name="frictionNewtons">Of seals and guides, against the motion.</param>
    /// <returns>A budget whose result is a force in newtons. The inputs' own names are set aside.</returns>
    public static Budget Of(BudgetInput pressurePascals, BudgetInput areaSquareMetres, BudgetInput springNewtons, BudgetInput frictionNewtons)
    {
        BudgetInput[] inputs = [pressurePascals, areaSquareMetres, springNewtons, frictionNewtons];
        return Expression.Read(Model, Names) is Input.TextReading<Expression>.Good(var model)
            ? new Budget(model, [.. inputs.Select((input, i) => input with { Name = Names[i] })])
            : throw new InvalidOperationException("The model does not read.");
    }
}
