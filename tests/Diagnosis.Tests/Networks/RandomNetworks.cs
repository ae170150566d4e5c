using Ramwright.Diagnosis.Networks;

namespace Ramwright.Diagnosis.Tests.Networks;

/// <summary>Small random networks with random knowledge, against the sum over all combinations; some rows hold zeros, so that contradictions occur.</summary>
public sealed class RandomNetworks
{
    [Fact]
    public void Elimination_is_the_sum_over_all_combinations()
    {
        var random = new Random(20_261);
        var contradictions = 0;
        for (var n = 0; n < 2_000; n++)
        {
            var network = Draw(random);
            var of = random.Next(network.Variables.Length);
            var known = Enumerable.Range(0, network.Variables.Length).Where(_ => random.NextDouble() < 0.35)
                .Select(v => new Known(v, random.Next(network.Count(v)))).ToList();
            var weights = BruteForce(network, of, known);
            var sum = weights.Sum();
            var answer = NetworkPosterior.Of(network, of, known);
            if (sum == 0)
            {
                contradictions++;
                Assert.IsType<NetworkAnswer.Contradictory>(answer);
                continue;
            }

            var posterior = Assert.IsType<NetworkAnswer.Posterior>(answer);
            Assert.Equal(Math.Log(sum), posterior.LogEvidence, 1e-9);
            for (var s = 0; s < weights.Length; s++)
                Assert.Equal(weights[s] / sum, posterior.Probabilities[s], 1e-10);
        }

        Assert.InRange(contradictions, 20, 1000);
    }

    private static BayesNetwork Draw(Random random)
    {
        var count = random.Next(1, 8);
        var variables = Enumerable.Range(0, count).Select(v => new NetworkVariable($"v{v}", [.. Enumerable.Range(0, random.Next(2, 4)).Select(s => $"s{s}")])).ToList();
        var tables = variables.Select((variable, v) =>
        {
            var parents = Enumerable.Range(0, v).Where(_ => random.NextDouble() < 0.4).OrderBy(_ => random.Next()).ToList();
            var rows = parents.Aggregate(1, (r, p) => r * variables[p].States.Length);
            return new NetworkTable([.. parents], [.. Enumerable.Range(0, rows).SelectMany(_ => Row(random, variable.States.Length))]);
        }).ToList();
        return new([.. variables], [.. tables]);
    }

    private static double[] Row(Random random, int states)
    {
        var row = Enumerable.Range(0, states).Select(_ => random.NextDouble() < 0.2 ? 0 : random.NextDouble()).ToArray();
        row[random.Next(states)] += 0.1;
        var sum = row.Sum();
        return [.. row.Select(p => p / sum)];
    }

    private static double[] BruteForce(BayesNetwork network, int of, List<Known> known)
    {
        var weights = new double[network.Count(of)];
        var states = new int[network.Variables.Length];
        void Go(int v, double product)
        {
            if (v == states.Length)
            {
                weights[states[of]] += product;
                return;
            }

            for (var s = 0; s < network.Count(v); s++)
            {
                if (known.Exists(k => k.Variable == v && k.State != s))
                    continue;
                states[v] = s;
                var row = network.Tables[v].Parents.Aggregate(0, (r, p) => r * network.Count(p) + states[p]);
                Go(v + 1, product * network.Tables[v].Rows[row * network.Count(v) + s]);
            }
        }

        Go(0, 1);
        return weights;
    }
}
