using Ramwright.Hydraulics.Integration;

namespace Ramwright.Hydraulics.Tests.Integration;

/// <summary>A system given by its slope; its Jacobian by central differences unless one is given.</summary>
internal sealed class Problem(int size, Action<ReadOnlySpan<double>, Span<double>> slope, Action<ReadOnlySpan<double>, Span<double>>? jacobian = null) : IStiffSystem
{
    public Func<double[], double>? Gauge { get; init; }

    public int Size => size;

    public int GaugeCount => Gauge is null ? 0 : 1;

    public void Slope(ReadOnlySpan<double> state, Span<double> to) => slope(state, to);

    public void Jacobian(ReadOnlySpan<double> state, Span<double> to)
    {
        if (jacobian is not null)
        {
            to.Clear();
            jacobian(state, to);
            return;
        }

        double[] at = [.. state], up = new double[size], down = new double[size];
        for (var j = 0; j < size; j++)
        {
            var step = 1e-6 * Math.Max(1e-3, Math.Abs(state[j]));
            at[j] = state[j] + step;
            slope(at, up);
            at[j] = state[j] - step;
            slope(at, down);
            at[j] = state[j];
            for (var i = 0; i < size; i++)
                to[i * size + j] = (up[i] - down[i]) / (2 * step);
        }
    }

    public void Gauges(ReadOnlySpan<double> state, Span<double> to)
    {
        if (Gauge is not null)
            to[0] = Gauge([.. state]);
    }

    /// <summary>The state at the end, and the steps it took.</summary>
    public (double[] State, int Steps) Run(double[] from, double endSeconds, StiffTolerance tolerance)
    {
        var integrator = new StiffIntegrator(this, tolerance);
        integrator.Start(0, from);
        Advanced advanced;
        do
            advanced = integrator.Advance(endSeconds);
        while (advanced == Advanced.Stepped);
        Assert.Equal(Advanced.Finished, advanced);
        return ([.. integrator.State], integrator.StepsTaken);
    }

    // Test Set for IVP Solvers (Univ. Bari; Hairer & Wanner, Solving ODEs II, IV.10): ROBER.
    public static Problem Rober => new(
        3,
        (y, f) =>
        {
            f[0] = -0.04 * y[0] + 1e4 * y[1] * y[2];
            f[2] = 3e7 * y[1] * y[1];
            f[1] = -f[0] - f[2];
        },
        (y, j) =>
        {
            (j[0], j[1], j[2]) = (-0.04, 1e4 * y[2], 1e4 * y[1]);
            j[7] = 6e7 * y[1];
            (j[3], j[4], j[5]) = (0.04, -1e4 * y[2] - 6e7 * y[1], -1e4 * y[1]);
        });

    // The same set: HIRES.
    public static Problem Hires => new(
        8,
        (y, f) =>
        {
            f[0] = -1.71 * y[0] + 0.43 * y[1] + 8.32 * y[2] + 0.0007;
            f[1] = 1.71 * y[0] - 8.75 * y[1];
            f[2] = -10.03 * y[2] + 0.43 * y[3] + 0.035 * y[4];
            f[3] = 8.32 * y[1] + 1.71 * y[2] - 1.12 * y[3];
            f[4] = -1.745 * y[4] + 0.43 * y[5] + 0.43 * y[6];
            f[5] = -280 * y[5] * y[7] + 0.69 * y[3] + 1.71 * y[4] - 0.43 * y[5] + 0.69 * y[6];
            f[6] = 280 * y[5] * y[7] - 1.81 * y[6];
            f[7] = -f[6];
        },
        (y, j) =>
        {
            (j[0], j[1], j[2]) = (-1.71, 0.43, 8.32);
            (j[8], j[9]) = (1.71, -8.75);
            (j[18], j[19], j[20]) = (-10.03, 0.43, 0.035);
            (j[25], j[26], j[27]) = (8.32, 1.71, -1.12);
            (j[36], j[37], j[38]) = (-1.745, 0.43, 0.43);
            (j[43], j[44], j[45], j[46], j[47]) = (0.69, 1.71, -280 * y[7] - 0.43, 0.69, -280 * y[5]);
            (j[53], j[54], j[55]) = (280 * y[7], -1.81, 280 * y[5]);
            (j[61], j[62], j[63]) = (-280 * y[7], 1.81, -280 * y[5]);
        });

    // The same set: VDPOL in the form with µ = 1000.
    public static Problem VanDerPol => new(
        2,
        (y, f) => (f[0], f[1]) = (y[1], 1000 * (1 - y[0] * y[0]) * y[1] - y[0]),
        (y, j) => (j[0], j[1], j[2], j[3]) = (0, 1, -2000 * y[0] * y[1] - 1, 1000 * (1 - y[0] * y[0])));

    // Nonstiff DETEST set (Enright & Pryce, ACM TOMS 13 (1987), Algorithm 648): B1.
    public static Problem Rabbits => new(
        2,
        (y, f) => (f[0], f[1]) = (2 * y[0] * (1 - y[1]), -y[1] * (1 - y[0])),
        (y, j) => (j[0], j[1], j[2], j[3]) = (2 * (1 - y[1]), -2 * y[0], y[1], y[0] - 1));
}
