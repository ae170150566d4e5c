using CsCheck;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Uncertainty.Expressions;

namespace Ramwright.Metrology.Tests.Uncertainty.Expressions;

public sealed class ExpressionTests
{
    [Theory]
    [InlineData("1 + 2 * 3", 7)]
    [InlineData("(1 + 2) × 3", 9)]
    [InlineData("2 − 3 − 4", -5)]
    [InlineData("8 ÷ 2 / 2", 2)]
    [InlineData("-2^2", -4)]
    [InlineData("2^3^2", 512)]
    [InlineData("2^-1", 0.5)]
    [InlineData("--3", 3)]
    [InlineData("+3", 3)]
    [InlineData("3² + 2³", 17)]
    [InlineData("2.5e-2 · 4", 0.1)]
    [InlineData("sqrt(16) + exp(0) + ln(1) + log10(100)", 7)]
    [InlineData("sin(pi/2) + cos(0) + tan(0) + atan(0) + abs(-2)", 4)]
    public void Computes_as_written(string text, double value) => Assert.Equal(value, Models.Read(text).Value([]), 1e-15);

    [Fact]
    public void Takes_inputs_by_name() => Assert.Equal(18, Models.Read("p*A_1 - δ", "p", "A_1", "δ").Value([5, 4, 2]));

    [Theory]
    [InlineData("", 0, 1, "bad-formula", "nothing stands there")]
    [InlineData("p +", 2, 1, "bad-formula", "the formula ends where a value is wanted")]
    [InlineData("p * (q + 1", 4, 1, "bad-formula", "not closed")]
    [InlineData("p) + 1", 1, 1, "bad-formula", "')' does not fit here")]
    [InlineData("p q", 2, 1, "bad-formula", "'q' does not fit here")]
    [InlineData("2 * presure", 4, 7, "unknown-input", "no input is called 'presure'")]
    [InlineData("sqr(p)", 0, 3, "unknown-function", "no function is called 'sqr'")]
    [InlineData("sqrt p", 0, 4, "bad-formula", "sqrt is a function")]
    [InlineData("p & q", 2, 1, "bad-formula", "'&' does not fit here")]
    [InlineData("1e999 * p", 0, 5, "bad-formula", "'1e999' is no number")]
    [InlineData("NaN", 0, 3, "unknown-input", "no input is called 'NaN'")]
    public void A_mistake_is_shown_where_it_stands(string text, int start, int length, string code, string what)
    {
        var fault = Assert.IsType<TextReading<Expression>.Bad>(Expression.Read(text, ["p", "q", "pressure"])).Fault;
        Assert.Equal((start, length, code), (fault.Start, fault.Length, fault.Code));
        Assert.Contains(what, fault.What, StringComparison.Ordinal);
        Assert.NotEmpty(fault.Mend);
    }

    [Fact]
    public void A_near_name_is_offered()
    {
        Assert.Contains("write pressure", Assert.IsType<TextReading<Expression>.Bad>(Expression.Read("2*presure", ["p", "pressure"])).Fault.Mend, StringComparison.Ordinal);
        Assert.Contains("write sqrt", Assert.IsType<TextReading<Expression>.Bad>(Expression.Read("sqr(2)", [])).Fault.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void Bounded_in_length_and_depth()
    {
        foreach (var hostile in (string[])[new string('(', 1_900), new string('-', 1_900) + "1", "1" + new string('+', 3_000), string.Concat(Enumerable.Repeat("sin(", 400)), string.Concat(Enumerable.Repeat("2^", 900))])
            Assert.IsType<TextReading<Expression>.Bad>(Expression.Read(hostile, []));
    }

    [Fact]
    public void No_text_throws() => Gen.String[Gen.Char["pq 12.e+-*/^()sqrtlnπ²x·"], 0, 40].ForAll(text =>
        Expression.Read(text, ["p", "q"]) is TextReading<Expression>.Good { Value: var good } ? good.WithSlopes([1.5, 2]).Slopes.Length == 2 : true, iter: 20_000);

    // Oracle: central differences, whose error is of the order h²
    [Theory]
    [InlineData("p*q - p/q + p^q")]
    [InlineData("sqrt(p) * exp(-q) + ln(p*q) - log10(q)")]
    [InlineData("sin(p*q) / cos(p) + tan(q)^2 - atan(p - q)")]
    [InlineData("abs(-p) ^ 3 - (p - 2*q)²")]
    public void Slopes_are_those_of_small_steps(string text) => Gen.Select(Gen.Double[0.3, 1.2], Gen.Double[0.3, 1.2]).ForAll((p, q) =>
    {
        const double H = 1e-5;
        var model = Models.Read(text, "p", "q");
        var slopes = model.WithSlopes([p, q]).Slopes;
        var byP = (model.Value([p + H, q]) - model.Value([p - H, q])) / (2 * H);
        var byQ = (model.Value([p, q + H]) - model.Value([p, q - H])) / (2 * H);
        return Math.Abs(slopes[0] - byP) < 2e-7 * (1 + Math.Abs(byP)) && Math.Abs(slopes[1] - byQ) < 2e-7 * (1 + Math.Abs(byQ));
    }, iter: 500);

    [Fact]
    public void Slopes_are_exact_to_the_last_digits()
    {
        var slopes = Models.Read("ln(p) * sqrt(q)", "p", "q").WithSlopes([3, 5]).Slopes;
        Assert.Equal(Math.Sqrt(5) / 3, slopes[0], 1e-15);
        Assert.Equal(Math.Log(3) / (2 * Math.Sqrt(5)), slopes[1], 1e-15);
    }
}
