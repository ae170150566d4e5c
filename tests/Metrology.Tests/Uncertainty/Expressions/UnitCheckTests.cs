using Ramwright.Metrology.Input;
using Ramwright.Metrology.Uncertainty.Expressions;

namespace Ramwright.Metrology.Tests.Uncertainty.Expressions;

public sealed class UnitCheckTests
{
    private static TextReading<Powers> Check(string text) => UnitCheck.Check(
        Models.Read(text, "p", "A", "F", "k", "x", "phi", "T", "alpha", "n"),
        [.. new[] { Dimension.Pressure, Dimension.Area, Dimension.Force, Dimension.Stiffness, Dimension.Length, Dimension.Angle, Dimension.Temperature, Dimension.Expansion }.Select(Powers.Of), Powers.None]);

    [Theory]
    [InlineData("p * A - F - k * x", Dimension.Force)]
    [InlineData("F / A", Dimension.Pressure)]
    [InlineData("sqrt(A)", Dimension.Length)]
    [InlineData("A^(1/2) + x^1", Dimension.Length)]
    [InlineData("F * x * sin(phi)", Dimension.Torque)]
    [InlineData("x * (1 + alpha * T)", Dimension.Length)]
    [InlineData("x * exp(-n) * 2^n + abs(-x)", Dimension.Length)]
    [InlineData("x^-1 * A", Dimension.Length)]
    public void What_fits_measures(string model, Dimension dimension) => Assert.Equal(Powers.Of(dimension), Assert.IsType<TextReading<Powers>.Good>(Check(model)).Value);

    [Theory]
    [InlineData("p - A", 2, "bar (pressure) and mm² (area) are subtracted here")]
    [InlineData("F + p * A * x", 2, "N (force) and N·m (torque) are added here")]
    [InlineData("exp(x)", 0, "a function is taken of mm (length) here")]
    [InlineData("x^n", 1, "mm (length) is raised to a power that is no fixed number")]
    [InlineData("2^x", 1, "an exponent is mm (length) here")]
    [InlineData("x + n", 2, "mm (length) and a plain number are added here")]
    [InlineData("p * p + n", 6, "kg^2·m^-2·s^-4 and a plain number are added here")]
    public void What_clashes_is_shown_where(string model, int start, string what)
    {
        var fault = Assert.IsType<TextReading<Powers>.Bad>(Check(model)).Fault;
        Assert.Equal((start, what, "unit-clash"), (fault.Start, fault.What, fault.Code));
    }
}
