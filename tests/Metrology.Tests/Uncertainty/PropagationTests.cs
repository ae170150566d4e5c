using CsCheck;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Metrology.Uncertainty.Expressions;
using static Ramwright.Metrology.Tests.Uncertainty.Models;

namespace Ramwright.Metrology.Tests.Uncertainty;

public sealed class PropagationTests
{
    [Fact]
    public void A_division_by_zero_has_no_value() => Assert.IsType<LinearAnswer.NoValue>(Propagation.Evaluate(Of("a / b", X("a", 1, Normal(0.1)), X("b", 0, Normal(0.1)))));

    [Fact]
    public void A_root_at_zero_has_no_slope() => Assert.Equal(new LinearAnswer.NoSlope("b"), Propagation.Evaluate(Of("a + sqrt(b)", X("a", 1, Normal(0.1)), X("b", 0, Normal(0.1)))));

    [Fact]
    public void Exact_inputs_make_an_exact_result()
    {
        var answer = Of("2 * a", X("a", 3)).Linear();
        Assert.Equal((6, 0, 0, 0), (answer.Estimate, answer.Standard, answer.Expanded, answer.Lines.Length));
    }

    [Fact]
    public void Fully_correlated_inputs_add_and_opposed_ones_cancel()
    {
        Budget Pair(double r) => Of("a + b", X("a", 1, Normal(3)), X("b", 1, Normal(4))).With(new Correlation(0, 1, r));
        Assert.Equal(7, Pair(1).Linear().Standard, 1e-12);
        Assert.Equal(1, Pair(-1).Linear().Standard, 1e-12);
        Assert.Equal(5, Pair(0).Linear().Standard, 1e-12);
    }

    [Fact]
    public void Correlations_that_cannot_be_are_refused()
    {
        var three = Of("a + b + c", X("a", 0, Normal(1)), X("b", 0, Normal(1)), X("c", 0, Normal(1)));
        Assert.Throws<ArgumentException>(() => three.With(new(0, 1, 0.9), new(1, 2, 0.9), new(0, 2, -0.9)));
        Assert.False(Budget.CanBe(3, [new(0, 1, 1), new(1, 2, 1), new(0, 2, 0)]));
        Assert.True(Budget.CanBe(3, [new(0, 1, 1), new(1, 2, 1), new(0, 2, 1)]));
        Assert.False(Budget.CanBe(2, [new(0, 0, 1)]));
        Assert.False(Budget.CanBe(2, [new(0, 1, double.NaN)]));
    }

    [Fact]
    public void What_no_caller_may_give_throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Spread.Normal(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Spread.Rectangular(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Spread.Expanded(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Normal(1, degreesOfFreedom: 0));
        Assert.Throws<ArgumentException>(() => Of("a", X("a", double.NaN)));
        Assert.Throws<ArgumentException>(() => Of("a", X("a", 0, [.. Enumerable.Repeat(Normal(1), 1_001)])));
    }

    // A weighted sum has exact answers: the root of the summed squares, and the signed sum
    [Fact]
    public void A_weighted_sum_is_its_closed_form() => Gen.Select(Gen.Double[-5, 5], Gen.Double[0.1, 3], Gen.Double[-2, 2]).Array[1, 12].ForAll(rows =>
    {
        var names = rows.Select((_, i) => $"x{i}").ToArray();
        var budget = new Budget(Expression.Sum([.. rows.Select((r, i) => (names[i], r.Item3))]), [.. rows.Select((r, i) => X(names[i], r.Item1, Normal(r.Item2)))]);
        var answer = budget.Linear();
        return Math.Abs(answer.Estimate - rows.Sum(r => r.Item1 * r.Item3)) < 1e-9
            && Math.Abs(answer.Standard - Math.Sqrt(rows.Sum(r => r.Item2 * r.Item2 * r.Item3 * r.Item3))) < 1e-9;
    }, iter: 500);

    // Made-up figures: 700 bar on a ram of 40 mm, 85 kN and some; by hand: u² = (A·u_p)² + (p·u_A)² + u_s² + u_f²
    [Fact]
    public void Output_force_follows_from_pressure_and_area()
    {
        var budget = OutputForce.Of(
            X("p", 70e6, Normal(0.2e6, effect: Effect.Systematic)), X("A", 1256.6e-6, Rectangular(1.5e-6, effect: Effect.Systematic)),
            X("s", 1_450, Normal(30)), X("f", 600, Rectangular(250)));
        var answer = budget.Linear();
        Assert.Equal(70e6 * 1256.6e-6 - 1_450 - 600, answer.Estimate, 1e-8);
        Assert.Equal(Math.Sqrt(Math.Pow(1256.6e-6 * 0.2e6, 2) + Math.Pow(70e6 * 1.5e-6, 2) / 3), answer.Systematic, 1e-9);
        Assert.Equal(Math.Sqrt(30 * 30 + 250 * 250 / 3.0), answer.Random, 1e-9);
    }
}
