using Ramwright.Metrology.Uncertainty;
using Ramwright.Metrology.Uncertainty.MonteCarlo;
using static Ramwright.Metrology.Tests.Uncertainty.Models;

namespace Ramwright.Metrology.Tests.Uncertainty.MonteCarlo;

public sealed class SimulationTests
{
    private static readonly double Root3 = Math.Sqrt(3);

    private static MonteCarloFigures Run(Budget budget, MonteCarloAsk ask) => Simulation.Run(budget, ask) switch
    {
        MonteCarloAnswer.Settled settled => settled.Figures,
        var other => throw new InvalidOperationException(other.ToString()),
    };

    private static Budget Sum(params double[] standards) =>
        Of(string.Join(" + ", standards.Select((_, i) => $"x{i}")), [.. standards.Select((u, i) => X($"x{i}", 0, Rectangular(u * Root3)))]);

    // JCGM 101:2008, 9.2.2: four standard normal inputs, u 2.00, 95 % within ± 3.92
    [Fact]
    public void Sum_of_four_normals_of_Supplement_1()
    {
        var budget = Of("a + b + c + d", [.. "abcd".Select(c => X(c.ToString(), 0, Normal(1)))]);
        var figures = Run(budget, new());
        Assert.Equal(2.00, figures.Standard, 0.005 + figures.OwnError);
        Assert.Equal(3.919927969080108, figures.High, 2 * figures.OwnError);
        Assert.Equal(-3.919927969080108, figures.Low, 2 * figures.OwnError);
        Assert.True(figures.OwnError <= 0.05, "δ is 0.05 for u = 2.0");
        Assert.True(Comparison.Of(budget.Linear(), figures).Agree);
    }

    // JCGM 101:2008, 9.2.3 and 9.2.4 (the last from memory): four rectangular inputs, ± 3.88; one ten times the others, ± 17.0; exact by convolution
    [Theory]
    [InlineData(new double[] { 1, 1, 1, 1 }, 2.0, 3.879406741347821)]
    [InlineData(new double[] { 1, 1, 1, 10 }, 10.14889156509222, 17.015814098928157)]
    public void Sums_of_rectangles_of_Supplement_1(double[] standards, double standard, double halfWidth)
    {
        var figures = Run(Sum(standards), new() { Finer = 5 });
        Assert.Equal(standard, figures.Standard, 2 * figures.OwnError);
        Assert.Equal(halfWidth, figures.High, 2 * figures.OwnError);
        Assert.Equal(-halfWidth, figures.Low, 2 * figures.OwnError);
    }

    [Fact]
    public void Where_a_rectangle_dominates_the_two_answers_part()
    {
        var budget = Sum(1, 1, 1, 10);
        var comparison = Comparison.Of(budget.Linear(), Run(budget, new()));
        Assert.False(comparison.Agree);
        Assert.True(comparison.IsSure);
        Assert.Equal(19.9 - 17.0, comparison.HighApart, 0.15);
    }

    // NPL Report DEM-ES-011, 9.2: y = ln x, x rectangular 0.1 to 1.1; shortest interval exactly ln 0.15 to ln 1.1
    [Fact]
    public void Logarithm_of_NPL()
    {
        var budget = Of("ln(x)", X("x", 0.6, Rectangular(0.5)));
        var linear = budget.Linear();
        Assert.Equal(-0.511, linear.Estimate, 0.0005);
        Assert.Equal(0.481, linear.Standard, 0.0005);
        var figures = Run(budget, new() { Interval = IntervalKind.Shortest, Finer = 1.5 });
        Assert.Equal(-0.6649002929158383, figures.Mean, 2 * figures.OwnError);
        Assert.Equal(0.6062266974293011, figures.Standard, 2 * figures.OwnError);
        Assert.Equal(-1.8971199848858813, figures.Low, 2 * figures.OwnError + 0.003);
        Assert.Equal(0.09531017980432493, figures.High, 2 * figures.OwnError);
    }

    // JCGM 101:2008, 9.4.2 (from memory): y = x1² + x2² near zero, where first order says u = 0; exact values of the scaled noncentral χ²
    [Theory]
    [InlineData(0.0, 50.0, 50.0, 149.78661367769948)]
    [InlineData(0.01, 150.0, 111.8033988749895, 366.00528974677593)]
    [InlineData(0.05, 2550.0, 502.4937810560445, 3548.569813665748)]
    public void Comparison_loss_of_Supplement_1(double x1, double mean, double standard, double high)
    {
        var budget = Of("1e6 * (x1^2 + x2^2)", X("x1", x1, Normal(0.005)), X("x2", 0, Normal(0.005)));
        var figures = Run(budget, new() { Interval = IntervalKind.Shortest });
        Assert.Equal(mean, figures.Mean, 2 * figures.OwnError);
        Assert.Equal(standard, figures.Standard, 2 * figures.OwnError);
        Assert.Equal(high, figures.High, 6 + 2 * figures.OwnError); // the shortest interval's ends are flat
    }

    // JCGM 100:2008, H.1.7: with second-order terms u is 34 nm, not 32; with a t for each input of few degrees of freedom it is wider still
    [Fact]
    public void End_gauge_has_second_order_terms_that_first_order_leaves_out()
    {
        var known = EndGauge.Budget;
        var budget = new Budget(known.Model, [.. known.Inputs.Select(i => i with { Components = [.. i.Components.Select(c => new Component(c.Name, c.Spread, c.Effect))] })]);
        Assert.Equal(33.80654542952218, Run(budget, new() { Finer = 5 }).Standard, 0.2);
    }

    [Fact]
    public void The_same_seed_gives_the_same_answer_and_another_seed_another()
    {
        var budget = EndGauge.Budget;
        Assert.Equal(Simulation.Run(budget, new() { Seed = 7 }), Simulation.Run(budget, new() { Seed = 7 }));
        Assert.NotEqual(Simulation.Run(budget, new() { Seed = 7 }), Simulation.Run(budget, new() { Seed = 8 }));
    }

    // Blocks one after the other on one thread are the same numbers
    [Fact]
    public void The_answer_does_not_depend_on_the_number_of_cores()
    {
        var results = Enumerable.Range(0, 12).SelectMany(block =>
        {
            var own = new double[10_000];
            new TrialBlock(EndGauge.Budget, 7).Run(block, own);
            return own;
        }).ToArray();
        var figures = Assert.IsType<MonteCarloAnswer.AtLimit>(Simulation.Run(EndGauge.Budget, new() { Seed = 7 }, 120_000)).Figures;
        Assert.Equal(Ramwright.Metrology.Screens.Moments.Of(results).StandardDeviation, figures.Standard, 1e-9);
        Assert.Equal(OrderedEnds.Interval(results, 0.95, IntervalKind.Symmetric), (figures.Low, figures.High));
    }

    [Fact]
    public void A_block_too_short_for_the_coverage_does_not_settle() =>
        Assert.IsType<MonteCarloAnswer.AtLimit>(Simulation.Run(Of("x", X("x", 0, Normal(1))), new() { Coverage = 0.9999, MostTrials = 40_000 }));

    [Fact]
    public void Correlated_inputs_move_together()
    {
        Budget Difference(double r) => Of("a - b", X("a", 5, Normal(3)), X("b", 5, Normal(4))).With(new Correlation(0, 1, r));
        Assert.Equal(1, Run(Difference(1), new()).Standard, 0.02);
        Assert.Equal(Math.Sqrt(25 - 0.5 * 24), Run(Difference(0.5), new()).Standard, 0.05);
        Assert.Equal(7, Run(Difference(-1), new()).Standard, 0.1);
    }

    [Fact]
    public void A_model_that_fails_in_some_trials_has_no_distribution()
    {
        var answer = Assert.IsType<MonteCarloAnswer.NotEverywhere>(Simulation.Run(Of("sqrt(x)", X("x", 1, Normal(0.5))), new()));
        Assert.Equal(0.0228, (double)answer.Failed / answer.Trials, 0.006); // Φ(−2)
    }

    // 1/x over zero has no mean: block means never settle
    [Fact]
    public void The_most_trials_are_an_answer() =>
        Assert.Equal(200_000, Assert.IsType<MonteCarloAnswer.AtLimit>(Simulation.Run(Of("1 / x", X("x", 0.01, Normal(1))), new() { MostTrials = 200_000 })).Figures.Trials);

    [Fact]
    public void An_exact_result_settles_at_once() => Assert.Equal(new(6, 0, 6, 6, 20_000, 0), Run(Of("2 * a", X("a", 3)), new()));
}
