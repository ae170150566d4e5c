using Ramwright.Hydraulics.Integration;

namespace Ramwright.Hydraulics.Tests.Integration;

/// <summary>Event times in closed form, held to a nanosecond.</summary>
public sealed class EventTimes
{
    private static readonly double[] Tight = [1e-12, 1e-12];

    // p' = (p0 − p)/τ, p0 = 700 bar, τ = 0.25 s: 90 % is reached at τ·ln 10.
    [Fact]
    public void Pressure_trips_at_nine_tenths()
    {
        var problem = new Problem(1, (y, f) => f[0] = (700 - y[0]) / 0.25, (_, j) => j[0] = -4) { Gauge = y => y[0] - 630 };
        var integrator = new StiffIntegrator(problem, StiffTolerance.Same(1e-11, 1e-9, 1));
        integrator.Start(0, [0]);
        RunToEvent(integrator, 10);
        Assert.Equal(0.25 * Math.Log(10), integrator.Seconds, 1e-9);
    }

    // y″ = −9.81 from 10 m, each bounce keeps 0.8 of the speed: t(n+1) = t(n) + 2·0.8ⁿ·√(2h/g).
    [Fact]
    public void A_ball_bounces_on_time()
    {
        var problem = new Problem(2, (y, f) => (f[0], f[1]) = (y[1], -9.81), (_, j) => j[1] = 1) { Gauge = y => -y[0] };
        var integrator = new StiffIntegrator(problem, new StiffTolerance(1e-11, [.. Tight]));
        integrator.Start(0, [10, 0]);
        var fall = Math.Sqrt(2 * 10 / 9.81);
        var expected = fall;
        for (var bounce = 1; bounce <= 8; bounce++)
        {
            RunToEvent(integrator, 20);
            Assert.Equal(expected, integrator.Seconds, 1e-9);
            expected += 2 * Math.Pow(0.8, bounce) * fall;
            (integrator.State[0], integrator.State[1]) = (0, -0.8 * integrator.State[1]);
            integrator.Restart();
        }
    }

    [Fact]
    public void An_oscillator_crosses_zero_at_quarter_turns()
    {
        var falling = true; // as the sign is changed at each event, the next one is a rising zero of the gauge again
        var problem = new Problem(2, (y, f) => (f[0], f[1]) = (y[1], -y[0]), (_, j) => (j[1], j[2]) = (1, -1)) { Gauge = y => falling ? -y[0] : y[0] };
        var integrator = new StiffIntegrator(problem, new StiffTolerance(1e-12, [.. Tight]));
        integrator.Start(0, [1, 0]);
        for (var k = 0; k < 8; k++)
        {
            RunToEvent(integrator, 100);
            Assert.Equal((2 * k + 1) * Math.PI / 2, integrator.Seconds, 1e-9);
            falling = !falling;
            integrator.Restart();
        }
    }

    [Fact]
    public void A_gauge_that_rises_and_falls_within_one_long_step_is_seen()
    {
        // y' = 1 is exact in any step; the gauge is above zero only between 0.40 and 0.55 of the step that reaches the end.
        var problem = new Problem(1, (_, f) => f[0] = 1, (_, _) => { }) { Gauge = y => 0.0075 * 0.0075 - (y[0] - 0.0475) * (y[0] - 0.0475) };
        var integrator = new StiffIntegrator(problem, StiffTolerance.Same(1e-6, 1e-9, 1));
        integrator.Start(0, [0]);
        RunToEvent(integrator, 0.1);
        Assert.Equal(0.04, integrator.Seconds, 1e-9);
    }

    [Fact]
    public void No_step_allocates()
    {
        var integrator = new StiffIntegrator(new Problem(2, (y, f) => (f[0], f[1]) = (y[1], 1000 * (1 - y[0] * y[0]) * y[1] - y[0]),
            (y, j) => (j[0], j[1], j[2], j[3]) = (0, 1, -2000 * y[0] * y[1] - 1, 1000 * (1 - y[0] * y[0]))), StiffTolerance.Same(1e-6, 1e-6, 2));
        integrator.Start(0, [2, 0]);
        for (var i = 0; i < 20; i++)
            integrator.Advance(2000);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
            integrator.Advance(2000);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    [Fact]
    public void Too_many_steps_is_an_answer()
    {
        var integrator = new StiffIntegrator(Problem.VanDerPol, StiffTolerance.Same(1e-8, 1e-8, 2, mostSteps: 50));
        integrator.Start(0, [2, 0]);
        Advanced advanced;
        do
            advanced = integrator.Advance(2000);
        while (advanced == Advanced.Stepped);
        Assert.Equal(Advanced.TooManySteps, advanced);
    }

    private static void RunToEvent(StiffIntegrator integrator, double end)
    {
        Advanced advanced;
        do
            advanced = integrator.Advance(end);
        while (advanced == Advanced.Stepped);
        Assert.Equal(Advanced.Event, advanced);
    }
}
