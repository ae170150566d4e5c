using System.Diagnostics;
using System.Globalization;
using System.Text;
using Ramwright.Diagnosis.Faults;

namespace Ramwright.Bench.Finding;

/// <summary>Posteriors of 30 faults given 60 findings, beside inclusion–exclusion over the findings present (Quickscore) in NumPy in the same run.</summary>
internal static class PosteriorSpeed
{
    private const int Faults = 30, Findings = 60, Runs = 21;

    private const string Peer = """
        import sys, time
        import numpy as np
        def number(line): return [float(x) for x in line.split()]
        n, k, runs = (int(x) for x in sys.stdin.readline().split())
        odds = np.array(number(sys.stdin.readline()))           # present over absent, absent findings counted
        leak = np.array(number(sys.stdin.readline()))
        stays = np.array([number(sys.stdin.readline()) for _ in range(k)])   # 1 - c by finding and fault
        def once():
            size = 1 << k
            signs = np.ones(size); products = np.ones((size, n)); leaks = np.ones(size)
            for d in range(k):
                half = 1 << d
                signs[half:2 * half] = -signs[:half]
                leaks[half:2 * half] = leaks[:half] * (1 - leak[d])
                products[half:2 * half] = products[:half] * stays[d]
            terms = 1 + odds * products
            all_terms = signs * leaks * np.prod(terms, axis=1)
            z = all_terms.sum()
            return (all_terms[:, None] * (odds * products / terms)).sum(axis=0) / z, z
        once()
        walls = []
        for i in range(runs):
            start = time.perf_counter(); marginals, z = once(); walls.append(1000 * (time.perf_counter() - start))
        print(sorted(walls)[runs // 2], z, *marginals)
        """;

    public static void Run(string python)
    {
        Console.WriteLine("| findings present | leaks | ours, median ms | NumPy, median ms | ratio | greatest difference of a probability |");
        Console.WriteLine("|---:|---:|---:|---:|---:|---:|");
        foreach (var (present, leak) in new[] { (5, 0.02), (10, 0.02), (15, 0.02), (15, 1e-4), (17, 0.02) })
        {
            var problem = Draw(present, leak);
            Ours(problem);
            var walls = new double[Runs];
            NoisyOrPosterior? posterior = null;
            for (var i = 0; i < Runs; i++)
            {
                var clock = Stopwatch.StartNew();
                posterior = Ours(problem);
                walls[i] = clock.Elapsed.TotalMilliseconds;
            }

            var ours = walls.Order().ElementAt(Runs / 2);
            var theirs = Theirs(python, problem, present >= 17 ? 3 : 7);
            var off = theirs.Skip(2).Select((p, i) => Math.Abs(p - posterior!.Low[i])).Max();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {present} | {leak:0.####} | {ours:0.00} | {theirs[0]:0.0} | {theirs[0] / ours:0} | {off:0.0e0} |"));
        }
    }

    private static NoisyOrPosterior? Ours(NoisyOr problem) => NoisyOrPosterior.Of(problem, cellLimit: 1 << 23);

    /// <summary>Each finding is linked to a quarter of the faults, as densely as no model of a tool; those absent are weighed in, those present stay.</summary>
    private static NoisyOr Draw(int present, double leak)
    {
        var random = new Random(2026);
        var problem = new NoisyOr(Enumerable.Range(0, Faults).Select(_ => 0.01 + 0.09 * random.NextDouble()).ToArray());
        for (var d = 0; d < Findings; d++)
        {
            var causes = Enumerable.Range(0, Faults).Where(_ => random.NextDouble() < 0.25).Select(i => (i, 0.1 + 0.8 * random.NextDouble())).ToArray();
            if (d < present)
            {
                problem.Positives.Add(new(leak, [.. causes]));
                continue;
            }

            foreach (var (fault, chance) in causes)
                problem.Weigh(fault, 1 - 0.15 * chance);
        }

        return problem;
    }

    private static double[] Theirs(string python, NoisyOr problem, int runs)
    {
        var text = new StringBuilder().Append(CultureInfo.InvariantCulture, $"{Faults} {problem.Positives.Count} {runs}\n");
        text.AppendLine(Row(problem.Present.Zip(problem.Absent, (p, a) => p / a))).AppendLine(Row(problem.Positives.Select(p => p.Leak)));
        foreach (var positive in problem.Positives)
            text.AppendLine(Row(Enumerable.Range(0, Faults).Select(i => 1 - positive.Causes.Where(c => c.Fault == i).Sum(c => c.Chance))));
        var start = new ProcessStartInfo(python, ["-c", Peer]) { RedirectStandardInput = true, RedirectStandardOutput = true, UseShellExecute = false };
        using var process = Process.Start(start)!;
        process.StandardInput.Write(text);
        process.StandardInput.Close();
        var answer = process.StandardOutput.ReadToEnd();
        return [.. answer.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Select(w => double.Parse(w, CultureInfo.InvariantCulture))];
    }

    private static string Row(IEnumerable<double> values) => string.Join(' ', values.Select(v => v.ToString("r", CultureInfo.InvariantCulture)));
}
