using Ramwright.Hydraulics.Integration;

namespace Ramwright.Hydraulics.Tests.Integration;

public sealed class OrderOfTheMethod
{
    // DETEST B1, from its published start: halve the step and see the error fall by 2^order.
    [Fact]
    public void A_step_is_of_order_5() => Assert.InRange(ObservedOrder(AfterSteps), 4.7, 5.6);

    [Fact]
    public void The_dense_output_is_of_order_4_or_better() => Assert.InRange(ObservedOrder(InTheMiddle), 4.6, 6.4); // local error of one step: order 4 shows as 5

    [Fact]
    public void The_error_estimate_falls_with_the_fifth_power() => Assert.InRange(ObservedOrder(Estimate), 4.6, 5.4);

    [Fact]
    public void What_is_infinitely_fast_is_damped_out_in_one_step()
    {
        var step = new StiffStep(new Problem(1, (y, f) => f[0] = -1e12 * y[0], (_, j) => j[0] = -1e12));
        step.StartFrom([1]);
        Assert.True(step.Try(1));
        Assert.InRange(Math.Abs(step.To[0]), 0, 1e-10);
    }

    // exp(z) along the real axis and the imaginary one: |R(z)| stays at or below one.
    [Fact]
    public void No_decaying_oscillation_grows_whatever_the_step()
    {
        foreach (var frequency in new[] { 0.1, 1, 3, 10, 100, 1e4, 1e8 })
        {
            var step = new StiffStep(new Problem(2, (y, f) => (f[0], f[1]) = (frequency * y[1], -frequency * y[0]), (_, j) => (j[1], j[2]) = (frequency, -frequency)));
            step.StartFrom([1, 0]);
            Assert.True(step.Try(1));
            Assert.InRange(Math.Sqrt(step.To[0] * step.To[0] + step.To[1] * step.To[1]), 0, 1 + 1e-9);
        }
    }

    private static double ObservedOrder(Func<double, double> error) => Math.Log2(error(0.02) / error(0.01));

    private static double AfterSteps(double length)
    {
        var end = March(1, length);
        var exact = March(1, 1.0 / 2048);
        return Math.Abs(end[0] - exact[0]) + Math.Abs(end[1] - exact[1]);
    }

    private static double[] March(double seconds, double length)
    {
        var step = new StiffStep(Problem.Rabbits);
        double[] state = [1, 3];
        for (var i = 0; i < (int)Math.Round(seconds / length); i++)
        {
            step.StartFrom(state);
            Assert.True(step.Try(length));
            state = [.. step.To];
        }

        return state;
    }

    private static double InTheMiddle(double length)
    {
        var step = OneStep(length);
        step.PrepareDense();
        var state = new double[2];
        step.At(0.3, state);
        var exact = March(0.3 * length, 0.3 * length / 64);
        return Math.Abs(state[0] - exact[0]) + Math.Abs(state[1] - exact[1]);
    }

    private static double Estimate(double length) => Math.Abs(OneStep(length).Error[0]);

    private static StiffStep OneStep(double length)
    {
        var step = new StiffStep(Problem.Rabbits);
        step.StartFrom([1, 3]);
        Assert.True(step.Try(length));
        return step;
    }
}
