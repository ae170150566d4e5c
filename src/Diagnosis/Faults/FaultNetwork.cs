using System.Collections.Immutable;
using Ramwright.Diagnosis.Measurements;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Diagnosis.Faults;

/// <summary>The fault network of a service model: rates, symptoms, checks, quick measurements. Made once for a model and used for many tools; safe for several threads.</summary>
public sealed class FaultNetwork
{
    /// <summary>Leaks that are one bypass to hydraulics, told apart by looking only; the first is what a recording calls it.</summary>
    private static readonly string[] OneBypass = ["bypass-leaks", "release-leaks", "release-open", "hose-leaks", "relief-seat-damaged"];

    private readonly ImmutableDictionary<FaultId, int> places;
    private readonly ImmutableDictionary<SymptomId, Symptom> symptoms;
    private readonly ImmutableDictionary<CheckId, (Check Check, CheckShares Shares)> checks;
    private readonly double[] rates;

    private FaultNetwork(ServiceModel model, ImmutableArray<double> rates)
    {
        Model = model;
        this.rates = [.. rates];
        places = model.Faults.Select((f, i) => (f.Id, i)).ToImmutableDictionary(f => f.Id, f => f.i);
        symptoms = model.Symptoms.ToImmutableDictionary(s => s.Id);
        checks = model.Checks.ToImmutableDictionary(c => c.Id, c => (c, new CheckShares(c, PlaceOf)));
        Spreads = new(model);
    }

    public ServiceModel Model { get; }

    internal ReadingSpreads Spreads { get; }

    /// <param name="rates">Prior rates in the order of the model's faults, each 0 to 1, where closed jobs have taught better ones than the model's.</param>
    /// <exception cref="ArgumentException">A model without faults, or rates that do not fit it: a bug in the caller.</exception>
    public static FaultNetwork Of(ServiceModel model, ImmutableArray<double>? rates = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        var taken = rates ?? [.. model.Faults.Select(f => f.Rate)];
        if (model.Faults.IsEmpty || taken.Length != model.Faults.Length || taken.Any(r => r is not (>= 0 and <= 1)))
            throw new ArgumentException("A fault network needs faults, and a rate from 0 to 1 for each.", nameof(model));
        return new(model, taken);
    }

    /// <summary>Measurements that can be weighed with what the model knows of its tool. The first call simulates strokes.</summary>
    public IEnumerable<QuickMeasurement> Measurements => QuickMeasurement.All.Where(m => Spreads.Of(m) is { WithFault.IsEmpty: false });

    internal int PlaceOf(FaultId fault) => places[fault];

    internal CheckShares SharesOf(CheckId check) => checks[check].Shares;

    /// <summary>The problem that some data pose.</summary>
    internal NoisyOr Problem(IEnumerable<Datum> data) => Problem(data, rates);

    internal NoisyOr Problem(IEnumerable<Datum> data, double[] priors)
    {
        var problem = new NoisyOr(priors);
        foreach (var datum in data)
            Put(problem, datum);
        return problem;
    }

    /// <summary>A ratio for one fault; a leak that hydraulics cannot tell from others is there if any of these is.</summary>
    private void Put(NoisyOr problem, FaultId fault, double factor)
    {
        if (fault.Value == OneBypass[0] && factor > 1)
            problem.Positives.Add(new(1 / factor, [.. OneBypass.Where(f => places.ContainsKey(new(f))).Select(f => (places[new(f)], 1.0))]));
        else
            problem.Weigh(places[fault], factor);
    }

    private void Put(NoisyOr problem, Datum datum)
    {
        switch (datum)
        {
            case Datum.Seen seen:
                var shown = symptoms[seen.Symptom];
                problem.Positives.Add(new(shown.Leak, [.. shown.Causes.Select(c => (places[c.Fault], c.Probability))]));
                break;
            case Datum.NotSeen not:
                var absent = symptoms[not.Symptom];
                problem.LogConstant += Math.Log(1 - absent.Leak);
                foreach (var cause in absent.Causes)
                    problem.Weigh(places[cause.Fault], 1 - cause.Probability);
                break;
            case Datum.Checked made:
                checks[made.Check].Shares.Put(problem, made.Outcome);
                break;
            case Datum.Measured measured:
                Spreads.Of(QuickMeasurement.All.First(m => m.Id == measured.Measurement))?.Put(problem, measured.Value);
                break;
            case Datum.Recorded recorded:
                foreach (var (fault, factor) in recorded.Recording.Factors.Where(f => places.ContainsKey(f.Key)))
                    Put(problem, fault, factor);
                break;
            default:
                throw new InvalidOperationException("A datum is seen, not seen, checked, measured or recorded.");
        }
    }
}
