using System.Collections.Immutable;
using Ramwright.Diagnosis.Faults;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Learning;

/// <summary>A rate beside what the model states: shown before it is used, and gone again when its jobs are left out.</summary>
/// <param name="Stated">The model's own rate, a probability.</param>
/// <param name="Learned">What the jobs make of it.</param>
public sealed record LearnedRate(FaultId Fault, double Stated, RateBelief Learned, FaultTally Tally);

/// <summary>Learned rates of the faults of one model, in its order. Nothing uses them until they are given to <see cref="FaultNetwork.Of"/>.</summary>
public sealed record LearnedRates(ServiceModel Model, ImmutableArray<LearnedRate> Rates)
{
    /// <summary>As <see cref="FaultNetwork.Of"/> takes them, probabilities.</summary>
    public ImmutableArray<double> Means => [.. Rates.Select(r => r.Learned.Mean)];
}

/// <summary>Learns fault rates from closed jobs of models of a kind. Always from all jobs anew: the same jobs give the same rates, and a job left out is undone without a trace.</summary>
public static class RateLearning
{
    private const int MostRounds = 100;
    private const double Settled = 1e-7;

    /// <summary>Expectation–maximisation (Dempster, Laird and Rubin 1977): an unexamined fault counts by its probability given the job's evidence under the present rates; rates follow; again until they stand.</summary>
    /// <param name="jobs">Closed jobs of models of one kind; contradictory evidence of a job is left out, what was examined counts.</param>
    public static ImmutableArray<LearnedRates> Of(IReadOnlyCollection<ClosedJob> jobs)
    {
        ArgumentNullException.ThrowIfNull(jobs);
        ImmutableArray<ServiceModel> models = [.. jobs.Select(j => j.Network.Model).Distinct()];
        var rates = models.ToDictionary(m => m, m => m.Faults.Select(f => Open(f.Rate)).ToArray());
        for (var round = 0; round < MostRounds; round++)
        {
            var tallies = Tallies(models, jobs, rates);
            var moved = 0.0;
            foreach (var (having, faultTallies, stated, places) in Faults(models, tallies))
            {
                var means = PooledRate.Means(stated, faultTallies);
                for (var i = 0; i < having.Length; i++)
                {
                    moved = Math.Max(moved, Math.Abs(means[i] - rates[having[i]][places[i]]));
                    rates[having[i]][places[i]] = means[i];
                }
            }

            if (moved < Settled)
                break;
        }

        return Beliefs(models, Tallies(models, jobs, rates));
    }

    private static ImmutableArray<LearnedRates> Beliefs(ImmutableArray<ServiceModel> models, Dictionary<ServiceModel, FaultTally[]> tallies)
    {
        var beliefs = models.ToDictionary(m => m, m => new RateBelief[m.Faults.Length]);
        foreach (var (having, faultTallies, stated, places) in Faults(models, tallies))
        {
            var pooled = PooledRate.Of(stated, faultTallies);
            for (var i = 0; i < having.Length; i++)
                beliefs[having[i]][places[i]] = pooled[i];
        }

        return [.. models.Select(m => new LearnedRates(m, [.. m.Faults.Select((f, i) => new LearnedRate(f.Id, f.Rate, beliefs[m][i], tallies[m][i]))]))];
    }

    /// <summary>Each fault with the models that have it, its tallies there, the mean of the stated rates, and its places.</summary>
    private static IEnumerable<(ImmutableArray<ServiceModel> Having, FaultTally[] Tallies, double Stated, int[] Places)> Faults(ImmutableArray<ServiceModel> models, Dictionary<ServiceModel, FaultTally[]> tallies)
    {
        foreach (var fault in models.SelectMany(m => m.Faults.Select(f => f.Id)).Distinct())
        {
            ImmutableArray<ServiceModel> having = [.. models.Where(m => PlaceOf(m, fault) >= 0)];
            int[] places = [.. having.Select(m => PlaceOf(m, fault))];
            yield return (having, [.. having.Select((m, i) => tallies[m][places[i]])], having.Select((m, i) => Open(m.Faults[places[i]].Rate)).Average(), places);
        }
    }

    private static Dictionary<ServiceModel, FaultTally[]> Tallies(ImmutableArray<ServiceModel> models, IReadOnlyCollection<ClosedJob> jobs, Dictionary<ServiceModel, double[]> rates)
    {
        var tallies = models.ToDictionary(m => m, m => new FaultTally[m.Faults.Length]);
        foreach (var job in jobs)
            Count(job, rates[job.Network.Model], tallies[job.Network.Model]);
        return tallies;
    }

    private static void Count(ClosedJob job, double[] rates, FaultTally[] tallies)
    {
        var problem = job.Network.Problem(CountedOnce.Of(job.Network, job.Evidence).Kept, rates);
        for (var i = 0; i < tallies.Length; i++)
        {
            if (job.Examined.TryGetValue(job.Network.Model.Faults[i].Id, out var there))
                problem.Fix(i, there);
        }

        var posterior = NoisyOrPosterior.Of(problem);
        for (var i = 0; i < tallies.Length; i++)
        {
            var known = job.Examined.TryGetValue(job.Network.Model.Faults[i].Id, out var there);
            var expected = known ? 0 : posterior is null ? rates[i] : FaultFinder.Middle(posterior, i);
            tallies[i] = new(tallies[i].Exposure + 1, tallies[i].Found + (known && there ? 1 : 0), tallies[i].Expected + expected);
        }
    }

    private static int PlaceOf(ServiceModel model, FaultId fault) => model.Faults.Select(f => f.Id).ToList().IndexOf(fault);

    /// <summary>A stated rate of nothing or of all is taken as very near it: jobs may teach better.</summary>
    private static double Open(double rate) => Math.Clamp(rate, 1e-4, 1 - 1e-4);
}
