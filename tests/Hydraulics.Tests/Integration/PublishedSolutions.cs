using Ramwright.Hydraulics.Integration;

namespace Ramwright.Hydraulics.Tests.Integration;

/// <summary>End values published for the Test Set for IVP Solvers (Univ. Bari / CWI), as read in the R package deTestSet, and for DETEST.</summary>
public sealed class PublishedSolutions
{
    private static readonly double[] Hires = [0.7371312573325668e-3, 0.1442485726316185e-3, 0.5888729740967575e-4, 0.1175651343283149e-2, 0.2386356198831331e-2, 0.6238968252742796e-2, 0.2849998395185769e-2, 0.2850001604814231e-2];

    // Each row: relative tolerance asked, error allowed in units of it, most steps.
    [Theory]
    [InlineData(1e-4, 5, 240)]
    [InlineData(1e-6, 20, 500)]
    [InlineData(1e-8, 50, 1_500)]
    public void Robertson_to_1e11(double asked, double allowed, int mostSteps) =>
        Holds(Problem.Rober, [1, 0, 0], 1e11, [0.2083340149701255e-07, 0.8333360770334713e-13, 0.9999999791665050], asked, 1e-10 * asked, allowed, mostSteps);

    [Theory]
    [InlineData(1e-4, 10, 100)]
    [InlineData(1e-6, 10, 330)]
    [InlineData(1e-8, 100, 1_230)]
    public void Hires_to_322(double asked, double allowed, int mostSteps) =>
        Holds(Problem.Hires, [1, 0, 0, 0, 0, 0, 0, 0.0057], 321.8122, Hires, asked, 1e-4 * asked, allowed, mostSteps);

    [Theory]
    [InlineData(1e-4, 50, 400)]
    [InlineData(1e-6, 50, 700)]
    [InlineData(1e-8, 50, 1_700)]
    public void Van_der_Pol_with_damping_1000_to_2000(double asked, double allowed, int mostSteps) =>
        Holds(Problem.VanDerPol, [2, 0], 2000, [0.1706167732170469e1, -0.8928097010248125e-3], asked, asked, allowed, mostSteps);

    [Theory]
    [InlineData(1e-4, 100, 120)]
    [InlineData(1e-6, 100, 260)]
    [InlineData(1e-8, 100, 640)]
    public void Detest_B1_to_20(double asked, double allowed, int mostSteps) =>
        Holds(Problem.Rabbits, [1, 3], 20, [0.6761876008576667, 0.1860816099640036], asked, asked, allowed, mostSteps);

    private static void Holds(Problem problem, double[] from, double end, double[] published, double asked, double absolute, double allowed, int mostSteps)
    {
        var (state, steps) = problem.Run(from, end, StiffTolerance.Same(asked, absolute, problem.Size));
        for (var i = 0; i < published.Length; i++)
            Assert.InRange(Math.Abs(state[i] - published[i]) / (Math.Abs(published[i]) * asked + absolute), 0, allowed);
        Assert.InRange(steps, 1, mostSteps);
    }
}
