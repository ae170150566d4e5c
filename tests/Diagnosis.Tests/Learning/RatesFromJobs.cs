using System.Collections.Immutable;
using Ramwright.Diagnosis.Faults;
using Ramwright.Diagnosis.Learning;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Tests.Learning;

public sealed class RatesFromJobs
{
    private static readonly FaultId Bypass = new("bypass-leaks"), Pack = new("pack-worn");

    [Fact]
    public void Without_jobs_the_stated_rate_stands_nearly()
    {
        var belief = PooledRate.Of(0.08, [new(0, 0, 0)])[0];
        Assert.InRange(belief.Mean, 0.078, 0.083); // Beta(0.96, 11.04), cut at six log-odds to each side
        Assert.True(belief.Low < 0.02 && belief.High > 0.2);
    }

    [Fact]
    public void Many_jobs_outweigh_what_was_stated()
    {
        var belief = PooledRate.Of(0.08, [new(2_000, 500, 0)])[0];
        Assert.InRange(belief.Mean, 0.245, 0.251);
        Assert.InRange(belief.High - belief.Low, 0.028, 0.036); // 2 · 1.645 · √(0.25 · 0.75 / 2000) = 0.032
    }

    // The grid against simulation of the same hierarchy: μ from Beta(w·r, w·(1 − r)), s from the five strengths, θ, then x; draws with the very counts seen are kept.
    [Fact]
    public void The_grid_is_the_mean_over_worlds_in_which_the_same_was_counted()
    {
        var random = new Random(99);
        double[] strengths = [3, 10, 30, 100, 300];
        double sum = 0, kept = 0;
        for (var n = 0; n < 400_000; n++)
        {
            var mean = Beta(random, PooledRate.StatedWeight * 0.2, PooledRate.StatedWeight * 0.8);
            var strength = strengths[random.Next(5)];
            double one = Beta(random, strength * mean, strength * (1 - mean)), other = Beta(random, strength * mean, strength * (1 - mean));
            if (Count(random, one, 6) == 4 && Count(random, other, 10) == 1)
                (sum, kept) = (sum + one, kept + 1);
        }

        Assert.True(kept > 1_500);
        Assert.Equal(sum / kept, PooledRate.Of(0.2, [new(6, 4, 0), new(10, 1, 0)])[0].Mean, 0.02);
    }

    [Fact]
    public void Models_of_a_kind_teach_each_other()
    {
        var alone = PooledRate.Of(0.05, [new(5, 0, 0)])[0];
        var among = PooledRate.Of(0.05, [new(5, 0, 0), new(200, 60, 0), new(200, 70, 0)])[0];
        Assert.True(among.Mean > 2 * alone.Mean);
        Assert.InRange(PooledRate.Of(0.05, [new(300, 3, 0), new(200, 60, 0)])[0].Mean, 0.005, 0.03); // but own jobs count more
    }

    [Fact]
    public void An_unexamined_fault_is_not_an_absent_one()
    {
        var silent = Learn(40, examined: [], seen: "");
        var absent = Learn(40, [(Bypass, false)], seen: "");
        var rate = silent.Rates.First(r => r.Fault == Bypass);
        Assert.Equal(rate.Stated, rate.Learned.Mean, 0.01); // nothing was learned
        Assert.True(absent.Rates.First(r => r.Fault == Bypass).Learned.Mean < 0.5 * rate.Stated);
        Assert.Equal((40, 0), (rate.Tally.Exposure, rate.Tally.Found));
        Assert.InRange(rate.Tally.Expected, 3, 6);
    }

    [Fact]
    public void What_was_seen_counts_for_what_nobody_opened()
    {
        var learned = Learn(40, examined: [(Pack, false)], seen: "pressure-decays");
        Assert.True(learned.Rates.First(r => r.Fault == Bypass).Learned.Mean > 0.4);
        Assert.True(learned.Rates.First(r => r.Fault == Pack).Learned.Mean < 0.05);
    }

    [Fact]
    public void A_job_left_out_is_undone_without_a_trace()
    {
        var jobs = Jobs(12, [(Bypass, true)], "pressure-decays").Concat(Jobs(20, [(Bypass, false)], "")).ToList();
        var before = RateLearning.Of(jobs).Single().Means;
        Assert.NotEqual(before, RateLearning.Of([.. jobs, .. Jobs(1, [(Bypass, true)], "")]).Single().Means);
        Assert.Equal(before, RateLearning.Of(jobs).Single().Means);
    }

    [Fact]
    public void Learned_rates_are_used_only_where_they_are_given()
    {
        var learned = Learn(60, [(Pack, true)], seen: "");
        var evidence = Demo.Complaint("pack-drains");
        double PackIn(FaultNetwork network) => ((FaultAnswer.Found)FaultFinder.Weigh(network, evidence)).Report.Faults.First(f => f.Fault == Pack).Probability;
        Assert.True(PackIn(FaultNetwork.Of(learned.Model, learned.Means)) > PackIn(Demo.Network("corrie-85")) + 0.2);
    }

    private static LearnedRates Learn(int count, (FaultId, bool)[] examined, string seen) => RateLearning.Of([.. Jobs(count, examined, seen)]).Single();

    private static IEnumerable<ClosedJob> Jobs(int count, (FaultId Fault, bool There)[] examined, string seen) =>
        Enumerable.Repeat(new ClosedJob(Demo.Network("corrie-85"), Demo.Complaint(seen), examined.ToImmutableDictionary(e => e.Fault, e => e.There)), count);

    private static int Count(Random random, double rate, int jobs) => Enumerable.Range(0, jobs).Count(_ => random.NextDouble() < rate);

    private static double Beta(Random random, double a, double b)
    {
        double x = Gamma(random, a), y = Gamma(random, b);
        return x / (x + y);
    }

    /// <summary>Marsaglia and Tsang 2000; for shapes below 1 by the usual power of a uniform draw.</summary>
    private static double Gamma(Random random, double shape)
    {
        if (shape < 1)
            return Gamma(random, shape + 1) * Math.Pow(1 - random.NextDouble(), 1 / shape);
        double d = shape - 1.0 / 3, c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            var z = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            var v = Math.Pow(1 + c * z, 3);
            if (v > 0 && Math.Log(1 - random.NextDouble()) < 0.5 * z * z + d - d * v + d * Math.Log(v))
                return d * v;
        }
    }
}
