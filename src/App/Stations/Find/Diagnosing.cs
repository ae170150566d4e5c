using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Ramwright.Diagnosis.Actions;
using Ramwright.Diagnosis.Faults;
using Ramwright.Planning;
using Ramwright.Records.Ids;
using Ramwright.Records.Jobs;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Stations.Find;

/// <summary>What diagnosis makes of a job.</summary>
public abstract record Diagnosed
{
    private Diagnosed() { }

    /// <summary>The model names no faults: what is seen is written down, nothing is weighed.</summary>
    public sealed record NoNetwork : Diagnosed;

    /// <summary>These cannot all be so under the model; without any one of them the rest can.</summary>
    public sealed record Contradictory(ImmutableArray<Datum> Conflict) : Diagnosed;

    public sealed record Weighed(FaultReport Report, Advice Advice) : Diagnosed;
}

/// <summary>Weighs what was found on a job. A network is made once for a model, an answer kept until the job goes on.</summary>
public sealed class Diagnosing
{
    private const int MostKept = 200;

    private readonly ConditionalWeakTable<ServiceModel, FaultNetwork> networks = [];
    private readonly ConcurrentDictionary<JobId, (EntryNumber Version, ServiceModel Model, Rates Rates, Diagnosed Answer)> kept = new();

    /// <summary>The fault network of a model; null when it names no faults.</summary>
    public FaultNetwork? NetworkOf(ServiceModel model) => model.Faults.IsEmpty ? null : networks.GetValue(model, m => FaultNetwork.Of(m));

    public Diagnosed Of(ServiceModel model, JobState job, Rates rates)
    {
        if (NetworkOf(model) is not { } network)
            return new Diagnosed.NoNetwork();
        if (kept.TryGetValue(job.Id, out var known) && known.Version == job.Version && ReferenceEquals(known.Model, model) && known.Rates == rates)
            return known.Answer;
        if (kept.Count > MostKept)
            kept.Clear();
        var answer = Weigh(network, job, rates);
        kept[job.Id] = (job.Version, model, rates, answer);
        return answer;
    }

    private static Diagnosed Weigh(FaultNetwork network, JobState job, Rates rates)
    {
        var evidence = FoundEvidence.Of(network.Model, job);
        var weighed = FaultFinder.Weigh(network, evidence);
        if (weighed is not FaultAnswer.Found { Report: var report })
            return new Diagnosed.Contradictory(((FaultAnswer.Contradictory)weighed).Conflict);
        var options = new ActionOptions { Rates = rates, Open = job.Done };
        return NextAction.Advise(network, evidence, options) is ActionAnswer.Advised { Advice: var advice }
            ? new Diagnosed.Weighed(report, advice)
            : throw new InvalidOperationException("Evidence that can be weighed can be acted on.");
    }
}
