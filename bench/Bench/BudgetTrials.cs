using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Ramwright.Metrology.Input;
using Ramwright.Metrology.Uncertainty;
using Ramwright.Metrology.Uncertainty.Expressions;
using Ramwright.Metrology.Uncertainty.MonteCarlo;

namespace Ramwright.Bench;

/// <summary>One million trials of a budget of ten inputs, beside NumPy's vectorised form of the same in the same run.</summary>
internal static class BudgetTrials
{
    private const int Trials = 1_000_000;
    private const int Runs = 15;
    private const string Model = "p * A * (1 + t * a) - k * x - f + sqrt(d^2 + e^2) - g";

    // Made-up figures of a force measurement; the peer draws from the same forms with the same widths.
    private static readonly ImmutableArray<(string Name, double Estimate, Spread Spread)> Inputs =
    [
        ("p", 70e6, new Spread.Normal(2e5)), ("A", 1.2566e-3, new Spread.Rectangular(1.5e-6)), ("t", 5, new Spread.UShaped(2)),
        ("a", 2.3e-5, new Spread.Rectangular(2e-6)), ("k", 9_000, new Spread.Normal(200)), ("x", 0.02, new Spread.Triangular(0.001)),
        ("f", 600, new Spread.Rectangular(250)), ("d", 120, new Spread.Normal(10)), ("e", 80, new Spread.Normal(10)), ("g", 0, new Spread.Normal(30)),
    ];

    private const string Peer = """
        import sys, time
        import numpy as np
        M, runs = int(sys.argv[1]), int(sys.argv[2])
        def once(seed):
            r = np.random.default_rng(seed)
            p = r.normal(70e6, 2e5, M); A = r.uniform(1.2566e-3 - 1.5e-6, 1.2566e-3 + 1.5e-6, M); t = 5 + 2 * np.sin(2 * np.pi * r.random(M))
            a = r.uniform(2.3e-5 - 2e-6, 2.3e-5 + 2e-6, M); k = r.normal(9000, 200, M); x = r.triangular(0.019, 0.02, 0.021, M)
            f = r.uniform(350, 850, M); d = r.normal(120, 10, M); e = r.normal(80, 10, M); g = r.normal(0, 30, M)
            y = p * A * (1 + t * a) - k * x - f + np.sqrt(d**2 + e**2) - g
            low, high = np.quantile(y, [0.025, 0.975])
            return y.mean(), y.std(ddof=1), low, high
        once(0)
        walls, works = [], []
        for i in range(runs):
            wall, work = time.perf_counter(), time.process_time(); figures = once(i)
            walls.append(1000 * (time.perf_counter() - wall)); works.append(1000 * (time.process_time() - work))
        print(min(walls), sorted(works)[runs // 2], *figures)
        """;

    public static void Run(string python)
    {
        var budget = new Budget(
            Expression.Read(Model, [.. Inputs.Select(i => i.Name)]) is TextReading<Expression>.Good(var model) ? model : throw new InvalidOperationException("The model does not read."),
            [.. Inputs.Select(i => new BudgetInput(i.Name, i.Estimate, [new Component("stated", i.Spread, Effect.Random)]))]);
        Ours(budget, 0);
        var (walls, works) = (new double[Runs], new double[Runs]);
        MonteCarloFigures? figures = null;
        for (var i = 0; i < Runs; i++)
        {
            var (clock, before) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
            figures = Ours(budget, (ulong)i);
            (walls[i], works[i]) = (clock.Elapsed.TotalMilliseconds, (Environment.CpuUsage.TotalTime - before).TotalMilliseconds);
        }

        var theirs = Theirs(python);
        Console.WriteLine("| | fastest, ms | processor time, median ms | mean, N | standard uncertainty, N | 95 % from, N | to, N |");
        Console.WriteLine("|---|---:|---:|---:|---:|---:|---:|");
        Row($"ours, {Environment.ProcessorCount} cores", [walls.Min(), works.Order().ElementAt(Runs / 2), figures!.Mean, figures.Standard, figures.Low, figures.High]);
        Row("NumPy, one core, as it is", theirs);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"\nratio: {theirs[0] / walls.Min():0.0} by the clock, {theirs[1] / works.Order().ElementAt(Runs / 2):0.0} in processor time"));
    }

    private static MonteCarloFigures Ours(Budget budget, ulong seed) => Simulation.Run(budget, new() { Seed = seed }, Trials) is MonteCarloAnswer.AtLimit(var figures) ? figures : throw new InvalidOperationException("No figures.");

    private static double[] Theirs(string python)
    {
        using var process = Process.Start(new ProcessStartInfo(python) { ArgumentList = { "-c", Peer, Trials.ToString(CultureInfo.InvariantCulture), Runs.ToString(CultureInfo.InvariantCulture) }, RedirectStandardOutput = true, UseShellExecute = false })
            ?? throw new InvalidOperationException("The peer does not start.");
        return [.. process.StandardOutput.ReadToEnd().Split(' ').Select(w => double.Parse(w, CultureInfo.InvariantCulture))];
    }

    private static void Row(string name, double[] figures) => Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {name} | {figures[0]:0.0} | {figures[1]:0.0} | {figures[2]:0.0} | {figures[3]:0.0} | {figures[4]:0.0} | {figures[5]:0.0} |"));
}
