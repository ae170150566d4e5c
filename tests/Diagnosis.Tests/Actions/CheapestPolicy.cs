using System.Collections.Immutable;
using System.Text.Json;
using Ramwright.Diagnosis.Actions;
using Ramwright.Diagnosis.Tests.Networks;

namespace Ramwright.Diagnosis.Tests.Actions;

public sealed class CheapestPolicy
{
    [Fact]
    public void Never_loses_to_trying_every_policy()
    {
        var random = new Random(7);
        for (var n = 0; n < 400; n++)
        {
            var problem = Draw(random);
            var policy = ActionSearch.Solve(problem, stateLimit: 1_000_000);
            Assert.True(policy.IsProven);
            Assert.Equal(new EveryPolicy(problem).Cost(), policy.Cost, 1e-7);
        }
    }

    [Fact]
    public void An_early_stop_never_claims_a_smaller_gap_than_it_has()
    {
        var random = new Random(8);
        var stopped = 0;
        for (var n = 0; n < 400; n++)
        {
            var problem = Draw(random);
            var least = ActionSearch.Solve(problem, stateLimit: 1_000_000).Cost;
            var early = ActionSearch.Solve(problem, stateLimit: 3);
            Assert.InRange(least, early.Low - 1e-7, early.Cost + 1e-7);
            stopped += early.IsProven ? 0 : 1;
        }

        Assert.InRange(stopped, 20, 400);
    }

    // The p/C theorem: one fault, costs that do not depend on each other, perfect repairs. Source and numbers: Published/troubleshooting-order.json.
    [Theory]
    [InlineData("p-over-c-1")]
    [InlineData("p-over-c-2")]
    public void Repairs_come_in_the_order_of_probability_over_cost(string id)
    {
        var published = Case(id);
        double[] probabilities = Numbers(published, "probabilities"), costs = Numbers(published, "costs");
        var mends = probabilities.Select((_, a) => probabilities.Select((_, f) => a == f ? 1.0 : 0).ToArray()).ToArray();
        var problem = Problem(probabilities, [.. costs.Select((c, a) => new RemedyAct(0, c, mends[a]))], [], []);
        var policy = ActionSearch.Solve(problem, 100_000);
        Assert.True(policy.IsProven);
        Assert.Equal(published.GetProperty("expected_cost").GetDouble(), policy.Cost, 1e-9);
        Assert.Equal(published.GetProperty("optimal_order_1based")[0].GetInt32() - 1, policy.First.Index);
        Assert.Equal(policy.Cost, GreedyRepairs.From(problem, new(problem), problem.Start, 1).Cost, 1e-9);
    }

    // The same source, 'check-and-repair-two-causes': look at a part (C) and mend it if it is bad (R); 8.4 when the first is looked at first, 8.2 the other way.
    [Fact]
    public void Two_causes_that_are_looked_at_before_they_are_mended()
    {
        var published = Case("check-and-repair-two-causes");
        var given = published.GetProperty("inputs");
        double p = given.GetProperty("p").GetDouble(), c1 = given.GetProperty("C1").GetDouble(), r1 = given.GetProperty("R1").GetDouble(), c2 = given.GetProperty("C2").GetDouble(), r2 = given.GetProperty("R2").GetDouble();
        double[][] bad1 = [[1, 0], [0, 1]], bad2 = [[0, 1], [1, 0]];
        var problem = Problem([p, 1 - p], [new(1, r1, [1, 0]), new(2, r2, [0, 1])], [new(1, 0, false, bad1, 0), new(2, 0, false, bad2, 0)], [c1, c2]);
        var policy = ActionSearch.Solve(problem, 100_000);
        Assert.Equal(published.GetProperty("cost_2_first").GetDouble(), policy.Cost, 1e-9);
        Assert.Equal(new Act(ActKind.Look, 1), policy.First);
    }

    [Fact]
    public void Two_likely_faults_behind_one_cover_are_mended_in_one_opening()
    {
        var problem = new ActionProblem
        {
            Weights = [0.5, 0.5],
            Cases = [[0], [1]],
            Remedies = [new(1, 1, [1, 0]), new(1, 1, [0, 1])],
            Looks = [],
            Opening = [20],
            Closing = [20],
            Test = 5,
            GiveUp = 1000,
            Start = new(0, 0, 0, 0, true),
        };
        Assert.Equal(47, ActionSearch.Solve(problem, 1000).Cost, 1e-9); // in, both, out, one run; one after another: 46 + 0.5 · 46 = 69
    }

    [Fact]
    public void A_check_that_pays_for_itself_comes_first_and_a_dear_one_does_not()
    {
        double[][] tells = [[1, 0], [0, 1]];
        ActionProblem With(double work) => Problem([0.5, 0.5], [new(0, 30, [1, 0]), new(0, 30, [0, 1])], [new(0, work, true, tells, 0)], []);
        Assert.Equal(ActKind.Look, ActionSearch.Solve(With(14.9), 1000).First.Kind); // knowing saves half of 30
        Assert.Equal(ActKind.Remedy, ActionSearch.Solve(With(15.1), 1000).First.Kind);
    }

    [Fact]
    public void What_is_past_hope_is_given_up()
    {
        var policy = ActionSearch.Solve(Problem([1], [new(0, 90, [0.05])], [], []), 1000);
        Assert.Equal(ActKind.Remedy, policy.First.Kind);
        var cheap = ActionSearch.Solve(Problem([1], [new(0, 90, [0.05])], [], [], giveUp: 100), 1000);
        Assert.Equal((ActKind.GiveUp, 100), (cheap.First.Kind, cheap.Cost));
    }

    private static ActionProblem Draw(Random random)
    {
        int faults = random.Next(1, 4), steps = random.Next(1, 4);
        int[][] all = [[], [0], [1], [2], [0, 1], [1, 2]];
        var cases = all.Where(c => c.All(f => f < faults)).OrderBy(_ => random.Next()).Take(random.Next(1, 5)).ToArray();
        var weights = cases.Select(_ => 0.05 + random.NextDouble()).ToArray();
        var remedies = Enumerable.Range(0, random.Next(1, 4)).Select(_ => new RemedyAct((ulong)random.Next(1 << steps), 20 * random.NextDouble(),
            [.. Enumerable.Range(0, faults).Select(_ => random.Next(3) switch { 0 => 0, 1 => 1, _ => random.NextDouble() })])).ToImmutableArray();
        var looks = Enumerable.Range(0, random.Next(0, 3)).Select(l => Look(random, cases.Length, steps, l)).ToImmutableArray();
        return new()
        {
            Weights = [.. weights.Select(w => w / weights.Sum())],
            Cases = cases,
            Remedies = remedies,
            Looks = looks,
            Opening = [.. Enumerable.Range(0, steps).Select(_ => 10 * random.NextDouble())],
            Closing = [.. Enumerable.Range(0, steps).Select(_ => 10 * random.NextDouble())],
            Test = 5 * random.NextDouble(),
            GiveUp = random.Next(2) == 0 ? 60 : 500,
            Start = default,
        };
    }

    private static LookAct Look(Random random, int cases, int steps, int place)
    {
        var outcomes = random.Next(2, 4);
        var table = Enumerable.Range(0, outcomes).Select(_ => Enumerable.Range(0, cases).Select(_ => random.Next(4) == 0 ? 0.001 : random.NextDouble()).ToArray()).ToArray();
        var sums = Enumerable.Range(0, cases).Select(h => table.Sum(row => row[h])).ToArray();
        var live = random.Next(2) == 0;
        return new(live ? 0 : (ulong)random.Next(1 << steps), 5 * random.NextDouble(), live, [.. table.Select(row => row.Select((p, h) => p / sums[h]).ToArray())], place == 1 && random.Next(3) == 0 ? 1 : 0);
    }

    /// <summary>One fault in each case; the tool has failed; runs cost nothing.</summary>
    private static ActionProblem Problem(double[] weights, ImmutableArray<RemedyAct> remedies, ImmutableArray<LookAct> looks, double[] opening, double giveUp = 10_000) => new()
    {
        Weights = weights,
        Cases = [.. weights.Select((_, f) => new[] { f })],
        Remedies = remedies,
        Looks = looks,
        Opening = opening,
        Closing = new double[opening.Length],
        Test = 0,
        GiveUp = giveUp,
        Start = new(0, 0, 0, 0, true),
    };

    private static JsonElement Case(string id) => JsonDocument.Parse(File.ReadAllText(PublishedNetworks.Published("troubleshooting-order.json"))).RootElement
        .GetProperty("cases").EnumerateArray().First(c => c.GetProperty("id").GetString() == id);

    private static double[] Numbers(JsonElement of, string name) => [.. of.GetProperty(name).EnumerateArray().Select(n => n.GetDouble())];
}
