using Ramwright.Diagnosis.Faults;

namespace Ramwright.Diagnosis.Tests.Faults;

/// <summary>Random noisy-OR problems against the sum over all sets of faults.</summary>
public sealed class RandomFaultNetworks
{
    [Fact]
    public void The_posterior_is_the_sum_over_all_sets()
    {
        var random = new Random(41);
        var contradictions = 0;
        for (var n = 0; n < 4_000; n++)
        {
            var problem = Draw(random, random.Next(1, 9), random.Next(0, 8), density: 0.1 + 0.8 * random.NextDouble(), zeros: 0.15);
            var (evidence, marginals) = BruteForce(problem);
            var posterior = NoisyOrPosterior.Of(problem);
            if (evidence == 0)
            {
                contradictions++;
                Assert.Null(posterior);
                continue;
            }

            Assert.NotNull(posterior);
            Assert.True(posterior.IsExact);
            Assert.Equal(Math.Log(evidence), posterior.LogEvidence.Low, 1e-9);
            for (var i = 0; i < marginals.Length; i++)
                Assert.Equal(marginals[i], posterior.Low[i], 1e-11);
        }

        Assert.InRange(contradictions, 50, 2_000);
    }

    // Fifteen present findings with leaks of a millionth: inclusion-exclusion adds 32,768 terms near 1 to a sum near 1e-40.
    [Fact]
    public void Nothing_is_lost_where_hardly_anything_explains_what_is_seen()
    {
        var problem = new NoisyOr(Enumerable.Repeat(1e-4, 10).ToArray());
        for (var d = 0; d < 15; d++)
            problem.Positives.Add(new(1e-6, [.. Enumerable.Range(0, 10).Where(i => (i + d) % 3 == 0).Select(i => (i, 1e-3 * (1 + i)))]));
        var (evidence, marginals) = BruteForce(problem);
        var posterior = NoisyOrPosterior.Of(problem)!;
        Assert.True(evidence < 1e-35);
        Assert.Equal(Math.Log(evidence), posterior.LogEvidence.Low, 1e-10);
        for (var i = 0; i < marginals.Length; i++)
            Assert.Equal(marginals[i], posterior.Low[i], 1e-12);
    }

    // Sixty findings that hardly anything explains: P(e) is far below the smallest double.
    [Fact]
    public void What_is_very_unlikely_is_not_taken_for_impossible()
    {
        var problem = new NoisyOr([1e-9, 1e-9]);
        for (var d = 0; d < 60; d++)
            problem.Positives.Add(new(1e-8, [(d % 2, 1e-5)]));
        Assert.InRange(NoisyOrPosterior.Of(problem)!.LogEvidence.Low, -1200, -700);
    }

    [Fact]
    public void Past_the_limit_the_bounds_hold_the_truth()
    {
        var random = new Random(42);
        double width = 0;
        for (var n = 0; n < 500; n++)
        {
            var problem = Draw(random, 9, random.Next(3, 8), density: 0.6, zeros: 0);
            var (evidence, marginals) = BruteForce(problem);
            var posterior = NoisyOrPosterior.Of(problem, cellLimit: 60)!;
            Assert.InRange(Math.Log(evidence), posterior.LogEvidence.Low - 1e-9, posterior.LogEvidence.High + 1e-9);
            for (var i = 0; i < marginals.Length; i++)
            {
                Assert.InRange(marginals[i], posterior.Low[i] - 1e-12, posterior.High[i] + 1e-12);
                width += (posterior.High[i] - posterior.Low[i]) / (500 * marginals.Length);
            }
        }

        Assert.InRange(width, 0.01, 0.6); // thinned to a tenth of what it takes, and still saying something
    }

    [Fact]
    public void Without_anything_seen_the_rates_stand() => Assert.Equal([0.1, 0.25], NoisyOrPosterior.Of(new NoisyOr([0.1, 0.25]))!.Low);

    [Fact]
    public void The_textbook_fever_table()
    {
        // Russell and Norvig: cold, flu and malaria inhibited by 0.6, 0.2, 0.1, no leak; all eight rows.
        double[] published = [0, 0.4, 0.8, 0.88, 0.9, 0.94, 0.98, 0.988];
        for (var row = 0; row < 8; row++)
        {
            var problem = new NoisyOr([row & 1, (row >> 1) & 1, (row >> 2) & 1]);
            problem.Positives.Add(new(0, [(0, 0.4), (1, 0.8), (2, 0.9)]));
            var posterior = NoisyOrPosterior.Of(problem);
            Assert.Equal(published[row], posterior is null ? 0 : Math.Exp(posterior.LogEvidence.Low), 1e-12);
        }
    }

    internal static NoisyOr Draw(Random random, int faults, int findings, double density, double zeros)
    {
        var problem = new NoisyOr(Enumerable.Range(0, faults).Select(_ => random.NextDouble() < zeros ? random.Next(2) : Math.Pow(random.NextDouble(), 3)).ToArray());
        for (var d = 0; d < findings; d++)
        {
            problem.Positives.Add(new(random.NextDouble() < zeros * 3 ? 0 : 0.1 * random.NextDouble(),
                [.. Enumerable.Range(0, faults).Where(_ => random.NextDouble() < density).Select(i => (i, random.NextDouble() < zeros ? 1.0 : random.NextDouble()))]));
        }

        for (var i = 0; i < faults; i++)
        {
            if (random.NextDouble() < 0.3)
                problem.Weigh(i, 0.1 + 2 * random.NextDouble());
        }

        return problem;
    }

    private static (double Evidence, double[] Marginals) BruteForce(NoisyOr problem)
    {
        var (sum, with) = (0.0, new double[problem.Count]);
        for (var set = 0; set < 1 << problem.Count; set++)
        {
            var product = Math.Exp(problem.LogConstant);
            for (var i = 0; i < problem.Count; i++)
                product *= (set >> i & 1) == 1 ? problem.Present[i] : problem.Absent[i];
            foreach (var (leak, causes) in problem.Positives)
            {
                // 1 - (1 - leak) Π (1 - c) added up term by term: each cause fires after all before it did not
                var (fires, none) = (leak, 1 - leak);
                foreach (var (fault, chance) in causes.Where(c => (set >> c.Fault & 1) == 1))
                    (fires, none) = (fires + none * chance, none * (1 - chance));
                product *= fires;
            }

            sum += product;
            for (var i = 0; i < problem.Count; i++)
                with[i] += (set >> i & 1) == 1 ? product : 0;
        }

        return (sum, [.. with.Select(w => w / sum)]);
    }
}
